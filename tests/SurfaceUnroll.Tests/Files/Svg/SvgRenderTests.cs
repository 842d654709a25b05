using SurfaceUnroll.Drawings;
using SurfaceUnroll.Files.Svg;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;
using SurfaceUnroll.Patterns.CutPaths;
using SurfaceUnroll.Tests.Files.JobFiles;

namespace SurfaceUnroll.Tests.Files.Svg;

/// <summary>The cut line of the SVG as librsvg draws it and poppler rasters it at 300 dpi, against the cut line of the report.</summary>
public class SvgRenderTests
{
    private const double PixelsPerMm = 300 / 25.4;

    [SkippableFact]
    public void The_drawn_cut_line_lies_on_that_of_the_report()
    {
        Development cover = Developer.Develop(Fixtures.Read("jobs/trike-tail-cover.json").Job!);
        PanelDevelopment panel = cover.Panels[0];
        Drawing drawing = CutFitting.Of(PatternDrawing.Of(panel, cover.Job, cover.Joints), CuttingSpec.Default);
        drawing = drawing with { Strokes = [.. drawing.Strokes.Where(s => s.Role == Role.Cut)], Letterings = [] };
        using var folder = new TemporaryFolder();
        string svg = folder.Write("cut.svg", SvgPattern.Write(drawing));
        DebianTool.Run("librsvg2-bin", ["rsvg-convert", "--version"], "rsvg-convert", "-f", "pdf", "-o", folder.At("cut.pdf"), svg);
        DebianTool.Run("poppler-utils", ["pdftoppm", "-v"], "pdftoppm", "-r", "300", "-gray", "-singlefile", folder.At("cut.pdf"), folder.At("cut"));
        var picture = GreyPicture.OfPgm(File.ReadAllBytes(folder.At("cut.pgm")));

        // 5 mm of room round the cut line, whose corner is the origin of the picture.
        Box box = Box.Around(panel.Cut).Grow(5);
        int n = panel.Cut.Length, seen = 0;
        Vec2[] corners = [.. panel.Cut.Where((_, i) => Corner(i))];
        Assert.Equal(2, corners.Length);
        for (int i = 0; i < n; i++)
        {
            Vec2 a = panel.Cut[i], b = panel.Cut[(i + 1) % n], middle = 0.5 * (a + b), across = (b - a).Unit.Left;
            // Near a corner two lines are seen.
            if ((b - a).Length < 0.05 || corners.Any(c => (c - middle).Length < 3)) continue;
            double weight = 0, moment = 0;
            for (double s = -1; s <= 1; s += 0.02)
            {
                Vec2 p = middle + s * across;
                double ink = picture.Ink((p.X - box.Min.X) * PixelsPerMm, (box.Max.Y - p.Y) * PixelsPerMm);
                (weight, moment) = (weight + ink, moment + s * ink);
            }
            Assert.True(weight > 0, $"nothing is drawn at {middle}");
            Assert.InRange(moment / weight, -0.1, 0.1);
            seen++;
        }
        Assert.True(seen > n / 2);

        bool Corner(int i)
        {
            Vec2 before = (panel.Cut[i] - panel.Cut[(i + n - 1) % n]).Unit, after = (panel.Cut[(i + 1) % n] - panel.Cut[i]).Unit;
            return before.Dot(after) < 0.9;
        }
    }
}

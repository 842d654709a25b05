using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Xml.Linq;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Files.Output;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;

namespace SurfaceUnroll.Tests.Files.Rendered;

/// <summary>A picture of a file, and where a place of the blank lies in it.</summary>
/// <param name="Name">For messages.</param>
/// <param name="Picture">Rendered at 300 dpi.</param>
/// <param name="Part">What it shows, mm on the turned blank.</param>
/// <param name="Turn">Of the blank, radians.</param>
/// <param name="Pixel">From the turned blank, mm, to the picture.</param>
internal sealed record Rendering(string Name, GreyPicture Picture, Box Part, double Turn, Func<Vec2, Vec2> Pixel)
{
    private const double Reach = 1.2, Step = 0.005, CutWidth = 0.7;

    // A stroke is taken for the cut line alone if it is as wide as that within a pixel and a half: where another line ends at it it looks wider, mm.
    private const double Wider = 0.13;

    /// <summary>How far to the left of a place the middle of the cut line is drawn, mm; null where it cannot be told from other lines.</summary>
    /// <param name="at">A place of the cut line, on the blank.</param>
    /// <param name="left">Unit vector to the left of it.</param>
    public double? Offset(Vec2 at, Vec2 left)
    {
        (double from, double to) = (Edge(at, left, -Step), Edge(at, left, Step));
        return double.Abs(to - from - CutWidth) < Wider ? 0.5 * (from + to) : null;
    }

    /// <summary>Where its words stand, mm on the turned blank.</summary>
    public ImmutableArray<Box> Words { get; init; } = [];

    /// <summary>True if the picture shows a place of the blank with room around.</summary>
    public bool Shows(Vec2 at) => Part.Grow(-2 * Reach).Contains(at.Rotate(Turn));

    /// <summary>Ink at a place of the blank, 0 to 1.</summary>
    public double Ink(Vec2 at)
    {
        Vec2 p = Pixel(at.Rotate(Turn));
        return Picture.SmoothInk(p.X, p.Y);
    }

    // Where the ink falls to a half, which it does at the edge of a stroke whose pixels are inked by the share of them that it covers.
    private double Edge(Vec2 at, Vec2 left, double step)
    {
        double before = Ink(at);
        for (double s = step; double.Abs(s) < Reach; s += step)
        {
            double ink = Ink(at + s * left);
            if (ink < 0.5 && before >= 0.5) return s - step * (0.5 - ink) / (before - ink);
            before = ink;
        }
        return double.NaN;
    }
}

/// <summary>The printed tiles of a job as poppler draws them, and its SVG as librsvg does.</summary>
internal static class OverlaidRenderings
{
    private const double PixelsPerMm = 300 / 25.4;

    public static (ImmutableArray<Rendering> Tiles, Rendering Svg, PanelDevelopment Panel, TilePlan Plan) Of(string job, TemporaryFolder folder)
    {
        Development development = Developer.Develop(JobFiles.Fixtures.Read(job).Job!);
        PanelDevelopment panel = development.Panels[0];
        foreach (OutputFile file in PatternFiles.Of(development).Where(f => f.Name.StartsWith(panel.Spec.FileName + ".", StringComparison.Ordinal))) folder.Write(file.Name, file.Content.ToArray());
        TilePlan plan = TileLayout.Plan(PatternDrawing.Of(panel, development.Job, development.Joints), development.Job.Paper);
        string name = folder.At(panel.Spec.FileName);
        ImmutableArray<Page> pages = PatternPages.Of(panel, development.Job, plan, PatternPages.StrainSheet(panel, development.Job), development.Joints);
        ImmutableArray<Box> words = [.. plan.Drawing.Letterings.Select(t => TextOutline.Of(t).Bounds)];
        return (Tiles(name, plan, pages), Svg(name) with { Words = words }, panel, plan);
    }

    private static ImmutableArray<Rendering> Tiles(string name, TilePlan plan, ImmutableArray<Page> pages)
    {
        Box onPaper = TileLayout.WindowOnPaper(plan);
        return
        [
            .. plan.Printed.Select((tile, i) =>
            {
                // The first page shows how the tiles go together.
                string page = (i + 2).ToString(CultureInfo.InvariantCulture), picture = $"{name}-{page}";
                DebianTool.Run("poppler-utils", ["pdftoppm", "-v"], "pdftoppm", "-r", "300", "-gray", "-singlefile", "-f", page, "-l", page, name + ".pdf", picture);
                Vec2 shift = tile.Window.Min - onPaper.Min;
                return new Rendering("sheet " + tile.Label, GreyPicture.OfPgm(File.ReadAllBytes(picture + ".pgm")), tile.Window, plan.Turn, p =>
                {
                    Vec2 paper = p - shift;
                    return PixelsPerMm * new Vec2(paper.X, plan.Given.Height - paper.Y);
                }) { Words = [.. pages[i + 1].Texts.Select(t => TextOutline.Of(t).Bounds).Select(b => new Box(b.Min + shift, b.Max + shift))] };
            }),
        ];
    }

    private static Rendering Svg(string name)
    {
        DebianTool.Run("librsvg2-bin", ["rsvg-convert", "--version"], "rsvg-convert", "-d", "300", "-p", "300", "--unlimited", "--background-color", "white", "-f", "png", "-o", name + ".png", name + ".svg");
        double[] box = [.. ((string)XDocument.Parse(File.ReadAllText(name + ".svg", Encoding.UTF8)).Root!.Attribute("viewBox")!).Split(' ').Select(n => double.Parse(n, CultureInfo.InvariantCulture))];
        // y downward.
        Vec2 corner = new(box[0], -box[1]);
        return new Rendering("SVG", GreyPicture.OfPng(File.ReadAllBytes(name + ".png")), new Box(new Vec2(box[0], -box[1] - box[3]), new Vec2(box[0] + box[2], -box[1])), 0, p => PixelsPerMm * new Vec2(p.X - corner.X, corner.Y - p.Y));
    }
}

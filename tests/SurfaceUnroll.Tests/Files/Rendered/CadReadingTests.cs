using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Files.Dxf;
using SurfaceUnroll.Files.Proof;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;
using SurfaceUnroll.Patterns.CutPaths;
using SurfaceUnroll.Tests.Files.JobFiles;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Core;

namespace SurfaceUnroll.Tests.Files.Rendered;

/// <summary>The DXF as an independent CAD program draws it.</summary>
public class CadReadingTests
{
    // The program draws in whole dots of 1/1200 inch of an A4 sheet, however large the drawing, which it scales to the sheet.
    private const double Dot = 25.4 / 1200, PointToMm = 25.4 / 72;

    [SkippableTheory]
    [InlineData("jobs/trike-tail-cover.json", DxfVersion.R2000)]
    [InlineData("jobs/trike-tail-cover.json", DxfVersion.R12)]
    [InlineData("jobs/elbow.json", DxfVersion.R2000)]
    [InlineData("jobs/bench-hood.json", DxfVersion.R12)]
    public void Every_line_and_arc_is_drawn_as_it_is_meant(string job, DxfVersion version)
    {
        Development development = Developer.Develop(Fixtures.Read(job).Job!);
        PanelDevelopment panel = development.Panels[0];
        Drawing cut = CutFitting.Of(PatternDrawing.Of(panel, development.Job, development.Joints), CuttingSpec.Default);
        cut = cut with { Strokes = [.. cut.Strokes.Where(s => s.Role == Role.Cut)], Letterings = [] };
        Assert.Contains(cut.Strokes, s => !s.Bulges.IsEmpty);
        using var folder = new TemporaryFolder();
        string file = folder.Write("cut.dxf", DxfPattern.Write(cut, CuttingSpec.Default with { Dxf = version }));
        // "env" hands on that there is no screen.
        DebianTool.Run("librecad", ["dpkg-query", "-s", "librecad"], "env", "QT_QPA_PLATFORM=offscreen", "librecad", "dxf2pdf", "-a", "-t", folder.Path, file);
        ImmutableArray<Vec2> drawn = Places(File.ReadAllBytes(folder.At("cut.pdf")));

        // The dense cut lines, that the arcs were made from.
        ImmutableArray<Vec2>[] lines = [panel.Cut, .. panel.Openings.Select(o => o.Cut), .. panel.InnerCuts];
        (double scale, Vec2 shift) = Fitted(drawn, lines);
        Vec2[] back = [.. drawn.Select(p => 1 / scale * (p - shift))];
        // A place is rounded to a dot, half of one off, both ways; on an arc twice, with its middle and then on it. The arcs are within their own tolerance of the dense line.
        double dots = Math.Sqrt(2) * Dot / scale, bound = CutPathFit.Tolerance + dots;
        var meant = new LineSet([.. lines.Select(l => l.Add(l[0]))]);
        double worst = back.Max(meant.Distance);
        Assert.True(worst < bound, $"drawn {worst} mm off; bound {bound}");
        // And nothing is left out: an arc is drawn in steps of a dot or two, the last of which may be left out, and a straight line has its ends.
        var path = new LineSet([[.. back]]);
        double missed = lines.SelectMany(l => l).Max(path.Distance);
        Assert.True(missed < bound + dots, $"{missed} mm from a place of the line nothing is drawn; bound {bound + dots}");
    }

    // All places in their order; lines are drawn from each to the next.
    private static ImmutableArray<Vec2> Places(byte[] pdf)
    {
        using PdfDocument document = PdfDocument.Open(pdf);
        return
        [
            .. from path in document.GetPage(1).Paths
               where path.IsStroked
               from part in path
               from command in part.Commands
               let at = command switch { PdfSubpath.Move move => move.Location, PdfSubpath.Line line => line.To, _ => (PdfPoint?)null }
               where at is not null
               select PointToMm * new Vec2(at.Value.X, at.Value.Y),
        ];
    }

    // Scale and shift by least squares over the nearest places, from those of the boxes on; the sheet is not turned.
    private static (double Scale, Vec2 Shift) Fitted(ImmutableArray<Vec2> drawn, ImmutableArray<Vec2>[] lines)
    {
        Box from = Box.Around(lines[0]), to = Box.Around(drawn);
        double scale = to.Width / from.Width;
        Vec2 shift = to.Centre - scale * from.Centre;
        // One in twenty tells it well enough.
        Vec2[] places = [.. drawn.Where((_, i) => i % 20 == 0)];
        for (int round = 0; round < 4; round++)
        {
            Vec2[] feet = [.. places.Select(p => Nearest(1 / scale * (p - shift), lines))];
            Vec2 foot = 1.0 / feet.Length * feet.Aggregate((a, b) => a + b), mean = 1.0 / feet.Length * places.Aggregate((a, b) => a + b);
            scale = feet.Zip(places, (f, d) => (f - foot).Dot(d - mean)).Sum() / feet.Sum(f => (f - foot).Dot(f - foot));
            shift = mean - scale * foot;
        }
        return (scale, shift);
    }

    private static Vec2 Nearest(Vec2 p, ImmutableArray<Vec2>[] closed)
    {
        (double off, Vec2 foot) = (double.PositiveInfinity, p);
        foreach (ImmutableArray<Vec2> line in closed)
            for (int i = 0; i < line.Length; i++)
            {
                Vec2 a = line[i], chord = line[(i + 1) % line.Length] - a;
                Vec2 at = a + Math.Clamp((p - a).Dot(chord) / chord.Dot(chord), 0, 1) * chord;
                if ((p - at).Length < off) (off, foot) = ((p - at).Length, at);
            }
        return foot;
    }
}

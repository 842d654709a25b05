using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Tests.Files.Rendered;

/// <summary>The printed tiles and the SVG of a piece, drawn at 300 dpi by two programs that share nothing, laid over each other.</summary>
public class OverlaidRenderingTests
{
    // A pixel is 0.085 mm. poppler covers pixels in sixteenths, four by four, so that an edge stands within an eighth of a pixel (0.011 mm) and the middle between two too, and may
    // move a line that runs along an axis to whole pixels: half of one, 0.042 mm. librsvg covers them in 256ths. The lines and arcs of the SVG keep within 0.02 mm of the cut line,
    // which the PDF has in steps of 0.001 mm. Together 0.075 mm.
    private const double Bound = 0.1;

    private const double Step = 0.25;

    [SkippableTheory]
    [InlineData("jobs/trike-tail-cover.json")]
    [InlineData("jobs/elbow.json")]
    public void Print_and_svg_show_one_cut_line(string job)
    {
        using var folder = new TemporaryFolder();
        (ImmutableArray<Rendering> tiles, Rendering svg, PanelDevelopment panel, _) = OverlaidRenderings.Of(job, folder);
        (int all, int measured, double unseen, double longest, double worst) = (0, 0, 0, 0, 0);
        foreach ((Vec2 at, Vec2 left) in panel.Openings.Select(o => o.Cut).Prepend(panel.Cut).SelectMany(Places))
        {
            all++;
            // Along one normal of the line of the report: as far from the one to the other as back.
            double[] offsets = [.. tiles.Where(t => t.Shows(at)).Select(t => t.Offset(at, left)).OfType<double>()];
            bool seen = svg.Offset(at, left) is { } other && offsets.Length > 0;
            if (seen)
            {
                measured++;
                worst = Math.Max(worst, offsets.Max(o => Math.Abs(o - svg.Offset(at, left)!.Value)));
            }
            unseen = seen ? 0 : unseen + Step;
            longest = Math.Max(longest, unseen);
        }
        Assert.True(worst < Bound, $"{worst} mm apart");
        // Where element lines and marks end at it, and at corners, the line cannot be told from them.
        Assert.True(measured > 0.85 * all && longest < 8, $"{measured} of {all} places seen, {longest} mm unseen");
    }

    [SkippableFact]
    public void Neither_shows_a_wide_line_where_the_other_has_none()
    {
        using var folder = new TemporaryFolder();
        (ImmutableArray<Rendering> tiles, Rendering svg, PanelDevelopment panel, TilePlan plan) = OverlaidRenderings.Of("jobs/trike-tail-cover.json", folder);
        Assert.Equal(4, tiles.Length);
        int wide = 0;
        foreach (Rendering tile in tiles)
        {
            // Words that no sheet holds whole stand elsewhere on the print.
            Box[] words = [.. tile.Words.Concat(svg.Words).Select(b => b.Grow(1))];
            foreach (Vec2 at in Grid(tile.Part.Grow(-1)).Where(p => !words.Any(w => w.Contains(p))).Select(p => p.Rotate(-plan.Turn)))
            {
                (bool print, bool drawing) = (Wide(tile, at), Wide(svg, at));
                if (print || drawing) wide++;
                // The middle of such a disc lies 0.05 mm off the middle of a line at most, the other line as much farther as is allowed: still within its 0.35 mm.
                Assert.False(print && svg.Ink(at) < 0.5, $"only {tile.Name} has a line at {at}");
                Assert.False(drawing && tile.Ink(at) < 0.5, $"only the SVG has a line at {at}");
            }
        }
        // A grid of a fifth of a millimetre meets the strip of middles, 0.1 mm wide and as long as the cut line, so often.
        double length = Places(panel.Cut).Count() * Step;
        Assert.True(wide > 0.7 * length * 0.1 / (0.2 * 0.2), $"{wide} places");
    }

    // A disc that fits in the cut line and in no other, and another one two millimetres on: where several thin lines meet there is but one.
    private static bool Wide(Rendering shown, Vec2 at) =>
        Disc(shown, at) && Enumerable.Range(0, 60).Any(i => Disc(shown, at + 2 * Vec2.FromAngle(i * Math.PI / 30)));

    private static bool Disc(Rendering shown, Vec2 at) => shown.Ink(at) > 0.8 && Enumerable.Range(0, 12).All(i => shown.Ink(at + 0.3 * Vec2.FromAngle(i * Math.PI / 6)) > 0.5);

    private static IEnumerable<Vec2> Grid(Box box)
    {
        for (double y = box.Min.Y; y <= box.Max.Y; y += 0.2)
            for (double x = box.Min.X; x <= box.Max.X; x += 0.2) yield return new Vec2(x, y);
    }

    // Places all along a closed line, with the way to their left.
    private static IEnumerable<(Vec2 At, Vec2 Left)> Places(ImmutableArray<Vec2> loop)
    {
        double ahead = 0;
        for (int i = 0; i < loop.Length; i++)
        {
            Vec2 a = loop[i], chord = loop[(i + 1) % loop.Length] - a;
            double length = chord.Length;
            for (; ahead < length; ahead += Step) yield return (a + ahead * chord.Unit, chord.Unit.Left);
            ahead -= length;
        }
    }
}

using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Lofting;
using SurfaceUnroll.Patterns;
using static SurfaceUnroll.Tests.Published.PublishedShapes;

namespace SurfaceUnroll.Tests.Published;

/// <summary>The oloid: hull of two circles of one radius in perpendicular planes, each through the other's centre. H. Dirnböck and H. Stachel, "The
/// Development of the Oloid", J. Geometry and Graphics 1(2), 1997, 105–118: every element line is √3 r long, the whole area is 4πr². The sheet z ≥ 0 runs
/// from 240° of circle A to 120° of circle B and back: area 2πr², both edges 4πr/3; the chord of a developed edge, 2.418399 r, is computed.</summary>
public class OloidTests
{
    private const double R = 300;

    private static readonly Vec3 X = new(1, 0, 0), Y = new(0, 1, 0), Z = new(0, 0, 1);

    // A(t) = (sin t, −1/2 − cos t, 0), from its middle t = 0 to t = 2π/3.
    private static ArcPiece HalfA => new(-R / 2 * Y, -Y, X, R, 0, 2 * Math.PI / 3);

    // B over the same t: from (0, 0, √3/2) to (0, 3/2, 0) round (0, 1/2, 0).
    private static ArcPiece HalfB => new(R / 2 * Y, Y, Z, R, 2 * Math.PI / 3, -2 * Math.PI / 3);

    private static Blank Right => LayFlat(new SpaceCurve([HalfA]), new SpaceCurve([HalfB]));

    [Fact]
    public void Every_element_line_is_root_three_long()
    {
        Blank blank = Right;
        Assert.All(blank.FormedRulings, s => Near(Math.Sqrt(3) * R, s.Ruling.Length, 1e-6));
        Assert.All(blank.FlatRulings, l => Near(Math.Sqrt(3) * R, (l.Rear - l.Front).Length, 1e-6));
    }

    [Fact]
    public void Element_lines_join_the_published_places()
    {
        foreach (Vec3 rear in Right.FormedRulings.Select(s => s.Rear / R).Zip(Right.FormedRulings.Select(s => s.Front / R), (b, a) =>
        {
            double cos = -a.Y - 0.5;
            return b - new Vec3(0, 0.5 - cos / (1 + cos), Math.Sqrt(Math.Max(0, 1 + 2 * cos)) / (1 + cos));
        }))
        {
            Assert.True(rear.Length < 1e-6, $"off by {rear.Length}");
        }
    }

    [Fact]
    public void Upper_sheet_has_the_published_area_edges_and_chord()
    {
        // On circle B the sheet's edge runs out and back, which no measured curve may do; so its left half is made of its right half, mirrored in x = 0.
        RuledSheet right = Right.Sheet;
        var mirror = new MirrorPlane(Vec3.Zero, X);
        Blank blank = Blank.Of(new RuledSheet([.. right.Strips.Reverse().Select(mirror.Image), .. right.Strips], true));
        Near(2 * Math.PI * R * R, blank.FlatArea, 1e-6);
        Near(2 * Math.PI * R * R, blank.FormedArea, 1e-6);
        Assert.All(new[] { 0, 2 }, i => Near(4 * Math.PI / 3 * R, BlankOutline.Edges(blank)[i].FlatLength, 1e-9));
        Near(2.418399 * R, (blank.FlatLines.First().Front - blank.FlatLines.Last().Front).Length, 1e-6);
    }
}

using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Lofting;
using SurfaceUnroll.Patterns;

namespace SurfaceUnroll.Tests.Lofting;

public class MiddleSurfaceTests
{
    private static Blank Develop(SpaceCurve front, SpaceCurve rear, double offset) =>
        Blank.Of(MiddleSurface.Of(Loft.Between(front, rear, ElementMatching.BendOnly), offset));

    [Theory]
    [InlineData(-0.45)]
    [InlineData(1.5)]
    public void Cylinder_grows_or_shrinks_by_the_offset_all_round(double offset)
    {
        Blank blank = Develop(Shapes.HalfCircle(150, 0), Shapes.HalfCircle(150, 400), offset);
        Assert.Equal(Math.PI * (150 + offset), BlankOutline.Edges(blank)[0].FlatLength, 1e-8);
        Assert.All(ElementLines.Of(blank), e => Assert.Equal(150 + offset, e.BendRadiusFront, 1e-5 * 150));
    }

    [Theory]
    [InlineData(-0.45)]
    [InlineData(1.5)]
    public void Cone_moves_square_to_its_slant(double offset)
    {
        const double r1 = 100, r2 = 200, height = 400;
        double slant = Math.Sqrt(height * height + (r2 - r1) * (r2 - r1)), cosine = height / slant;
        var edges = BlankOutline.Edges(Develop(Shapes.HalfCircle(r1, 0), Shapes.HalfCircle(r2, height), offset));
        Assert.Equal(Math.PI * (r1 + offset * cosine), edges[0].FlatLength, 1e-8);
        Assert.Equal(Math.PI * (r2 + offset * cosine), edges[2].FlatLength, 1e-8);
        Assert.Equal(slant, edges[1].FlatLength, 1e-9);
    }

    [Theory]
    [InlineData(-0.5, Math.PI)]
    [InlineData(0.5, Math.PI)]
    [InlineData(0.5, 2 * Math.PI)]
    [InlineData(0.5, 1)]
    public void Tip_of_a_circular_cone_moves_along_its_axis(double offset, double sweep)
    {
        // The surface parallel to a circular cone is the same cone shifted along its axis by offset / sin(half angle): closed form.
        const double radius = 100, height = 200;
        const int steps = 24;
        double slant = Math.Sqrt(radius * radius + height * height), sine = radius / slant, cosine = height / slant;
        Station At(double angle)
        {
            Vec3 outward = -Math.Cos(angle) * Shapes.Y + Math.Sin(angle) * Shapes.Z, along = Math.Sin(angle) * Shapes.Y + Math.Cos(angle) * Shapes.Z;
            return new Station(default, height * Shapes.X + radius * outward, along, along, cosine * outward - sine * Shapes.X, 0);
        }
        Strip[] fan = [.. Enumerable.Range(0, steps).Select(i =>
            new Strip(At(sweep * i / steps), At(sweep * (i + 0.5) / steps), At(sweep * (i + 1) / steps), true, false))];
        foreach (Strip strip in MiddleSurface.Of(new RuledSheet([.. fan], false), offset).Strips)
        {
            Assert.Equal(-offset / sine, strip.Middle.Front.X, 1e-9);
            Assert.Equal(0, (strip.Middle.Front with { X = 0 }).Length, 1e-9);
        }
    }

    [Theory]
    [InlineData(-0.5)]
    [InlineData(0.5)]
    public void Flat_sides_stay_flat_and_straight_between_mitred_corners(double offset)
    {
        (SpaceCurve square, SpaceCurve circle) = Shapes.SquareToRound();
        RuledSheet measured = Loft.Between(square, circle, ElementMatching.BendOnly);
        RuledSheet middle = MiddleSurface.Of(measured, offset);
        for (int i = 0; i < measured.Strips.Length; i++)
        {
            Strip was = measured.Strips[i], now = middle.Strips[i];
            if (was.FrontStill) continue;
            // Each place of a side lies the offset away from the measured plane of its facet.
            foreach ((Station a, Station b) in new[] { (was.Left, now.Left), (was.Middle, now.Middle), (was.Right, now.Right) })
                Assert.Equal(offset, (b.Front - a.Front).Dot(a.Normal), 1e-6);
        }
        Blank blank = Blank.Of(middle);
        Assert.All(BlankOutline.Edges(blank), e => Assert.Equal(e.FormedLength, e.FlatLength, 1e-6 * e.FormedLength));
        Assert.True(OutlineCheck.IsSimple(BlankOutline.Loop(blank.FlatRulings)));
    }

    [Fact]
    public void Edges_of_a_shifted_sheet_keep_their_length_on_the_blank()
    {
        foreach (double offset in new[] { -0.45, 0.45, -1.5, 1.5 })
        {
            Blank blank = Develop(Shapes.Arch(), Shapes.Hoop(), offset);
            Assert.All(BlankOutline.Edges(blank), e => Assert.Equal(e.FormedLength, e.FlatLength, 1e-6 * e.FormedLength + 1e-9));
            Assert.True(OutlineCheck.IsSimple(BlankOutline.Loop(blank.FlatRulings)));
        }
    }

    [Theory]
    [InlineData(-0.5)]
    [InlineData(1.5)]
    public void Sides_of_a_folded_duct_meet_in_the_mitre(double offset)
    {
        // An open box channel: three flat sides, two square folds. Each side's middle plane lies the offset away, so the profile on it is
        // shorter (or longer) by the offset at each end that is a fold: closed form.
        SpaceCurve At(double x) => AnalyticPiece.Polyline(new(x, -100, 0), new(x, -100, 80), new(x, 100, 80), new(x, 100, 0));
        Blank blank = Develop(At(0), At(300), offset);
        Assert.Equal(80 + 200 + 80 + 4 * offset, BlankOutline.Edges(blank)[0].FormedLength, 1e-9);
        Assert.Equal(80 + 200 + 80 + 4 * offset, BlankOutline.Edges(blank)[0].FlatLength, 1e-9);
        Assert.Equal(300, BlankOutline.Edges(blank)[1].FlatLength, 1e-9);
    }
}

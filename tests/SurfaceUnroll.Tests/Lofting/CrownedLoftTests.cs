using System.Collections.Immutable;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Lofting;
using SurfaceUnroll.Tests.Curves;

namespace SurfaceUnroll.Tests.Lofting;

public class CrownedLoftTests
{
    private static Vec3[][] Rows(SheetGrid grid) => [.. Enumerable.Range(0, grid.Rows).Select(r => grid.Row(r).ToArray())];

    // The row of a grid that runs through a curve.
    private static Vec3[] RowOf(SheetGrid grid, SpaceCurve curve) => Rows(grid).MinBy(row => (row[0] - curve.Start.Point).Length)!;

    private static ImmutableArray<CurveSpec> WithCorners { get; } =
    [
        Measured.Points(Fit.Straight, false, (-80, 0), (-40, 30), (50, 30), (80, 0)),
        Measured.Points(Fit.Straight, false, (-90, 0), (-55, 44), (45, 40), (85, 0)) with { At = Measured.At(new Vec3(120, 0, 20)) },
        Measured.Points(Fit.Straight, false, (-70, 0), (-40, 25), (40, 30), (75, 0)) with { At = Measured.At(new Vec3(260, 0, 0)) },
    ];

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void Every_measured_curve_is_met_within_a_hundredth_of_a_millimetre(int which)
    {
        ImmutableArray<SpaceCurve> curves = Crowned.Curves(which == 0 ? Crowned.Side : WithCorners);
        SheetGrid grid = CrownedLoft.Through(curves, 0);
        foreach (SpaceCurve curve in curves)
        {
            Vec3[] row = RowOf(grid, curve);
            Assert.All(curve.Samples(40), s => Assert.InRange(Crowned.Distance(s.Point, row), 0, 0.01));
        }
    }

    // Curvature along a column as turn over length. A crease at the middle curve would show as a turn many times those beside it; on a C2 spline the curvature runs on,
    // changing from row to row by less than its own size over a span (six rows or more).
    [Fact]
    public void Sheet_is_smooth_lengthwise_across_the_middle_curve()
    {
        ImmutableArray<SpaceCurve> curves = Crowned.Curves(Crowned.Side);
        SheetGrid grid = CrownedLoft.Through(curves, 0);
        int middle = Array.FindIndex(Rows(grid), row => row.SequenceEqual(RowOf(grid, curves[1])));
        Assert.InRange(middle, 6, grid.Rows - 7);
        for (int c = 0; c < grid.Columns; c++)
        {
            double before = Bend(middle - 1), at = Bend(middle), after = Bend(middle + 1);
            Assert.InRange(at, 0.7 * Math.Min(before, after), 1.3 * Math.Max(before, after));

            double Bend(int r)
            {
                Vec3 a = grid.At(r, c) - grid.At(r - 1, c), b = grid.At(r + 1, c) - grid.At(r, c);
                return 2 * a.AngleTo(b) / (a.Length + b.Length);
            }
        }
    }

    // Four sections of a ball an angle h apart: along the normal a cubic spline strays by terms of h⁴; the third-order term of its parabolic ends lies along the curve
    // and moves no place off the ball. R·h⁴/24, the fourth-order term of Taylor's series, bounds it. Rows are places of the spline, not chords of it.
    [Theory]
    [InlineData(10)]
    [InlineData(5)]
    public void Sections_of_a_ball_make_a_ball(double degrees)
    {
        const double radius = 300;
        double h = degrees * Measured.Degree;
        ImmutableArray<SpaceCurve> sections = Crowned.Ball(radius, 0.5, [.. new[] { -1.5, -0.5, 0.5, 1.5 }.Select(k => radius * Math.Sin(k * h))]);
        double off = CrownedLoft.Through(sections, 0).Places.Max(p => Math.Abs(p.Length - radius));
        Assert.InRange(off, 0, radius * h * h * h * h / 24);
        // The middle of a sheet measured on its outside is the ball within.
        double inside = CrownedLoft.Through(sections, -2).Places.Max(p => Math.Abs(p.Length - (radius - 2)));
        // The normal strays by the slope of the error, about error·4/h over a span.
        Assert.InRange(inside, 0, radius * h * h * h * h / 24 + 2 * Math.Pow(h, 3));
    }

    [Fact]
    public void Three_circles_of_a_cone_unroll_as_the_cone()
    {
        CurveSpec[] circles = [.. new[] { (0.0, 60.0), (80, 90), (240, 150) }.Select(c => (CurveSpec)new ChordSpec(2 * c.Item2, c.Item2, Placement.None with { Origin = new Vec3(c.Item1, 0, 0) }))];
        PanelDevelopment ruled = Assert.Single(Crowned.Develop([circles[0], circles[2]]).Panels), crowned = Assert.Single(Crowned.Develop([.. circles]).Panels);
        Assert.Equal(Verdict.BendsOnly, crowned.Verdict);
        foreach (string name in new[] { "front", "right", "rear", "left" })
            Assert.Equal(ruled.FindEdge(name)!.FlatLength, crowned.FindEdge(name)!.FlatLength, 0.01);
        // Chords in place of arcs: θ²/24 of the area with turns θ below 0.02 rad.
        Assert.Equal(ruled.FlatArea, crowned.FlatArea, 2e-5 * ruled.FlatArea);
        Assert.Equal(Diagonal(ruled), Diagonal(crowned), 0.02);

        static double Diagonal(PanelDevelopment p) => (p.Elements[0].Front - p.Elements[^1].Rear).Length;
    }

    [Fact]
    public void A_sheet_that_is_its_own_mirror_image_has_such_a_blank()
    {
        PanelDevelopment panel = Assert.Single(Crowned.Develop(Crowned.Dome).Panels);
        foreach (string name in new[] { "front", "rear" })
        {
            ImmutableArray<Vec2> edge = panel.FindEdge(name)!.Flat;
            for (int i = 0; i < edge.Length; i++) Assert.InRange((new Vec2(-edge[i].X, edge[i].Y) - edge[^(i + 1)]).Length, 0, 1e-6);
        }
        Assert.Equal(panel.FindEdge("left")!.FlatLength, panel.FindEdge("right")!.FlatLength, 1e-6);
    }

    [Fact]
    public void Corners_have_columns_of_their_own_and_run_lengthwise_where_all_curves_have_as_many()
    {
        ImmutableArray<SpaceCurve> curves = Crowned.Curves(WithCorners);
        SheetGrid grid = CrownedLoft.Through(curves, 0);
        foreach (int corner in new[] { 0, 1 })
        {
            Vec3[] places = [.. curves.Select(c => c.Pieces[corner].At(1).Point)];
            int column = Assert.Single(Enumerable.Range(0, grid.Columns), c => (grid.At(0, c) - places[0]).Length < 1e-9);
            Assert.All(places, p => Assert.Contains(grid.Column(column), q => (q - p).Length < 1e-9));
        }
    }

    [Fact]
    public void Corners_that_match_none_on_other_curves_are_met_all_the_same()
    {
        ImmutableArray<SpaceCurve> curves = Crowned.Curves(Crowned.Side.SetItem(1, WithCorners[1]));
        SheetGrid grid = CrownedLoft.Through(curves, 0);
        foreach (int corner in new[] { 0, 1 }) Assert.Contains(grid.Places, p => (p - curves[1].Pieces[corner].At(1).Point).Length < 1e-6);
    }

    [Fact]
    public void A_corner_in_the_very_middle_is_one_column()
    {
        CurveSpec[] ridges = [.. new[] { (0, 30.0), (100, 45), (200, 30) }.Select(c => (CurveSpec)(Measured.Points(Fit.Straight, false, (-60, 0), (0, c.Item2), (60, 0)) with { At = Measured.At(new Vec3(c.Item1, 0, 0)) }))];
        SheetGrid grid = Crowned.Grid([.. ridges]);
        for (int c = 0; c + 1 < grid.Columns; c++) Assert.True((grid.At(0, c + 1) - grid.At(0, c)).Length > 0.01);
        // Outside up: along the ridge the parallel sheets of both sides meet straight above it.
        SheetGrid raised = CrownedLoft.Through(Crowned.Curves([.. ridges]), 1);
        Assert.InRange(raised.Places.Max(p => Math.Abs(p.Y) < 1e-9 ? 0 : -1), 0, 0);
        Vec3 top = raised.Row(0).MaxBy(p => p.Z);
        Assert.Equal(0, top.Y, 1e-9);
        // At the front the ridge climbs by 0.3, as the parabola through its three heights does, so the sides' normals are (−0.3, ±0.5, 1); the parallel planes of two normals that
        // enclose θ meet √(2/(1 + cos θ)) from where the planes do.
        double cosine = (0.09 - 0.25 + 1) / (0.09 + 0.25 + 1);
        Assert.Equal(Math.Sqrt(2 / (1 + cosine)), (top - grid.Row(0).MaxBy(p => p.Z)).Length, 1e-6);
    }
}

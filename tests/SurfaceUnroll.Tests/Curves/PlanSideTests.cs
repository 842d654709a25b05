using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using static SurfaceUnroll.Tests.Curves.Measured;

namespace SurfaceUnroll.Tests.Curves;

public class PlanSideTests
{
    private static readonly RunSpec Hoop = Run(Line(200), Arc(120, 180), Line(200));

    private static SpaceCurve Raised(CurveSpec plan, Fit fit, params (double Aft, double Height)[] side) =>
        Curve(Spec(plan, fit, side));

    private static PlanSideSpec Spec(CurveSpec plan, Fit fit, params (double Aft, double Height)[] side) =>
        new(plan, [.. side.Select(p => new Vec2(p.Aft, p.Height))], fit, Placement.None);

    [Fact]
    public void Level_side_view_lifts_the_plan_flat()
    {
        SpaceCurve hoop = Raised(Hoop, Fit.Smooth, (0, 40), (300, 40));
        Near(400 + 120 * Math.PI, hoop.Length, 1e-12);
        Near(new Vec3(0, -120, 40), hoop.Start.Point, 1e-12);
        Near(new Vec3(320, 0, 40), hoop.AtLength(hoop.Length / 2).Point, 1e-9);
        Assert.True(hoop.Pieces[0].IsStraight && hoop.Pieces[^1].IsStraight);
    }

    [Fact]
    public void Circle_under_a_sloping_side_view_is_an_ellipse()
    {
        // Aft stretched by √2 at 45°: half-axes 100√2 and 100, the cut pipe Ø 200; its perimeter is computed from the elliptic integral.
        SpaceCurve ellipse = Raised(Run(Arc(100, 360)), Fit.Straight, (-500, -500), (0, 0), (500, 500));
        Assert.Equal(764.03956, ellipse.Length, 5);
        Assert.All(ellipse.Samples(), s => Assert.Equal(s.Point.X, s.Point.Z, 1e-12));
    }

    [Fact]
    public void Height_goes_on_straight_outside_the_side_view()
    {
        // The parabola z = (x − 100)²/100 between 100 and 200, slope 2 at its end.
        SpaceCurve line = Raised(Points(Fit.Straight, false, (0, 0), (0.001, 300)), Fit.Smooth, (100, 0), (150, 25), (200, 100));
        Assert.Equal(4, line.Pieces.Length);
        Assert.True(line.Pieces[0].IsStraight && line.Pieces[^1].IsStraight);
        Near(new Vec3(0, 0, 0), line.Start.Point, 1e-9);
        Near(new Vec3(300, 0.001, 300), line.End.Point, 1e-9);
        Assert.Equal(25, line.Pieces[1].At(1).Point.Z, 1e-9);
    }

    [Fact]
    public void Straight_side_view_breaks_the_curve_wherever_the_plan_crosses_its_corner()
    {
        SpaceCurve hoop = Raised(Hoop, Fit.Straight, (0, 0), (250, 0), (350, 60));
        // The half circle about (200, 0) crosses aft 250 twice: half-width √(120² − 50²).
        Vec3[] corners = [.. hoop.Pieces.Zip(hoop.Pieces.Skip(1))
            .Where(p => p.First.At(1).Tangent.AngleTo(p.Second.At(0).Tangent) > 0.01).Select(p => p.Second.At(0).Point)];
        Assert.Equal(2, corners.Length);
        Near(new Vec3(250, -Math.Sqrt(14400 - 2500), 0), corners[0], 1e-9);
        Near(new Vec3(250, Math.Sqrt(14400 - 2500), 0), corners[1], 1e-9);
    }

    [Fact]
    public void Plan_that_runs_level_across_a_corner_of_the_side_view_stays_straight()
    {
        SpaceCurve box = Raised(Points(Fit.Straight, false, (-50, 0), (-50, 250), (50, 250), (50, 0)), Fit.Straight, (0, 0), (250, 10), (300, 50));
        Assert.Equal(3, box.Pieces.Length);
        Near(2 * Math.Sqrt(250 * 250 + 100) + 100, box.Length, 1e-12);
    }

    [Fact]
    public void Mirrored_plan_gives_halves_of_the_same_numbers()
    {
        PointsSpec plan = Points(Fit.Smooth, true, (0, 295), (62, 272), (95, 210), (120, 0));
        SpaceCurve curve = Raised(plan, Fit.Smooth, (20, 10), (120, 30), (200, 20), (280, 60));
        int count = curve.Pieces.Length;
        Assert.True(count > 6);
        for (int i = 0; i < count; i++)
        {
            for (double t = 0; t <= 1; t += 0.25)
            {
                Vec3 left = curve.Pieces[i].At(t).Point, right = curve.Pieces[count - 1 - i].At(1 - t).Point;
                Assert.Equal(right with { Y = -right.Y }, left);
            }
        }
    }

    [Fact]
    public void Smooth_side_view_keeps_the_tangent_at_its_stations_and_the_curvature_at_the_inner_ones()
    {
        (double, double)[] side = [(20, 10), (120, 30), (200, 20), (260, 60)];
        SpaceCurve curve = Raised(Points(Fit.Straight, false, (0, 0), (100, 300)), Fit.Smooth, side);
        Assert.Equal(5, curve.Pieces.Length);
        for (int i = 1; i < 5; i++)
        {
            CurveSample before = curve.Pieces[i - 1].At(1), after = curve.Pieces[i].At(0);
            Assert.Equal(side[i - 1].Item2, after.Point.Z, 1e-9);
            Near(before.Tangent, after.Tangent, 1e-9);
            if (i is 2 or 3) Near(before.CurvatureVector, after.CurvatureVector, 1e-10);
        }
    }

    [Fact]
    public void Faults_of_both_views_are_told_together()
    {
        PlanSideSpec spec = Spec(Points(Fit.Smooth, false, (0, 0)), Fit.Smooth, (10, 0), (10, 5));
        CurveReading reading = MeasuredCurve.Build(spec, "curves.hoop");
        Assert.Null(reading.Curve);
        Assert.Equal(["curves.hoop.plan", "curves.hoop.side[1]"], reading.Notices.Select(n => n.Where));
    }

    [Fact]
    public void Plan_must_be_flat_and_the_side_view_have_two_points()
    {
        Assert.Equal("curve-plan-kind", Fault(Spec(Space(Fit.Smooth, Vec3.Zero, new(1, 1, 1)), Fit.Smooth, (0, 0), (1, 1))).Code);
        Assert.Equal("curve-side-range", Fault(Spec(Hoop, Fit.Smooth, (0, 0))).Code);
        Assert.Equal("curve-not-finite", Fault(Spec(Hoop, Fit.Smooth, (0, 0), (1, double.NaN))).Code);
    }

    [Fact]
    public void A_hoop_whose_far_end_just_reaches_the_last_station_keeps_to_the_side_view()
    {
        Vec2[] side = [new(0, 0), new(90, 0), new(150, 5), new(250, 40)];
        SpaceCurve hoop = Curve(new PlanSideSpec(Run(Line(150), Arc(100, 180), Line(150)), [.. side], Fit.Smooth, Placement.None));
        SideView view = SideView.Through([.. side], Fit.Smooth);
        for (int i = 0; i <= 100; i++)
        {
            Vec3 place = hoop.AtLength(hoop.Length * i / 100).Point;
            // Over the measured range the span before a station and the one after it agree at the station.
            Assert.Equal(view.Over(Math.Min(place.X, 250 - 1e-9)).At(place.X).Height, place.Z, 1e-9);
        }
    }
}

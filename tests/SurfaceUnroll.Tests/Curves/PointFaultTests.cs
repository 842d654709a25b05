using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;
using static SurfaceUnroll.Tests.Curves.Measured;

namespace SurfaceUnroll.Tests.Curves;

public class PointFaultTests
{
    [Fact]
    public void One_point_is_too_few()
    {
        Assert.Equal("curve-too-few-points", Fault(Points(Fit.Smooth, false, (0, 0))).Code);
        Assert.Equal("curve-too-few-points", Fault(Points(Fit.Straight, false)).Code);
        Assert.Equal("curve-too-few-points", Fault(Space(Fit.Smooth, Vec3.Zero)).Code);
    }

    [Fact]
    public void Repeated_points_are_named()
    {
        Notice fault = Fault(Points(Fit.Smooth, false, (0, 0), (50, 80), (50, 80), (100, 0)));
        Assert.Equal(("curve-points-repeat", "curves.test.points[2]"), (fault.Code, fault.Where));
        Assert.Contains("Point 3 stands at the same place as point 2", fault.Message, StringComparison.Ordinal);
        Assert.Equal("curve-points-repeat", Fault(Points(Fit.Smooth, false, (5, 5), (5, 5))).Code);
    }

    [Fact]
    public void Curve_in_space_that_comes_back_to_one_of_its_points_is_refused_unless_it_closes()
    {
        Vec3 a = new(0, 0, 0), b = new(50, 20, 0), c = new(90, 0, 30), d = new(40, -20, 10);
        Assert.Equal("curve-points-repeat", Fault(Space(Fit.Smooth, a, b, c, d, b, new(0, 0, 50))).Code);
        Assert.NotNull(Curve(Space(Fit.Smooth, a, b, c, d, a)));
    }

    [Theory]
    [InlineData(Fit.Smooth)]
    [InlineData(Fit.Straight)]
    public void Points_that_go_back_the_way_they_came_are_refused(Fit fit)
    {
        Notice fault = Fault(Points(fit, false, (0, 0), (100, 0), (40, 0)));
        Assert.Equal(("curve-folds-back", "curves.test.points[1]"), (fault.Code, fault.Where));
        Assert.Contains("across 100 mm, up 0 mm", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Mirrored_points_that_leave_along_the_centreline_fold_back() =>
        Assert.Equal("curve-folds-back", Fault(Points(Fit.Straight, true, (0, 100), (0, 50), (30, 0))).Code);

    [Fact]
    public void Closed_curve_may_not_fold_at_its_join()
    {
        Assert.Equal("curves.test.points[4]", Fault(Points(Fit.Straight, false, (0, 0), (100, 0), (100, 50), (200, 0), (0, 0))).Where);
        Assert.Equal("curve-folds-back", Fault(Points(Fit.Straight, true, (0, 100), (50, 80), (0, 50), (0, 20))).Code);
    }

    [Theory]
    [InlineData(Fit.Smooth)]
    [InlineData(Fit.Straight)]
    public void Profile_that_crosses_itself_is_refused_with_the_place(Fit fit)
    {
        Notice fault = Fault(Points(fit, false, (-60, 0), (60, 100), (60, 0), (-60, 100)));
        Assert.Equal("curve-crosses-itself", fault.Code);
        // The points are symmetric in up = 50.
        Assert.Contains("up 50 mm", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Mirrored_profile_that_touches_its_centreline_on_the_way_meets_itself() =>
        Assert.Equal("curve-crosses-itself", Fault(Points(Fit.Straight, true, (0, 100), (50, 80), (0, 50), (50, 0))).Code);

    [Fact]
    public void Places_are_told_in_the_units_of_the_job()
    {
        PointsSpec spec = Points(Fit.Straight, false, (-50.8, 0), (50.8, 101.6), (50.8, 0), (-50.8, 101.6));
        Notice fault = Assert.Single(MeasuredCurve.Build(spec, "curves.a", LengthUnit.Inch).Notices);
        Assert.Contains("across 0 in, up 2 in", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Mirrored_points_begin_on_the_centreline_and_stay_right_of_it()
    {
        Assert.Equal("curves.test.points[0]", Fault(Points(Fit.Smooth, true, (20, 100), (60, 80), (90, 0))).Where);
        Notice left = Fault(Points(Fit.Smooth, true, (0, 100), (60, 80), (-9, 0)));
        Assert.Equal(("curve-not-on-centreline", "curves.test.points[2]"), (left.Code, left.Where));
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(1e300)]
    public void Measures_that_are_no_lengths_are_refused(double bad)
    {
        Assert.Equal("curves.test.points[1]", Fault(Points(Fit.Smooth, false, (0, 0), (bad, 1), (5, 2))).Where);
        Assert.Equal("curves.test.xyz[0]", Fault(Space(Fit.Smooth, new Vec3(bad, 0, 0), new Vec3(1, 1, 1))).Where);
        Assert.Equal("curves.test.at", Fault(Points(Fit.Smooth, false, (0, 0), (3, 1)) with { At = At(new Vec3(0, bad, 0)) }).Where);
    }

    [Fact]
    public void Span_with_a_cusp_is_told_with_its_place()
    {
        // The Bézier cubic with control points (0,0) (60,60) (0,60) (60,0): its two arms meet in a cusp at t = 1/2, (30, 45).
        var row = new PointRow([Vec3.Zero, new(0, 60, 0)], [false, false], Fit.Smooth, false, "points");
        CubicPiece cusp = CubicPiece.Hermite(Vec3.Zero, new(0, 180, 180), new(0, 60, 0), new(0, 180, -180));
        Notice[] notices = [.. PointChecks.ShapeFaults(row, [cusp], new CurveFaults("curves.test", LengthUnit.Millimetre))];
        Assert.Contains(notices, n => n.Code == "curve-cusp" && n.Message.Contains("across 30 mm, up 45 mm", StringComparison.Ordinal));
    }
}

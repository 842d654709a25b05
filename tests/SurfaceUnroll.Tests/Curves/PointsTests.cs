using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using static SurfaceUnroll.Tests.Curves.Measured;

namespace SurfaceUnroll.Tests.Curves;

public class PointsTests
{
    // Complete elliptic integral of the second kind by the arithmetic-geometric mean (Abramowitz & Stegun 17.6):
    // perimeter = 2π/M·(a² − Σ 2^(n−1) c_n²), c_0² = a² − b².
    private static double EllipsePerimeter(double a, double b)
    {
        double x = a, y = b, power = 0.5, sum = power * (a * a - b * b);
        for (int i = 0; i < 12; i++)
        {
            double c = (x - y) / 2;
            (x, y) = ((x + y) / 2, Math.Sqrt(x * y));
            power *= 2;
            sum += power * c * c;
        }
        return 2 * Math.PI / x * (a * a - sum);
    }

    private static PointsSpec Ellipse(int count, double sweep, double a = 150, double b = 100) => Points(
        Fit.Smooth, false,
        [.. Enumerable.Range(0, count).Select(i => sweep * i / (count - 1)).Select(t => (-a * Math.Cos(t), b * Math.Sin(t)))]);

    private static double CurvatureJump(CurvePiece before, CurvePiece after) =>
        (before.At(1).CurvatureVector - after.At(0).CurvatureVector).Length;

    [Fact]
    public void Ellipse_perimeter_in_the_test_is_right_for_a_circle_and_a_tabled_ellipse()
    {
        Near(2 * Math.PI, EllipsePerimeter(1, 1), 1e-15);
        // The cut pipe Ø 200 at 45°, computed from the elliptic integral.
        Assert.Equal(764.03956, EllipsePerimeter(100 * Math.Sqrt(2), 100), 5);
    }

    [Fact]
    public void Closed_ellipse_of_60_points_has_the_perimeter_to_1e_6() =>
        Near(EllipsePerimeter(150, 100), Curve(Ellipse(61, 2 * Math.PI)).Length, 1e-6);

    [Fact]
    public void Half_ellipse_of_60_points_has_half_the_perimeter_to_1e_6() =>
        Near(EllipsePerimeter(150, 100) / 2, Curve(Ellipse(60, Math.PI)).Length, 1e-6);

    [Fact]
    public void Length_of_a_spline_converges_with_the_fourth_power_of_the_spacing()
    {
        double exact = EllipsePerimeter(150, 100);
        double Miss(int spans) => Math.Abs(Curve(Ellipse(spans + 1, 2 * Math.PI)).Length - exact);
        double order = Math.Log2(Miss(40) / Miss(80));
        // Cubic interpolation is of order 4; the room is for the terms that come after it.
        Assert.InRange(order, 3.7, 4.6);
    }

    [Fact]
    public void Place_converges_with_the_fourth_power_of_the_spacing_inside_and_with_the_third_in_the_last_span()
    {
        // An ellipse cut at no special place; how far (x/a)² + (y/b)² is from 1 tells how far a point is off.
        double Miss(int spans, int piece)
        {
            SpaceCurve curve = Curve(Points(
                Fit.Smooth, false,
                [.. Enumerable.Range(0, spans + 1).Select(i => 0.5 + 2.0 * i / spans).Select(t => (-150 * Math.Cos(t), 100 * Math.Sin(t)))]));
            return Enumerable.Range(0, 41).Select(i => curve.Pieces[piece].At(i / 40.0).Point)
                .Max(p => Math.Abs(p.Y * p.Y / 22500 + p.Z * p.Z / 10000 - 1));
        }
        // The room is for the terms that come after the leading one.
        Assert.InRange(Math.Log2(Miss(32, 16) / Miss(64, 32)), 3.7, 4.3);
        Assert.InRange(Math.Log2(Miss(32, 0) / Miss(64, 0)), 2.8, 3.3);
    }

    [Fact]
    public void Three_points_give_their_parabola()
    {
        // y = h(1 − x²/a²): length a·(√(1+k²) + asinh(k)/k), k = 2h/a (any calculus text).
        const double a = 80, h = 50, k = 2 * h / a;
        SpaceCurve parabola = Curve(Points(Fit.Smooth, false, (-a, 0), (0, h), (a, 0)));
        Near(a * (Math.Sqrt(1 + k * k) + Math.Asinh(k) / k), parabola.Length, 1e-12);
        SpaceCurve mirrored = Curve(Points(Fit.Smooth, true, (0, h), (a, 0)));
        Near(parabola.Length, mirrored.Length, 1e-12);
    }

    [Fact]
    public void Spline_passes_through_its_points_and_is_smooth_to_the_curvature_at_each()
    {
        PointsSpec spec = Points(Fit.Smooth, false, (-90, 0), (-70, 60), (-10, 85), (40, 70), (95, 10), (100, -40));
        SpaceCurve curve = Curve(spec);
        Assert.Equal(spec.Points.Length - 1, curve.Pieces.Length);
        for (int i = 0; i < curve.Pieces.Length; i++)
        {
            Near(new Vec3(0, spec.Points[i].Place.X, spec.Points[i].Place.Y), curve.Pieces[i].At(0).Point, 1e-12);
            if (i == 0) continue;
            Near(curve.Pieces[i - 1].At(1).Point, curve.Pieces[i].At(0).Point, 1e-12);
            Near(curve.Pieces[i - 1].At(1).Tangent, curve.Pieces[i].At(0).Tangent, 1e-13);
            Assert.True(CurvatureJump(curve.Pieces[i - 1], curve.Pieces[i]) < 1e-14);
        }
    }

    [Fact]
    public void Closed_smooth_curve_is_smooth_to_the_curvature_at_its_join()
    {
        SpaceCurve egg = Curve(Points(Fit.Smooth, false, (-50, 0), (-30, 40), (20, 50), (60, 10), (30, -35), (-30, -30), (-50, 0)));
        Assert.Equal(egg.Start.Point, egg.End.Point with { X = egg.Start.Point.X }, new WithinNanometre());
        Near(egg.Start.Tangent, egg.End.Tangent, 1e-13);
        Assert.True(CurvatureJump(egg.Pieces[^1], egg.Pieces[0]) < 1e-14);
    }

    [Fact]
    public void Closed_curve_with_one_corner_is_sharp_there_and_nowhere_else()
    {
        PointsSpec drop = Points(Fit.Smooth, false, (-50, 0), (-30, 40), (20, 50), (100, 0), (20, -50), (-30, -40), (-50, 0)).WithCorners(3);
        SpaceCurve curve = Curve(drop);
        Near(new Vec3(0, -50, 0), curve.Start.Point, 1e-12);
        Near(curve.Start.Tangent, curve.End.Tangent, 1e-12);
        Assert.True(curve.Pieces[2].At(1).Tangent.AngleTo(curve.Pieces[3].At(0).Tangent) > 0.5);
        // Mirrored in up = 0 by its points, so by its numbers too.
        Near(curve.Pieces[2].Length(0, 1), curve.Pieces[3].Length(0, 1), 1e-13);
    }

    [Fact]
    public void Corner_breaks_a_smooth_curve()
    {
        SpaceCurve curve = Curve(Points(Fit.Smooth, false, (0, 0), (10, 20), (30, 30), (60, 20), (80, 30), (90, 60)).WithCorners(2));
        Near(new Vec3(0, 30, 30), curve.Pieces[1].At(1).Point, 1e-12);
        Assert.True(curve.Pieces[1].At(1).Tangent.AngleTo(curve.Pieces[2].At(0).Tangent) > 0.1);
    }

    [Fact]
    public void Straight_fit_joins_the_points_by_lines()
    {
        SpaceCurve curve = Curve(Points(Fit.Straight, false, (0, 0), (30, 40), (30, 140), (30, 150)));
        Assert.Equal(2, curve.Pieces.Length);
        Assert.All(curve.Pieces, p => Assert.True(p.IsStraight));
        Near(160, curve.Length, 1e-15);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Smooth_points_in_one_line_become_one_straight(bool mirror)
    {
        SpaceCurve curve = Curve(Points(Fit.Smooth, mirror, (0, 7.1), (0.1, 7.1), (0.7, 7.1), (3.3, 7.1)));
        Assert.True(Assert.Single(curve.Pieces).IsStraight);
        Near(mirror ? 6.6 : 3.3, curve.Length, 1e-15);
    }

    [Fact]
    public void Sloping_mirrored_points_in_one_line_are_not_straight_since_they_meet_the_centreline_square()
    {
        SpaceCurve roof = Curve(Points(Fit.Smooth, true, (0, 100), (50, 50), (100, 0)));
        Near(new Vec3(0, 1, 0), roof.Pieces[2].At(0).Tangent, 1e-14);
        SpaceCurve ridge = Curve(Points(Fit.Smooth, true, (0, 100), (50, 50), (100, 0)).WithCorners(0));
        Assert.Equal(2, ridge.Pieces.Length);
        Assert.All(ridge.Pieces, p => Assert.True(p.IsStraight));
    }

    [Fact]
    public void Mirrored_halves_are_the_same_numbers()
    {
        SpaceCurve curve = Curve(Points(Fit.Smooth, true, (0, 295), (62, 272), (95, 210), (120, 0)) with { At = At(new Vec3(400, 0, 12), lean: 31) });
        int count = curve.Pieces.Length;
        Assert.Equal(6, count);
        for (int i = 0; i < count; i++)
        {
            Assert.Equal(curve.PieceLengths[i], curve.PieceLengths[count - 1 - i]);
            for (double t = 0; t <= 1; t += 0.125)
            {
                CurveSample left = curve.Pieces[i].At(t), right = curve.Pieces[count - 1 - i].At(1 - t);
                Assert.Equal(right.Point with { Y = -right.Point.Y }, left.Point);
                Assert.Equal(right.D1 with { X = -right.D1.X, Z = -right.D1.Z }, left.D1);
                Assert.Equal(right.D2 with { Y = -right.D2.Y }, left.D2);
            }
        }
    }

    [Fact]
    public void Mirrored_curve_is_smooth_and_square_at_the_centreline()
    {
        SpaceCurve curve = Curve(Points(Fit.Smooth, true, (0, 295), (62, 272), (95, 210), (120, 0)));
        CurveSample middle = curve.Pieces[3].At(0);
        Assert.Equal(0, middle.D1.Z);
        Assert.Equal(0, middle.D2.Y, 1e-11);
        Assert.True(CurvatureJump(curve.Pieces[2], curve.Pieces[3]) < 1e-14);
    }

    [Fact]
    public void Mirrored_curve_is_the_spline_through_all_its_points()
    {
        (double, double)[] right = [(0, 295), (62, 272), (95, 210), (120, 0)];
        SpaceCurve mirrored = Curve(Points(Fit.Smooth, true, right));
        SpaceCurve whole = Curve(Points(Fit.Smooth, false, [.. right.Skip(1).Reverse().Select(p => (-p.Item1, p.Item2)), .. right]));
        Assert.All(mirrored.Samples().Zip(whole.Samples()), pair => Near(pair.First.Point, pair.Second.Point, 1e-11));
    }

    [Fact]
    public void Mirrored_curve_that_comes_back_to_the_centreline_is_closed_and_smooth_there()
    {
        SpaceCurve tube = Curve(Points(Fit.Smooth, true, (0, 60), (45, 30), (45, -30), (0, -60)));
        Assert.Equal(tube.Start.Point, tube.End.Point, new WithinNanometre());
        Near(tube.Start.Tangent, tube.End.Tangent, 1e-13);
    }

    [Fact]
    public void Points_in_space_are_joined_smoothly_or_straight()
    {
        Vec3[] helix = [.. Enumerable.Range(0, 101).Select(i => i * Math.PI / 50).Select(t => new Vec3(40 * t, 30 * Math.Cos(t), 30 * Math.Sin(t)))];
        // Length of a helix: turn·√(r² + a²). A hundred points a turn leave about 1e-7 at order 4.
        Near(2 * Math.PI * 50, Curve(Space(Fit.Smooth, helix)).Length, 1e-6);
        Assert.Equal(100, Curve(Space(Fit.Straight, helix)).Pieces.Length);
    }

    [Fact]
    public void Wide_swing_between_two_points_is_noted()
    {
        CurveReading reading = MeasuredCurve.Build(Points(Fit.Smooth, false, (-2, 1), (0, 0), (1, 2), (200, 2)), "curves.hoop");
        Assert.All(reading.Notices, n => Assert.Equal(("curve-bulges", Severity.Note), (n.Code, n.Severity)));
        Assert.Equal(["curves.hoop.points[2]"], reading.Notices.Select(n => n.Where));
        Assert.NotNull(reading.Curve);
    }

    private sealed class WithinNanometre : IEqualityComparer<Vec3>
    {
        public bool Equals(Vec3 a, Vec3 b) => (a - b).Length < 1e-6;

        public int GetHashCode(Vec3 v) => 0;
    }
}

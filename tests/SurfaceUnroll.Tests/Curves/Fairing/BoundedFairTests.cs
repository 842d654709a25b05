using System.Collections.Immutable;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Curves.Fairing;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Tests.Curves.Fairing;

public class BoundedFairTests
{
    private const double Noise = 0.6;

    // Readings of a half ellipse of 240 by 90 mm, each off by up to 0.6 mm.
    private static PointsSpec Ellipse(double? within, int count = 15, bool mirror = false, int seed = 5)
    {
        var random = new Random(seed);
        double Off() => Noise * (2 * random.NextDouble() - 1);
        (double, double)[] points = [.. Enumerable.Range(0, count).Select(i =>
        {
            double a = mirror ? Math.PI / 2 * (1 - (double)i / (count - 1)) : Math.PI * (1 - (double)i / (count - 1));
            return (mirror && i == 0 ? 0 : 120 * Math.Cos(a) + Off(), 90 * Math.Sin(a) + Off());
        })];
        return Measured.Points(Fit.Smooth, mirror, points) with { Within = within };
    }

    [Theory]
    [InlineData(0.05)]
    [InlineData(0.5)]
    [InlineData(1)]
    [InlineData(3)]
    public void No_reading_is_left_by_more_than_the_bound_and_the_ends_stay(double within)
    {
        foreach (bool mirror in new[] { false, true })
        {
            PointsSpec spec = Ellipse(within, mirror: mirror);
            SpaceCurve curve = Measured.Curve(spec);
            ImmutableArray<Vec3> readings = [.. spec.Points.Select(p => new Vec3(0, p.Place.X, p.Place.Y))];
            foreach (Vec3 reading in readings) Assert.InRange(Distance(curve, reading), 0, within + 1e-6);
            // To the rounding of a sum of four.
            Measured.Near(readings[^1], curve.Pieces[^1].At(1).Point, 1e-12);
            if (!mirror) Measured.Near(readings[0], curve.Pieces[0].At(0).Point, 1e-12);
        }
    }

    // What the fairest curve costs cannot be less than what weak duality says for any weights (Boyd & Vandenberghe, Convex Optimization, ch. 5.2);
    // here the weights are found anew by plain gradient ascent, which shares nothing with the method but the spline.
    [Theory]
    [InlineData(0.1)]
    [InlineData(0.5)]
    [InlineData(1)]
    public void No_fairer_curve_keeps_the_bound(double within)
    {
        ImmutableArray<Vec3> points = [.. Ellipse(null).Points.Select(p => new Vec3(0, p.Place.X, p.Place.Y))];
        int last = points.Length - 1;
        var spline = new FairSpline(points, BoundedFair.Chords(points, false), false);
        Vec3[] found = BoundedFair.Least(spline, points.Length, false, within)!;
        Assert.All(spline.Moves(found)[1..last], m => Assert.InRange(m.Length, 0, within * (1 + 1e-9)));

        double[] weights = [.. points.Select((_, i) => i == 0 || i == last ? 1e9 : 1e-3)];
        double best = 0, pace = 1;
        double Bound(double[] own)
        {
            Vec3[] fit = spline.Fit(own)!, moves = spline.Moves(fit);
            return spline.Cost(fit) + own.Select((w, i) => w * (moves[i].Dot(moves[i]) - (i == 0 || i == last ? 0 : within * within))).Sum();
        }
        for (int step = 0; step < 3000; step++)
        {
            Vec3[] moves = spline.Moves(spline.Fit(weights)!);
            double[] next = [.. weights.Select((w, i) => i == 0 || i == last ? w : Math.Max(1e-12, w * Math.Exp(pace * Math.Clamp(moves[i].Dot(moves[i]) / (within * within) - 1, -1, 1))))];
            double bound = Bound(next);
            if (bound >= best) (best, weights, pace) = (bound, next, Math.Min(pace * 1.1, 2));
            else pace /= 2;
        }
        double cost = spline.Cost(found);
        Assert.True(best > 0.9 * cost, $"The bound from below, {best}, is too far under {cost} to show anything.");
        Assert.InRange(cost, best * (1 - 1e-6), 1.03 * best);
    }

    [Fact]
    public void Curve_through_noise_comes_nearer_to_the_part_than_the_readings()
    {
        double Off(SpaceCurve curve) => Math.Sqrt(curve.Samples().Average(s => Math.Pow((Math.Sqrt(s.Point.Y * s.Point.Y / 14400 + s.Point.Z * s.Point.Z / 8100) - 1) * 100, 2)));
        double fair = 0, through = 0;
        for (int seed = 0; seed < 10; seed++)
        {
            fair += Off(Measured.Curve(Ellipse(Noise * 1.5, 25, seed: seed)));
            through += Off(Measured.Curve(Ellipse(null, 25, seed: seed)));
        }
        Assert.True(fair < 0.75 * through, $"{fair} against {through}");
    }

    [Fact]
    public void Points_of_a_parabola_stay_and_a_wide_bound_gives_one()
    {
        (double, double)[] points = [.. Enumerable.Range(0, 9).Select(i => (20.0 * i, 0.01 * Math.Pow(20.0 * i - 80, 2)))];
        SpaceCurve curve = Measured.Curve(Measured.Points(Fit.Smooth, false, points) with { Within = 0.5 });
        foreach ((double across, double up) in points) Assert.InRange(Distance(curve, new Vec3(0, across, up)), 0, 0.5);
        // Wide enough, it is all one parabola in its parameter: no third derivative is left.
        ImmutableArray<Vec3> noisy = [.. Ellipse(null).Points.Select(p => new Vec3(0, p.Place.X, p.Place.Y))];
        var spline = new FairSpline(noisy, BoundedFair.Chords(noisy, false), false);
        Assert.InRange(spline.Cost(BoundedFair.Least(spline, noisy.Length, false, 200)!), 0, 1e-6);
    }

    [Fact]
    public void Halves_of_a_mirrored_curve_are_the_same_numbers_and_smooth_at_the_crown()
    {
        SpaceCurve curve = Measured.Curve(Ellipse(1, 9, mirror: true));
        int n = curve.Pieces.Length;
        Assert.Equal(0, n % 2);
        for (int i = 0; i < n / 2; i++)
        {
            CurveSample left = curve.Pieces[i].At(0.25), right = curve.Pieces[n - 1 - i].At(0.75);
            Assert.Equal((left.Point.Y, left.Point.Z), (-right.Point.Y, right.Point.Z));
        }
        CurveSample before = curve.Pieces[n / 2 - 1].At(1), behind = curve.Pieces[n / 2].At(0);
        Assert.Equal(before.Point, behind.Point);
        Assert.Equal(0, behind.D1.Z);
    }

    [Fact]
    public void Corners_part_the_curve_and_stay()
    {
        PointsSpec spec = Ellipse(1, 17).WithCorners(8);
        SpaceCurve curve = Measured.Curve(spec);
        Vec2 corner = spec.Points[8].Place;
        Assert.Equal(new Vec3(0, corner.X, corner.Y), curve.Pieces[8].At(0).Point);
        Assert.True(curve.Pieces[7].At(1).Tangent.Dot(curve.Pieces[8].At(0).Tangent) < 1 - 1e-6);
    }

    [Fact]
    public void Closed_curve_is_faired_all_round()
    {
        var random = new Random(2);
        (double Across, double Up)[] ring = [.. Enumerable.Range(0, 12).Select(i => (50 * Math.Cos(i * Math.PI / 6) + random.NextDouble() - 0.5, 50 * Math.Sin(i * Math.PI / 6) + random.NextDouble() - 0.5))];
        PointsSpec spec = Measured.Points(Fit.Smooth, false, [.. ring, ring[0]]) with { Within = 0.6 };
        SpaceCurve curve = Measured.Curve(spec);
        Measured.Near(curve.Pieces[^1].At(1).Point, curve.Pieces[0].At(0).Point, 1e-9);
        Assert.True(curve.Pieces[^1].At(1).Tangent.Dot(curve.Pieces[0].At(0).Tangent) > 1 - 1e-9);
        foreach ((double across, double up) in ring) Assert.InRange(Distance(curve, new Vec3(0, across, up)), 0, 0.6 + 1e-6);
    }

    [Fact]
    public void Largest_move_is_told_with_its_point()
    {
        PointsSpec spec = Ellipse(0.5);
        CurveReading reading = MeasuredCurve.Build(spec, "curves.test");
        Notice told = Assert.Single(reading.Notices, n => n.Code == "curve-faired");
        double[] moves = [.. spec.Points.Select(p => Distance(reading.Curve!, new Vec3(0, p.Place.X, p.Place.Y)))];
        int largest = Enumerable.Range(0, moves.Length).MaxBy(i => moves[i]);
        // Several points lie at the bound; the one named is one of them.
        int named = int.Parse(System.Text.RegularExpressions.Regex.Match(told.Message, @"point (\d+)").Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture) - 1;
        Assert.InRange(moves[named], moves[largest] - 0.005, moves[largest] + 0.005);
        Assert.Contains("0.5 mm", told.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Too_few_readings_are_told_to_be_gone_through()
    {
        Notice told = Assert.Single(MeasuredCurve.Build(Measured.Points(Fit.Smooth, false, (0, 0), (50, 30), (100, 0)) with { Within = 1 }, "curves.test").Notices, n => n.Code == "curve-faired");
        Assert.Contains("goes through every reading", told.Message, StringComparison.Ordinal);
    }

    // Nearest distance to the curve, by ever finer steps about the nearest sample.
    private static double Distance(SpaceCurve curve, Vec3 place)
    {
        double best = double.MaxValue;
        foreach (CurvePiece piece in curve.Pieces)
        {
            (double from, double to) = (0, 1);
            for (int round = 0; round < 12; round++)
            {
                const int steps = 16;
                double Away(double t) => (piece.At(t).Point - place).Length;
                double nearest = Enumerable.Range(0, steps + 1).Select(i => from + (to - from) * i / steps).MinBy(Away), half = (to - from) / steps;
                best = Math.Min(best, Away(nearest));
                (from, to) = (Math.Max(0, nearest - half), Math.Min(1, nearest + half));
            }
        }
        return best;
    }
}

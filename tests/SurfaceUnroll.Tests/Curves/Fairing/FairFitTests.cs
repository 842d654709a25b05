using System.Collections.Immutable;
using SurfaceUnroll.Curves.Fairing;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Tests.Curves.Fairing;

public class FairFitTests
{
    private static FairSpline Spline(Vec3[] points, bool closed = false)
    {
        var u = new double[points.Length + (closed ? 1 : 0)];
        for (int i = 1; i < u.Length; i++) u[i] = u[i - 1] + (points[i % points.Length] - points[i - 1]).Length;
        return new FairSpline([.. points], u, closed);
    }

    private static Vec3[] Noisy(int count, double noise, double turn = Math.PI)
    {
        var random = new Random(3);
        return [.. Enumerable.Range(0, count).Select(i =>
        {
            double a = turn * i / (count - 1), r = 100 + noise * (2 * random.NextDouble() - 1);
            return new Vec3(0, -r * Math.Cos(a), r * Math.Sin(a));
        })];
    }

    [Fact]
    public void Pieces_join_smoothly_up_to_their_curvature()
    {
        ImmutableArray<Cubic> cubics = FairFit.Scattered(Spline(Noisy(9, 1)), [.. Enumerable.Repeat(1.0, 9)], 0.3)!.Cubics;
        double[] steps = [.. Noisy(9, 1).Skip(1).Zip(Noisy(9, 1), (b, a) => (b - a).Length)];
        for (int i = 1; i < cubics.Length; i++)
        {
            Cubic a = cubics[i - 1], b = cubics[i];
            Measured.Near(a.C0 + a.C1 + a.C2 + a.C3, b.C0, 1e-9);
            Measured.Near((a.C1 + 2 * a.C2 + 3 * a.C3) / steps[i - 1], b.C1 / steps[i], 1e-9);
            Measured.Near((2 * a.C2 + 6 * a.C3) / (steps[i - 1] * steps[i - 1]), 2 * b.C2 / (steps[i] * steps[i]), 1e-9);
        }
    }

    [Fact]
    public void Scatter_is_no_larger_than_was_allowed_and_what_it_takes_where_less_is_true()
    {
        Vec3[] points = Noisy(200, 0.5);
        double[] ones = [.. points.Select(_ => 1.0)];
        // Even errors up to 0.5 either way have a root mean square of 0.5/√3 = 0.289; 200 of them show it to 1/√400 of itself, the curve takes some of it away.
        Assert.InRange(FairFit.Scattered(Spline(points), ones, 0.1)!.Scatter, 0.05, 0.1001);
        Assert.InRange(FairFit.Scattered(Spline(points), ones, 5)!.Scatter, 0.289 * 0.85, 0.289 * 1.15);
    }

    // Closed rows are solved with a border round a band: the same ring begun at another point must come out the same.
    [Fact]
    public void Closed_curve_does_not_depend_on_where_its_row_begins()
    {
        Vec3[] ring = Noisy(25, 1, Math.Tau)[..24], turned = [.. ring[7..], .. ring[..7]];
        double[] weights = [.. Enumerable.Repeat(0.01, 24)];
        FairSpline a = Spline(ring, true), b = Spline(turned, true);
        Vec3[] first = a.Fit(weights)!, moves = a.Moves(first), other = b.Moves(b.Fit(weights)!);
        for (int i = 0; i < 24; i++) Measured.Near(moves[(i + 7) % 24], other[i], 1e-9);
        // And it closes.
        ImmutableArray<Cubic> cubics = a.Cubics(first);
        Measured.Near(cubics[^1].C0 + cubics[^1].C1 + cubics[^1].C2 + cubics[^1].C3, cubics[0].C0, 1e-9);
    }

    // Against dense elimination of the same normal equations, on a small row.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Banded_solution_is_that_of_the_whole_matrix(bool closed)
    {
        const int n = 9, reach = 3;
        var random = new Random(1);
        var system = new BandedSystem(n, reach, closed);
        double[,] whole = new double[n, n];
        for (int i = 0; i < n; i++)
        {
            for (int k = 0; k <= reach; k++)
            {
                int j = i + k;
                if (j >= n && !closed) continue;
                double value = k == 0 ? 8 : random.NextDouble() - 0.5;
                system.Add(i, j % n, value);
                whole[i, j % n] += value;
                if (k > 0) whole[j % n, i] += value;
            }
        }
        double[] x = [.. Enumerable.Range(1, n).Select(i => (double)i)], right = [.. Enumerable.Range(0, n).Select(i => Enumerable.Range(0, n).Sum(j => whole[i, j] * x[j]))];
        Assert.True(system.Factor());
        double[] solved = system.Solve(right);
        for (int i = 0; i < n; i++) Assert.Equal(x[i], solved[i], 1e-12);
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Curves.Fairing;

/// <summary>The fairest curve that leaves no point by more than a bound: of all cubic B-splines with knots at the points the one with the least ∫|f‴|² du.</summary>
/// <remarks>
/// Points that the curve keeps from by less than the bound cost nothing and so have no weight; the others lie at the bound. Their weights are the multipliers of the
/// bound, found by raising those of points that lie too far off and lowering the rest; for any weights, ∫|f‴|² + Σ wᵢ(|moveᵢ|² − bound²) at its least is no more than what the fairest curve
/// costs (Boyd &amp; Vandenberghe, Convex Optimization, 2004, ch. 5), so it is known when to stop.
/// </remarks>
internal static class BoundedFair
{
    // Of the cost of the fairest curve: no eye sees more.
    private const double Gap = 0.01;

    private const double Loosest = 1e-12, Tightest = 1e9;

    private const int MostSteps = 400, Rounds = 2;

    /// <summary>The curve; the ends of an open row stay where they are.</summary>
    /// <param name="points">Four or more; of a closed row seven or more, the first not repeated.</param>
    /// <param name="closed">The row goes on from its last point to its first.</param>
    /// <param name="within">The bound, mm, &gt; 0.</param>
    /// <returns>Null where rounding does not let it be found.</returns>
    public static FairCurve? Of(ImmutableArray<Vec3> points, bool closed, double within)
    {
        double[] parameters = Chords(points, closed);
        FairCurve? curve = null;
        for (int round = 0; round <= Rounds; round++)
        {
            var spline = new FairSpline(points, parameters, closed);
            if (Least(spline, points.Length, closed, within) is not { } fit) return curve;
            curve = new FairCurve(spline.Cubics(fit), [.. spline.Across(fit, spline.Moves(fit))]);
            if (FootPoints.Of(curve, points, parameters, closed) is not { } feet) break;
            parameters = feet;
        }
        return curve;
    }

    /// <summary>Distances along the row, the first 0; of a closed row one more, its whole length.</summary>
    internal static double[] Chords(ImmutableArray<Vec3> points, bool closed)
    {
        var u = new double[points.Length + (closed ? 1 : 0)];
        for (int i = 1; i < u.Length; i++) u[i] = u[i - 1] + (points[i % points.Length] - points[i - 1]).Length;
        return u;
    }

    /// <summary>The spline of least cost, within <see cref="Gap"/> of it.</summary>
    internal static Vec3[]? Least(FairSpline spline, int count, bool closed, double within)
    {
        bool IsHeld(int i) => !closed && (i == 0 || i == count - 1);
        double[] weights = [.. Enumerable.Range(0, count).Select(i => IsHeld(i) ? 0 : 1.0)];
        Vec3[]? Fit(double[] own) => spline.Fit([.. own.Select((w, i) => IsHeld(i) ? Tightest : Math.Max(w, Loosest))]);
        double Farthest(Vec3[] moves) => moves.Where((_, i) => !IsHeld(i)).Max(m => m.Length);

        // As loose as a common weight may be.
        if (Scaled(weights, Loosest, Tightest, own => Fit(own) is { } f && Farthest(spline.Moves(f)) <= within) is not { } scaled) return null;
        weights = scaled;
        for (int step = 0; step < MostSteps; step++)
        {
            if (Fit(weights) is not { } fit) return null;
            Vec3[] moves = spline.Moves(fit);
            double cost = spline.Cost(fit), bonus = weights.Select((w, i) => w * (moves[i].Dot(moves[i]) - within * within)).Sum();
            if (Farthest(moves) <= (1 + Gap / 4) * within && -bonus <= Gap / 2 * cost) break;
            weights = [.. weights.Select((w, i) => Math.Clamp(w * Math.Clamp(moves[i].Length / within, 0.3, 3), 0, Tightest))];
        }
        // What is left to the bound is made up by all in common.
        return Scaled(weights, 1, 1e6, own => Fit(own) is { } f && Farthest(spline.Moves(f)) <= within) is { } last ? Fit(last) : Fit(scaled);
    }

    // The loosest multiple of the weights that will do, by bisection of its logarithm; null if none does.
    private static double[]? Scaled(double[] weights, double loosest, double tightest, Func<double[], bool> does)
    {
        (double loose, double tight) = (Math.Log10(loosest), Math.Log10(tightest));
        double[] At(double exponent) => [.. weights.Select(w => Math.Pow(10, exponent) * w)];
        if (does(At(loose))) return At(loose);
        if (!does(At(tight))) return null;
        while (tight - loose > 1e-4)
        {
            double middle = 0.5 * (loose + tight);
            if (does(At(middle))) tight = middle;
            else loose = middle;
        }
        return At(tight);
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Curves.Fairing;

/// <summary>A smooth curve near measured points.</summary>
/// <param name="Cubics">One for each pair of neighbouring points, smooth up to the curvature.</param>
/// <param name="Moves">From each point to the curve, square to it, mm.</param>
internal sealed record FairCurve(ImmutableArray<Cubic> Cubics, ImmutableArray<Vec3> Moves)
{
    /// <summary>Largest move and the point it belongs to.</summary>
    public (double Distance, int Point) Largest => Moves.Select((m, i) => (m.Length, i)).MaxBy(x => x.Length);

    /// <summary>Root of the mean square of the moves, mm.</summary>
    public double Scatter => Math.Sqrt(Moves.Average(m => m.Dot(m)));

    /// <summary>The curve as pieces.</summary>
    public ImmutableArray<CurvePiece> Pieces() => [.. Cubics.Select(c => c.Piece())];
}

/// <summary>Chooses how smooth a smoothing spline is.</summary>
internal static class FairFit
{
    // Weights between a spline that is a parabola and one that goes through every point, for knots a unit apart.
    private const double Loosest = 1e-10, Tightest = 1e9;

    /// <summary>The curve that foretells points left out best, by generalised cross-validation (P. Craven &amp; G. Wahba, Smoothing noisy data with spline functions, 1979), but no
    /// smoother than a given scatter allows.</summary>
    /// <param name="spline">Of the points.</param>
    /// <param name="shares">What each point counts, all of them 1 in the mean.</param>
    /// <param name="scatter">Most root of the mean square of the moves, mm, &gt; 0.</param>
    /// <param name="robust">The scatter is told from the middle one of the moves, so that a few wild points do not count.</param>
    public static FairCurve? Scattered(FairSpline spline, double[] shares, double scatter, bool robust = false)
    {
        // Half of normal errors are smaller than 0.6745 of their root mean square.
        const double half = 0.6745, steps = 4, decades = 12;
        bool IsNear(Vec3[] moves) => robust
            ? moves.Select(m => m.Length).Order().ElementAt(moves.Length / 2) <= half * scatter
            : moves.Average(m => m.Dot(m)) <= scatter * scatter;
        if (Scaled(spline, shares, IsNear) is not var (smoothest, weights)) return null;
        (FairCurve best, double least) = (smoothest, double.PositiveInfinity);
        Vec3[] signs = Probes(shares.Length);
        FairSpline probes = spline.Under([.. signs]);
        for (int i = 0; i <= steps * decades; i++)
        {
            double[] own = [.. weights.Select(w => w * Math.Pow(10, i / steps))];
            if (own.Max() > Tightest || spline.Fit(own) is not { } fit) break;
            Vec3[] moves = spline.Moves(fit);
            double free = 1 - Dear * (1 - Free(probes, signs, own) / shares.Length);
            // A curve that takes up so much of the points follows their errors; and there the score is the ratio of two small numbers.
            if (free < 0.3) break;
            double score = moves.Select((m, k) => shares[k] * m.Dot(m)).Sum() / (free * free);
            if (score < least) (best, least) = (new FairCurve(spline.Cubics(fit), [.. spline.Across(fit, moves)]), score);
        }
        return best;
    }

    // What a parameter in use costs: at 1 the score follows the noise now and then, at 1.4 hardly ever (Y.-J. Kim & C. Gu, Smoothing spline Gaussian regression, 2004).
    private const double Dear = 1.4;

    // Three rows of signs, the same at every run.
    private static Vec3[] Probes(int count)
    {
        var random = new Random(1);
        double Sign() => random.Next(2) == 0 ? -1 : 1;
        return Enumerable.Range(0, count).Select(_ => new Vec3(Sign(), Sign(), Sign())).ToArray();
    }

    // Points less parameters in use: the trace of what takes points to moves, from what it does to random signs (M. Hutchinson, 1989).
    private static double Free(FairSpline probes, Vec3[] signs, double[] weights) =>
        probes.Fit(weights) is { } fit ? -probes.Moves(fit).Zip(signs, (m, z) => m.Dot(z)).Sum() / 3 : 0;

    // The loosest multiple of the weights that is near enough, by bisection of its logarithm to a thousandth.
    private static (FairCurve Curve, double[] Weights)? Scaled(FairSpline spline, double[] weights, Func<Vec3[], bool> isNear)
    {
        double most = weights.Max();
        (FairCurve, double[])? At(double exponent)
        {
            double[] own = [.. weights.Select(w => Math.Pow(10, exponent) * w / most)];
            if (spline.Fit(own) is not { } fit) return null;
            Vec3[] moves = spline.Across(fit, spline.Moves(fit));
            return isNear(moves) ? (new FairCurve(spline.Cubics(fit), [.. moves]), own) : null;
        }
        (double loose, double tight) = (Math.Log10(Loosest), Math.Log10(Tightest));
        if (At(loose) is { } slack) return slack;
        if (At(tight) is not { } found) return null;
        while (tight - loose > 1e-3)
        {
            double middle = 0.5 * (loose + tight);
            if (At(middle) is { } nearer) (tight, found) = (middle, nearer);
            else loose = middle;
        }
        return found;
    }
}

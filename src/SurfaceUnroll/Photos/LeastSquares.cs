namespace SurfaceUnroll.Photos;

/// <summary>What came of a least-squares problem.</summary>
/// <param name="Values">The unknowns.</param>
/// <param name="ErrorFactor">Times its own transpose: the covariance of the unknowns, if every residual has a spread of 1.</param>
/// <param name="Sum">Of the squares of the residuals.</param>
/// <param name="Free">Residuals less unknowns.</param>
internal sealed record LeastSquaresFit(double[] Values, double[,] ErrorFactor, double Sum, int Free);

/// <summary>Gauss–Newton with Marquardt's damping (D. Marquardt, 1963), for residuals each divided by its own spread.</summary>
internal static class LeastSquares
{
    // A problem of this kind is at rest after five or six; one that is not has no good start.
    private const int MostSteps = 40;

    private const double Rest = 1e-10, MostDamping = 1e8;

    /// <summary>The unknowns of the least sum of squares.</summary>
    /// <param name="residuals">From unknowns to residuals; infinite or no number where the unknowns make no sense.</param>
    /// <param name="start">First guess, unknowns of a size near 1 or with a like effect.</param>
    /// <returns>Null where the residuals do not settle the unknowns.</returns>
    public static LeastSquaresFit? Solve(Func<double[], double[]> residuals, double[] start)
    {
        double[] at = start, now = residuals(at);
        double sum = Sum(now), damping = 1e-6;
        if (!double.IsFinite(sum)) return null;
        for (int step = 0; step < MostSteps; step++)
        {
            NormalEquations normal = Linear(residuals, at, now);
            bool better = false, resting = false;
            while (!better && damping < MostDamping)
            {
                if (normal.Solve(damping) is { } move)
                {
                    double[] next = [.. at.Select((v, i) => v + move[i])], then = residuals(next);
                    double less = Sum(then);
                    if (less <= sum)
                    {
                        resting = sum - less <= Rest * (1 + sum);
                        (at, now, sum, better) = (next, then, less, true);
                        damping = Math.Max(damping / 10, 1e-12);
                        continue;
                    }
                }
                damping *= 10;
            }
            if (!better || resting) break;
        }
        return Linear(residuals, at, now).ErrorFactor() is { } errors ? new LeastSquaresFit(at, errors, sum, now.Length - at.Length) : null;
    }

    // Slopes by differences to both sides: exact to the third power of a step whose cube is small beside rounding.
    private static NormalEquations Linear(Func<double[], double[]> residuals, double[] at, double[] now)
    {
        double[][] slopes = new double[at.Length][];
        double[] moved = [.. at];
        for (int k = 0; k < at.Length; k++)
        {
            double step = 1e-6 * Math.Max(1, Math.Abs(at[k]));
            moved[k] = at[k] + step;
            double[] ahead = residuals(moved);
            moved[k] = at[k] - step;
            double[] behind = residuals(moved);
            moved[k] = at[k];
            slopes[k] = [.. ahead.Select((a, i) => (a - behind[i]) / (2 * step))];
        }
        var normal = new NormalEquations(at.Length);
        double[] row = new double[at.Length];
        for (int i = 0; i < now.Length; i++)
        {
            for (int k = 0; k < at.Length; k++) row[k] = slopes[k][i];
            normal.Add(row, -now[i]);
        }
        return normal;
    }

    private static double Sum(double[] residuals)
    {
        double sum = 0;
        foreach (double r in residuals) sum += r * r;
        return double.IsFinite(sum) ? sum : double.PositiveInfinity;
    }
}

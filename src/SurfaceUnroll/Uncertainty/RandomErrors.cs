using System.Collections.Immutable;

namespace SurfaceUnroll.Uncertainty;

/// <summary>Carries errors to the edges by chance: jobs whose readings are all off at once, each by a normal error of its own (JCGM 101:2008, propagation of distributions).</summary>
internal static class RandomErrors
{
    /// <summary>How far the places of a panel move in each of a number of random jobs. The same on however many cores.</summary>
    /// <param name="jobs">The job.</param>
    /// <param name="panel">Name of the panel.</param>
    /// <param name="count">Number of random jobs.</param>
    /// <param name="seed">Of their errors.</param>
    /// <param name="cancellation">Stops between jobs.</param>
    /// <returns>Job by job; null where the panel could not be developed.</returns>
    public static ImmutableArray<double[]?> Moves(MovedJobs jobs, string panel, int count, ulong seed, CancellationToken cancellation)
    {
        int[] readings = [.. jobs.Of(panel)];
        var moves = new double[]?[count];
        Parallel.For(0, count, new ParallelOptions { CancellationToken = cancellation }, k =>
            moves[k] = jobs.Moves(readings.Select(r => (r, jobs.Readings[r].Error * Chance.Normal(seed, k, r))), [panel]).GetValueOrDefault(panel));
        return [.. moves];
    }

    /// <summary>The same, with what the slopes tell as a control: of each job only by how much its square differs from that of the slopes is left to chance, and the slopes' own is known. With edges that nearly follow
    /// their readings in proportion a few hundred jobs then tell as much as many thousand (control variates: Hammersley and Handscomb, Monte Carlo Methods, section 5.5).</summary>
    /// <param name="moves">Job by job, as they came from <paramref name="seed"/>; null where the panel could not be developed.</param>
    /// <param name="slopes">Of the panel. A reading whose slope is not known is left to chance.</param>
    /// <param name="seed">Of the errors.</param>
    public static double[] Standard(ImmutableArray<double[]?> moves, EdgeSlopes slopes, ulong seed)
    {
        double[] known = slopes.InProportion, more = new double[known.Length];
        int count = 0;
        for (int k = 0; k < moves.Length; k++)
        {
            if (moves[k] is not { } move) continue;
            count++;
            double[] draws = [.. slopes.Readings.Select(r => Chance.Normal(seed, k, r))];
            for (int i = 0; i < more.Length; i++)
            {
                double line = 0;
                for (int r = 0; r < draws.Length; r++) line += draws[r] * slopes.Slopes[r][i];
                more[i] += move[i] * move[i] - line * line;
            }
        }
        // By chance what is left may be less than nothing where the slopes tell nearly all.
        return [.. more.Select((sum, i) => Math.Sqrt(Math.Max(0.25 * known[i] * known[i], known[i] * known[i] + sum / Math.Max(1, count))))];
    }

    /// <summary>Standard error of each place about the edge as drawn, mm: the root of the mean square.</summary>
    public static double[] Standard(IEnumerable<double[]> moves, int places)
    {
        double[] squares = new double[places];
        int count = 0;
        foreach (double[] move in moves)
        {
            count++;
            for (int i = 0; i < places; i++) squares[i] += move[i] * move[i];
        }
        return [.. squares.Select(s => Math.Sqrt(s / Math.Max(1, count)))];
    }
}

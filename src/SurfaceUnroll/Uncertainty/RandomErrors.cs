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

using System.Collections.Immutable;

namespace SurfaceUnroll.Uncertainty;

/// <summary>How the edges of one panel follow the readings that it depends on.</summary>
/// <param name="Readings">Numbers of the readings.</param>
/// <param name="Slopes">Of each reading, how far each place moves for one standard error of it, mm.</param>
/// <param name="Bends">Of each reading, how far each place moves alike to whichever side the reading is off by one standard error: what is left of following in proportion, mm.</param>
/// <param name="IsWhole">The panel could be developed with every reading off to either side.</param>
internal sealed record EdgeSlopes(ImmutableArray<int> Readings, ImmutableArray<double[]> Slopes, ImmutableArray<double[]> Bends, bool IsWhole);

/// <summary>Carries errors to the edges by moving each reading to either side by its standard error.</summary>
/// <remarks>The law of propagation of uncertainty for independent readings, u² = Σ (∂f/∂x)²·u(x)² (JCGM 100:2008, section 5.1.2), its slopes from central differences over ±u (5.1.3,
/// note 2).</remarks>
internal static class LinearErrors
{
    // Edges may leave proportion by so much of the band before it is told from chance, and places whose band is narrower than this, mm, are not looked at.
    private const double Proportion = 0.05, Narrow = 0.1;

    // From so many readings on it is told what they have in common.
    private const int Several = 5;

    /// <summary>The slopes of all panels, by name. The same on however many cores.</summary>
    public static Dictionary<string, EdgeSlopes> Of(MovedJobs jobs, CancellationToken cancellation)
    {
        string[] panels = [.. jobs.Panels];
        string[][] touched = [.. jobs.Readings.Select(r => jobs.Touched(r).Intersect(panels).ToArray())];
        var moves = new Dictionary<string, double[]>[2 * jobs.Readings.Length];
        Parallel.For(0, moves.Length, new ParallelOptions { CancellationToken = cancellation }, k =>
        {
            int reading = k / 2;
            moves[k] = touched[reading].Length == 0 ? [] : jobs.Moves([(reading, (k % 2 == 0 ? 1 : -1) * jobs.Readings[reading].Error)], touched[reading]);
        });
        return panels.ToDictionary(panel => panel, panel => Of(panel, jobs, touched, moves));
    }

    /// <summary>Standard error of each place, mm.</summary>
    public static double[] Standard(EdgeSlopes slopes, int places)
    {
        double[] variance = new double[places];
        foreach (double[] slope in slopes.Slopes)
            for (int i = 0; i < places; i++) variance[i] += slope[i] * slope[i];
        return [.. variance.Select(Math.Sqrt)];
    }

    /// <summary>True where the edges follow the readings so nearly in proportion that the slopes alone tell the band.</summary>
    /// <remarks>A normal reading that moves a place by b·x² besides adds b to its mean and 2b² to its variance (JCGM 100:2008, 5.1.2, note).</remarks>
    public static bool Hold(EdgeSlopes slopes, int places)
    {
        if (!slopes.IsWhole) return false;
        double[] standard = Standard(slopes, places);
        for (int i = 0; i < places; i++)
        {
            if (Jobs.BlankError.Coverage * standard[i] < Narrow) continue;
            double mean = 0, more = 0, common = Common(slopes, i);
            foreach (double[] bend in slopes.Bends)
            {
                double own = bend[i] - common;
                mean += own;
                more += 2 * own * own;
            }
            double variance = standard[i] * standard[i];
            if (Math.Sqrt(1 + (mean * mean + more) / variance) - 1 > Proportion) return false;
        }
        return true;
    }

    // What a place moves alike whichever reading is off is no bend: it is by how much the edge as drawn misses its own curve there, which is up to 0.01 mm and more at the end of an arc.
    private static double Common(EdgeSlopes slopes, int place)
    {
        if (slopes.Bends.Length < Several) return 0;
        double[] bends = [.. slopes.Bends.Select(b => b[place]).Order()];
        return bends[bends.Length / 2];
    }

    private static EdgeSlopes Of(string panel, MovedJobs jobs, string[][] touched, Dictionary<string, double[]>[] moves)
    {
        var (readings, slopes, bends) = (new List<int>(), new List<double[]>(), new List<double[]>());
        bool whole = true;
        for (int r = 0; r < touched.Length; r++)
        {
            if (!touched[r].Contains(panel)) continue;
            moves[2 * r].TryGetValue(panel, out double[]? plus);
            moves[2 * r + 1].TryGetValue(panel, out double[]? minus);
            whole &= plus is not null && minus is not null;
            // Where the panel cannot be developed to one side, the other tells the slope as well as it can be known.
            if ((plus ?? minus) is not { } one) continue;
            plus ??= [.. one.Select(m => -m)];
            minus ??= [.. one.Select(m => -m)];
            readings.Add(r);
            slopes.Add([.. plus.Zip(minus, (p, m) => 0.5 * (p - m))]);
            bends.Add([.. plus.Zip(minus, (p, m) => 0.5 * (p + m))]);
        }
        return new EdgeSlopes([.. readings], [.. slopes], [.. bends], whole);
    }
}

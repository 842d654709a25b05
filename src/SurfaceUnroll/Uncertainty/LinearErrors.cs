using System.Collections.Immutable;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Uncertainty;

/// <summary>How the edges of one panel follow the readings that it depends on.</summary>
/// <param name="Readings">Numbers of the readings.</param>
/// <param name="Slopes">Of each reading, how far each place moves for one standard error of it, mm.</param>
/// <param name="Beyond">Mean square of what each place moves besides, out of proportion, mm².</param>
/// <param name="IsWhole">The panel could be developed with every reading off to either side.</param>
internal sealed record EdgeSlopes(ImmutableArray<int> Readings, ImmutableArray<double[]> Slopes, double[] Beyond, bool IsWhole)
{
    /// <summary>Standard error of each place as far as it follows the readings in proportion, mm.</summary>
    public double[] InProportion => [.. Enumerable.Range(0, Beyond.Length).Select(i => Math.Sqrt(Slopes.Sum(slope => slope[i] * slope[i])))];

    /// <summary>Standard error of each place about the edge as drawn, mm.</summary>
    public double[] Standard => [.. InProportion.Zip(Beyond, (known, more) => Math.Sqrt(known * known + more))];
}

/// <summary>Carries errors to the edges by moving each reading to either side by its standard error.</summary>
/// <remarks>The law of propagation of uncertainty for independent readings, u² = Σ (∂f/∂x)²·u(x)² (JCGM 100:2008, section 5.1.2), its slopes from central differences over ±u (5.1.3,
/// note 2), with the terms of second order (5.1.2, note): a normal reading that moves a place by b·x² besides adds b to its mean and 2b² to its variance.</remarks>
internal static class LinearErrors
{
    // Edges may leave proportion by so much of the band before it is told from chance, and places whose band is narrower than this, mm, are not looked at.
    private const double Proportion = 0.05, Narrow = 0.1;

    // From so many readings on it is told what they have in common.
    private const int Several = 5;

    // Jobs with all readings off by chance, each with one whose readings are off the other way.
    private const int Pairs = 4;

    private const ulong Seed = 3;

    /// <summary>The slopes of all panels, by name. The same on however many cores.</summary>
    public static Dictionary<string, EdgeSlopes> Of(MovedJobs jobs, CancellationToken cancellation)
    {
        string[] panels = [.. jobs.Panels];
        string[][] touched = [.. jobs.Readings.Select(r => jobs.Touched(r).Intersect(panels).ToArray())];
        var moves = new Dictionary<string, double[]>[2 * touched.Length];
        double[]?[] all = new double[]?[2 * Pairs * panels.Length];
        Parallel.For(0, moves.Length + all.Length, new ParallelOptions { CancellationToken = cancellation }, k =>
        {
            double side = k % 2 == 0 ? 1 : -1;
            if (k < moves.Length)
            {
                moves[k] = touched[k / 2].Length == 0 ? [] : jobs.Moves([(k / 2, side * jobs.Readings[k / 2].Error)], touched[k / 2]);
                return;
            }
            (int panel, int pair) = Math.DivRem((k - moves.Length) / 2, Pairs);
            string name = panels[panel];
            all[k - moves.Length] = jobs.Moves(jobs.Of(name).Select(r => (r, side * jobs.Readings[r].Error * Chance.Normal(Seed, pair, r))), [name]).GetValueOrDefault(name);
        });
        return panels.Select((panel, p) => (panel, Slopes: Of(panel, touched, moves, all.AsSpan(2 * Pairs * p, 2 * Pairs), jobs.Places(panel).Count))).ToDictionary(s => s.panel, s => s.Slopes);
    }

    /// <summary>True where the edges follow the readings so nearly in proportion that slopes, and the terms of second order, tell the band.</summary>
    public static bool Hold(EdgeSlopes slopes) =>
        slopes.IsWhole && slopes.InProportion.Zip(slopes.Standard).All(s => BlankError.Coverage * s.First < Narrow || s.Second <= (1 + Proportion) * s.First);

    private static EdgeSlopes Of(string panel, string[][] touched, Dictionary<string, double[]>[] moves, ReadOnlySpan<double[]?> pairs, int places)
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
            places = one.Length;
        }
        double[][] own = Own(bends, places);
        double[] mean = Mean(readings, own, pairs, places);
        return new EdgeSlopes([.. readings], [.. slopes], [.. mean.Select((m, i) => m * m + 2 * own.Sum(bend => bend[i] * bend[i]))], whole);
    }

    // What a place moves alike whichever reading is off is no bend of one: it is by how much the edge as drawn misses its own curve there, which is up to 0.01 mm and more at the end of an arc.
    private static double[][] Own(List<double[]> bends, int places)
    {
        if (bends.Count < Several) return [.. bends];
        double[] common = [.. Enumerable.Range(0, places).Select(i => bends.Select(b => b[i]).Order().ElementAt(bends.Count / 2))];
        return [.. bends.Select(bend => bend.Zip(common, (b, c) => b - c).ToArray())];
    }

    // By how much each place moves in the mean of all jobs. Many readings that each make an edge a little longer, to whichever side they are off, cannot be told from what they have in common by moving them
    // one by one: pairs of jobs whose readings are off by the same to either side tell it, less what the bends of their own readings tell of it already.
    private static double[] Mean(List<int> readings, double[][] own, ReadOnlySpan<double[]?> pairs, int places)
    {
        double[] sum = new double[places];
        int count = 0;
        for (int k = 0; k < Pairs; k++)
        {
            if ((pairs[2 * k], pairs[2 * k + 1]) is not ({ } plus, { } minus)) continue;
            count++;
            double[] more = [.. readings.Select(r => Chance.Normal(Seed, k, r)).Select(z => z * z - 1)];
            for (int i = 0; i < places; i++)
            {
                sum[i] += 0.5 * (plus[i] + minus[i]);
                for (int r = 0; r < own.Length; r++) sum[i] -= more[r] * own[r][i];
            }
        }
        return [.. sum.Select((s, i) => count > 0 ? s / count : own.Sum(bend => bend[i]))];
    }
}

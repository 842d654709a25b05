using System.Collections.Immutable;

namespace SurfaceUnroll.Lofting;

/// <summary>The matching of least twist on a lattice of sampled places: it picks the branch that is then refined.</summary>
/// <remarks>Shortest path over a layered graph, after Wang and Tang, "Optimal boundary triangulations of an interpolating ruled surface",
/// J. Computing and Information Science in Engineering 5 (2005). A step costs sin²(twist/2), averaged over its two lines, times the
/// edge that it covers as a fraction of each curve. Every monotone path covers the same edge in all, so no path wins by being short, and a swing of
/// a corner's tangent, which covers no edge, is all but free.</remarks>
internal static class LatticePath
{
    // Weight of lead² in the cost. Where the twist leaves the choice open (flat and prismatic regions) lines are spaced evenly; six
    // orders below the cost of a real twist it decides nothing else.
    private const double EvenSpacing = 1e-6;

    // Share of a corner's coordinate that counts as covered edge: enough to order the steps inside a corner, too little to move a fan.
    private const double CornerWeight = 1e-3;

    /// <summary>The cheapest monotone path from the first to the last sample of both.</summary>
    /// <param name="front">Front directrix.</param>
    /// <param name="rear">Rear directrix.</param>
    /// <param name="xs">Front coordinates, increasing.</param>
    /// <param name="ys">Rear coordinates, increasing.</param>
    public static ImmutableArray<Match> Find(Directrix front, Directrix rear, ImmutableArray<double> xs, ImmutableArray<double> ys)
    {
        DirectrixSample[] a = [.. xs.Select(front.At)], b = [.. ys.Select(rear.At)];
        double[] da = Covered(front, xs), db = Covered(rear, ys);
        int columns = ys.Length;
        double[] best = new double[columns], cost = new double[columns], costAbove = new double[columns];
        var steps = new Step[xs.Length * columns];
        for (int i = 0; i < xs.Length; i++)
        {
            (cost, costAbove) = (costAbove, cost);
            double diagonal = double.PositiveInfinity;
            for (int j = 0; j < columns; j++)
            {
                double lead = xs[i] - ys[j];
                cost[j] = Torsality.Cost(a[i], b[j]) + EvenSpacing * lead * lead;
                double above = best[j], choice = i == 0 && j == 0 ? 0 : double.PositiveInfinity;
                Step step = Step.Both;
                if (i > 0 && j > 0) Take(Step.Both, diagonal, costAbove[j - 1], da[i] + db[j]);
                if (i > 0) Take(Step.Front, above, costAbove[j], da[i]);
                if (j > 0) Take(Step.Rear, best[j - 1], cost[j - 1], db[j]);
                steps[i * columns + j] = step;
                diagonal = above;
                best[j] = choice;

                void Take(Step kind, double before, double costBefore, double covered)
                {
                    double total = before + 0.5 * (cost[j] + costBefore) * covered;
                    if (total < choice) (choice, step) = (total, kind);
                }
            }
        }
        return Trace(xs, ys, steps);
    }

    private static double[] Covered(Directrix curve, ImmutableArray<double> xs)
    {
        var covered = new double[xs.Length];
        for (int i = 1; i < xs.Length; i++)
            covered[i] = (curve.StandsStill(xs[i - 1], xs[i]) ? CornerWeight : 1) * (xs[i] - xs[i - 1]);
        return covered;
    }

    private static ImmutableArray<Match> Trace(ImmutableArray<double> xs, ImmutableArray<double> ys, Step[] steps)
    {
        var path = new List<Match>();
        for (int i = xs.Length - 1, j = ys.Length - 1; ;)
        {
            path.Add(new Match(xs[i], ys[j]));
            if (i == 0 && j == 0) break;
            Step step = steps[i * ys.Length + j];
            if (step != Step.Rear) i--;
            if (step != Step.Front) j--;
        }
        path.Reverse();
        return [.. path];
    }

    private enum Step : byte
    {
        Both,
        Front,
        Rear,
    }
}

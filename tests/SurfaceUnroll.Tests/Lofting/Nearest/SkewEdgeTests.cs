using SurfaceUnroll.Curves;
using SurfaceUnroll.Fitness;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Lofting;
using SurfaceUnroll.Lofting.Nearest;

namespace SurfaceUnroll.Tests.Lofting.Nearest;

/// <summary>Two straight skew edges. The still one has one tangent plane, so the other must lie in it at one place, and be the mantle of a cone about one end of the still edge to its left and of one about the
/// other end to its right. All that is left to choose is that place; for each the best edge follows from one system of linear equations, which these tests solve for every place there is.</summary>
public class SkewEdgeTests
{
    private const int Spans = 120;

    [Theory]
    [InlineData(0.5)]
    [InlineData(2)]
    public void Edge_is_the_one_that_a_dense_search_over_all_places_finds(double degrees)
    {
        (SpaceCurve front, SpaceCurve rear, EdgePlane plane) = DisturbedEdges.Skew(degrees);
        FreedomResult found = EdgeFreedom.Find(front, rear, plane, 4);
        Assert.Equal(FreedomOutcome.Found, found.Outcome);
        Assert.InRange(SheetFitness.Twist(Loft.Between(front, rear, ElementMatching.BendOnly)).Max, 0.9 * degrees * Math.PI / 180, Math.PI);
        Assert.InRange(SheetFitness.Twist(Loft.Along(front, found.Edge!, found.Lines)).Max, 0, 1e-6);

        double length = rear.Length, angle = degrees * Math.PI / 180;
        (double best, double[] moves) = Dense(length, angle);
        double cost = Cost(length, [.. found.Moves.Select(m => m.Move)]);
        // The search stops where a place nearby gains less than a thousandth; the equations take the sine of the angle for the angle, and angle²/6 is 2e-4 here.
        Assert.InRange(cost / best, 1 - 1e-3, 1 + 3e-3);
        Assert.Equal(moves.Max(Math.Abs), found.Moves.Max(m => Math.Abs(m.Move)), 0.02 * moves.Max(Math.Abs));
    }

    // Least mean of move² + spread⁴·(change of direction per length)², the ends held and the direction at one place, of all places, the plane's. Unknowns are the directions; moves are their sums. With K the matrix of the
    // equations for held ends, the directions for place j are column j of its inverse, scaled, and their cost is angle²/(2·K⁻¹[j, j]).
    private static (double Cost, double[] Moves) Dense(double length, double angle)
    {
        const int n = Spans + 1;
        double h = length / Spans, spread = length / 32;
        var sums = new double[n, n];
        for (int i = 1; i < n; i++)
            for (int k = 0; k < n; k++)
                sums[i, k] = sums[i - 1, k] + (k == i || k == i - 1 ? 0.5 * h : 0);
        var system = new double[n + 1, 2 * n + 2];
        for (int i = 0; i < n; i++)
        {
            double share = (i is 0 or n - 1 ? 0.5 : 1) * h / length;
            for (int a = 0; a < n; a++)
                for (int b = 0; b < n; b++)
                    system[a, b] += 2 * share * sums[i, a] * sums[i, b];
            if (i == 0) continue;
            double bend = 2 * Math.Pow(spread, 4) / (h * length);
            (system[i, i], system[i - 1, i - 1]) = (system[i, i] + bend, system[i - 1, i - 1] + bend);
            (system[i, i - 1], system[i - 1, i]) = (system[i, i - 1] - bend, system[i - 1, i] - bend);
        }
        for (int k = 0; k < n; k++) system[n, k] = system[k, n] = sums[n - 1, k];
        double[,] inverse = Inverse(system, n + 1);
        int at = Enumerable.Range(0, n).MaxBy(k => inverse[k, k]);
        double[] turns = [.. Enumerable.Range(0, n).Select(k => angle * inverse[k, at] / inverse[at, at])];
        double[] moves = [.. Enumerable.Range(0, n).Select(i => Enumerable.Range(0, n).Sum(k => sums[i, k] * turns[k]))];
        return (0.5 * angle * angle / inverse[at, at], moves);
    }

    // The same cost of moves alone: directions that give them, one more than there are equations, are fixed by their own least change.
    private static double Cost(double length, double[] moves)
    {
        double h = length / Spans, spread = length / 32, best = double.PositiveInfinity;
        double Of(double first)
        {
            double turn = first, cost = 0;
            for (int i = 0; i <= Spans; i++)
            {
                cost += (i is 0 or Spans ? 0.5 : 1) * h / length * moves[i] * moves[i];
                if (i == 0) continue;
                double next = 2 * (moves[i] - moves[i - 1]) / h - turn;
                cost += Math.Pow(spread, 4) * Math.Pow(next - turn, 2) / (h * length);
                turn = next;
            }
            return cost;
        }

        // A parabola in the first direction.
        double c0 = Of(0), c1 = Of(1e-3), c2 = Of(-1e-3), slope = (c1 - c2) / 2e-3, bend = (c1 + c2 - 2 * c0) / 1e-6;
        best = Math.Min(best, Of(-slope / bend));
        return best;
    }

    // Gauss and Jordan with row exchanges, on a matrix with as many free columns beside it.
    private static double[,] Inverse(double[,] m, int n)
    {
        for (int i = 0; i < n; i++) m[i, n + i] = 1;
        for (int c = 0; c < n; c++)
        {
            int pivot = Enumerable.Range(c, n - c).MaxBy(r => Math.Abs(m[r, c]));
            double lead = m[pivot, c];
            for (int k = 0; k < 2 * n; k++)
            {
                (m[c, k], m[pivot, k]) = (m[pivot, k], m[c, k]);
                m[c, k] /= lead;
            }
            for (int r = 0; r < n; r++)
            {
                double factor = m[r, c];
                if (r == c || factor == 0) continue;
                for (int k = 0; k < 2 * n; k++) m[r, k] -= factor * m[c, k];
            }
        }
        var inverse = new double[n, n];
        for (int r = 0; r < n; r++)
            for (int c = 0; c < n; c++) inverse[r, c] = m[r, n + c];
        return inverse;
    }
}

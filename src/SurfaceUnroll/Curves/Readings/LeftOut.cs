using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Curves.Readings;

/// <summary>How far readings lie from the smooth curve through their neighbours, each left out of it in turn.</summary>
/// <param name="row">All places in order; of a mirrored curve both halves.</param>
/// <param name="mirrored">The row is its own mirror image, so that a reading stands in it twice.</param>
internal sealed class LeftOut(Vec2[] row, bool mirrored)
{
    /// <summary>Most neighbours on a side that tell where a reading should lie.</summary>
    public const int Reach = 3;

    private const int Samples = 24;

    // Of the usual way between two readings: a reading that was written down wrongly, far away, does not make a wide gap of those beside it.
    private const double WidestGap = 4;

    /// <summary>The usual way from a reading to the next, mm.</summary>
    public double Step { get; } = Usual(row);

    /// <summary>Number of places.</summary>
    public int Count => row.Length;

    /// <summary>Where a reading stands.</summary>
    public Vec2 Place(int index) => row[index];

    /// <summary>The row with another place in the stead of a reading.</summary>
    public LeftOut With(int index, Vec2 place)
    {
        Vec2[] other = [.. row];
        other[index] = place;
        if (mirrored) other[^(index + 1)] = place with { X = -place.X };
        return new LeftOut(other, mirrored);
    }

    /// <summary>The curve through its neighbours; null at an end and where too few are left.</summary>
    /// <param name="index">The reading that is left out.</param>
    /// <param name="without">Readings that are left out besides.</param>
    public Gap? Across(int index, IReadOnlySet<int> without)
    {
        bool Counts(int i) => Stands(i, index, without);
        int[] before = Neighbours(index, -1, Counts), after = Neighbours(index, 1, Counts);
        if (before.Length == 0 || after.Length == 0 || before.Length + after.Length < 3) return null;
        // Two neighbours know nothing of a bend farther away, more see how the bend changes: what lies near to either goes with them.
        var ways = new List<Vec2[]>();
        foreach (int reach in new[] { 2, Reach })
        {
            Vec3[] around = [.. before.Take(reach).Reverse().Concat(after.Take(reach)).Select(i => new Vec3(0, row[i].X, row[i].Y))];
            if (around.Zip(around.Skip(1)).Any(pair => pair.First == pair.Second)) return null;
            CurvePiece span = CubicSpline.Open(around, CurveEnd.Free, CurveEnd.Free)[Math.Min(reach, before.Length) - 1];
            ways.Add([.. Enumerable.Range(0, Samples + 1).Select(i => span.At((double)i / Samples).Point).Select(p => new Vec2(p.Y, p.Z))]);
            if (before.Length <= 2 && after.Length <= 2) break;
        }
        return new Gap([.. ways], Math.Min((row[after[0]] - row[before[0]]).Length, WidestGap * Step));
    }

    /// <summary>Where an end should lie: on the curve through the three nearest readings as it runs on, or straight on; null where too few are left.</summary>
    public Gap? Beyond(int index, IReadOnlySet<int> without)
    {
        int[] near = Neighbours(index, index == 0 ? 1 : -1, i => i != index && !without.Contains(i));
        if (near.Length < 3) return null;
        (Vec2 a, Vec2 b, Vec2 c) = (row[near[0]], row[near[1]], row[near[2]]);
        double ab = (a - b).Length, bc = (b - c).Length;
        if (ab == 0 || bc == 0) return null;
        Vec2 first = (1 / ab) * (a - b), second = (1 / (ab + bc)) * (first - (1 / bc) * (b - c));
        double[] ways = [.. Enumerable.Range(0, Samples + 1).Select(i => 2 * Step * i / Samples)];
        return new Gap([[.. ways.Select(t => a + t * first)], [.. ways.Select(t => a + t * first + t * (t + ab) * second)]], 2 * Step);
    }

    /// <summary>The way from an end to its neighbour, mm.</summary>
    public double StepTo(int index) => (row[index] - row[index == 0 ? 1 : index - 1]).Length;

    /// <summary>It stands where its neighbour does.</summary>
    public bool IsTwice(int index) => (index > 0 && row[index - 1] == row[index]) || (index + 1 < row.Length && row[index + 1] == row[index]);

    /// <summary>It has two neighbours that count on each side, so that a bend beside it is seen from both.</summary>
    public bool IsWellInside(int index, IReadOnlySet<int> without)
    {
        bool Counts(int i) => Stands(i, index, without);
        return Neighbours(index, -1, Counts).Length >= 2 && Neighbours(index, 1, Counts).Length >= 2;
    }

    // From the nearest on.
    private int[] Neighbours(int index, int way, Func<int, bool> counts)
    {
        var found = new List<int>(Reach);
        for (int i = index + way; i >= 0 && i < row.Length && found.Count < Reach; i += way)
            if (counts(i)) found.Add(i);
        return [.. found];
    }

    // A reading of a mirrored row is left out on both sides.
    private bool Stands(int i, int index, IReadOnlySet<int> without) =>
        i != index && !without.Contains(i) && !(mirrored && (i == row.Length - 1 - index || without.Contains(row.Length - 1 - i)));

    private static double Usual(Vec2[] row)
    {
        double[] steps = [.. row.Zip(row.Skip(1)).Select(p => (p.Second - p.First).Length).Order()];
        return steps.Length == 0 ? 0 : steps[steps.Length / 2];
    }
}

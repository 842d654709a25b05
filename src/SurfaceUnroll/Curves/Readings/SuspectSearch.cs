using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Curves.Readings;

/// <summary>A reading that does not go with its neighbours.</summary>
/// <param name="Index">In the row.</param>
/// <param name="Slip">What it may have been; null if no slip of the pen explains it.</param>
internal sealed record Suspect(int Index, SlipOfPen? Slip);

/// <summary>Finds readings that break an otherwise smooth row.</summary>
internal static class SuspectSearch
{
    // Of the gap between its neighbours: what stands off by less makes no visible bump.
    private const double Least = 0.08;

    // Against the worst of the readings that are left: a reading is accused only where everything else is this much smoother without it. One that a slip of the pen
    // explains needs less than one that nothing does. On clean rows the worst reading stands off by at most twice the next (the tests try all that there are).
    private const double WithSlip = 3, Alone = 6;

    // A place in its stead must go with its neighbours as well as they do, or this well.
    private const double Well = 0.03;

    // Fewer readings than this tell nothing of each other, and no more than one in five is doubted.
    private const int Fewest = 6, Share = 5;

    /// <summary>The suspects of a row; none where it is too short to tell.</summary>
    /// <param name="row">Places in order.</param>
    /// <param name="mirrored">It is its own mirror image; then only its right half is looked at.</param>
    /// <param name="unit">mm of the unit that it was written in.</param>
    public static ImmutableArray<Suspect> In(Vec2[] row, bool mirrored, double unit)
    {
        int[] readings = [.. Enumerable.Range(0, row.Length).Where(i => !mirrored || 2 * i >= row.Length - 1)];
        if (readings.Length < (mirrored ? Fewest - 1 : Fewest)) return [];
        var left = new LeftOut(row, mirrored);
        var doubted = new HashSet<int>();
        for (int count = 1; count <= Math.Max(1, readings.Length / Share); count++)
        {
            if (Worst(left, readings, doubted) is not { } worst) return [];
            doubted.Add(worst);
            double[] others = [.. readings.Where(i => !doubted.Contains(i)).Select(i => left.Share(i, doubted)).OfType<double>()];
            if (others.Length < 2) return [];
            Suspect?[] found = [.. doubted.Order().Select(i => Judge(left, row, i, doubted, others.Max(), unit))];
            if (found.All(s => s is not null)) return [.. found.OfType<Suspect>()];
        }
        return [];
    }

    // The reading without which the others go together best.
    private static int? Worst(LeftOut left, int[] readings, HashSet<int> doubted)
    {
        (int? worst, double least) = (null, double.PositiveInfinity);
        foreach (int i in readings.Where(i => !doubted.Contains(i) && left.Share(i, doubted) > Least))
        {
            HashSet<int> without = [.. doubted, i];
            double rest = readings.Where(k => !without.Contains(k)).Sum(k => left.Share(k, without) is { } share ? share * share : 0);
            if (rest < least) (worst, least) = (i, rest);
        }
        return worst;
    }

    private static Suspect? Judge(LeftOut left, Vec2[] row, int index, HashSet<int> doubted, double others, double unit)
    {
        if (left.Share(index, doubted) is not { } own || own < Least) return null;
        HashSet<int> without = [.. doubted.Where(i => i != index)];
        SlipOfPen? slip = SlipOfPen.Behind(row[index], unit)
            .Select(s => (Slip: s, Share: left.Share(index, s.Place, without) ?? double.PositiveInfinity))
            .Where(s => s.Share <= Math.Max(others, Well) && s.Share < own / WithSlip)
            .OrderBy(s => s.Share).Select(s => s.Slip).FirstOrDefault();
        if (slip is null && !left.IsWellInside(index, doubted)) return null;
        return own > (slip is null ? Alone : WithSlip) * others ? new Suspect(index, slip) : null;
    }
}

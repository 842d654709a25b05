using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Curves.Readings;

/// <summary>How far readings lie from the smooth curve through their neighbours, each left out of it in turn.</summary>
/// <param name="row">All places in order; of a mirrored curve both halves.</param>
/// <param name="mirrored">The row is its own mirror image, so that a reading stands in it twice.</param>
internal sealed class LeftOut(Vec2[] row, bool mirrored)
{
    private const int Samples = 32;

    // mm: a careful reading with rule and tape is good to this (common practice, no source), so no row is smoother.
    private const double Hand = 1.5;

    /// <summary>Number of places.</summary>
    public int Count => row.Length;

    /// <summary>Distance of a place from the curve through up to two neighbours on each side, as a part of the gap between the nearest of them; 0 where it is no
    /// more than a careful hand errs, null at an end and where too few are left.</summary>
    /// <param name="index">The reading that is left out.</param>
    /// <param name="place">The place to judge: that of the reading, or another in its stead.</param>
    /// <param name="without">Readings that are left out besides.</param>
    public double? Share(int index, Vec2 place, IReadOnlySet<int> without)
    {
        bool Counts(int i) => Stands(i, index, without);
        int[] before = [.. Enumerable.Range(0, index).Reverse().Where(Counts).Take(2).Reverse()], after = [.. Enumerable.Range(index + 1, row.Length - 1 - index).Where(Counts).Take(2)];
        if (before.Length == 0 || after.Length == 0 || before.Length + after.Length < 3) return null;
        Vec3[] around = [.. before.Concat(after).Select(i => new Vec3(0, row[i].X, row[i].Y))];
        if (around.Zip(around.Skip(1)).Any(pair => pair.First == pair.Second)) return null;
        CurvePiece span = CubicSpline.Open(around, CurveEnd.Free, CurveEnd.Free)[before.Length - 1];
        var p = new Vec3(0, place.X, place.Y);
        double distance = Enumerable.Range(0, Samples + 1).Min(i => (span.At((double)i / Samples).Point - p).Length);
        return distance <= Hand ? 0 : distance / (row[after[0]] - row[before[^1]]).Length;
    }

    /// <summary>It has two neighbours that count on each side, so that a bend beside it is seen from both.</summary>
    public bool IsWellInside(int index, IReadOnlySet<int> without)
    {
        bool Counts(int i) => Stands(i, index, without);
        return Enumerable.Range(0, index).Count(Counts) >= 2 && Enumerable.Range(index + 1, row.Length - 1 - index).Count(Counts) >= 2;
    }

    /// <summary>The same of a reading as it stands.</summary>
    public double? Share(int index, IReadOnlySet<int> without) => Share(index, row[index], without);

    // A reading of a mirrored row is left out on both sides.
    private bool Stands(int i, int index, IReadOnlySet<int> without) =>
        i != index && !without.Contains(i) && !(mirrored && (i == row.Length - 1 - index || without.Contains(row.Length - 1 - i)));
}

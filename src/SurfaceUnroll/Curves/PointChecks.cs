using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Curves;

/// <summary>Checks on measured points and on the smooth curve through them.</summary>
internal static class PointChecks
{
    // Samples of a span in the checks of shape; a slow place between two of them is then closed in on.
    private const int Samples = 32;

    /// <summary>Errors that can be told from the points alone.</summary>
    public static IEnumerable<Notice> Faults(PointRow row, CurveFaults faults)
    {
        if (row.Places.Length < 2) return [faults.TooFewPoints(row.Places.Length)];
        Notice[] wild = [.. row.Places.Select((p, i) => (p, i)).Where(x => !MeasuredCurve.IsFinite(x.p)).Select(x => faults.NotFinite(Part(row, x.i)))];
        if (wild.Length > 0) return wild;
        IEnumerable<Notice> repeats = Repeats(row, faults);
        return [.. row.Mirror ? Centreline(row, faults) : [], .. repeats, .. repeats.Any() ? [] : Folds(row, faults)];
    }

    /// <summary>Cusps and wide swings of the curve through the points.</summary>
    public static IEnumerable<Notice> ShapeFaults(PointRow row, ImmutableArray<CurvePiece> spans, CurveFaults faults)
    {
        for (int i = 0; i < spans.Length; i++)
        {
            if (spans[i].IsStraight) continue;
            (double speed, Vec3 place) = Slowest(spans[i]);
            double chord = (row.Places[i + 1] - row.Places[i]).Length;
            if (speed < Tolerance.Cusp * chord) yield return faults.Cusp(Part(row, i), place, row.IsPlanar);
            (double swing, Vec3 widest) = Widest(spans[i]);
            if (swing > Tolerance.Bulge * chord) yield return faults.Bulges(Part(row, i), swing, widest, row.IsPlanar);
        }
    }

    private static string Part(PointRow row, int index) => $".{row.Key}[{index}]";

    private static IEnumerable<Notice> Repeats(PointRow row, CurveFaults faults)
    {
        double near = Tolerance.Coincidence * row.Size;
        int last = row.Places.Length - 1;
        for (int i = 1; i <= last; i++)
        {
            int first = row.IsPlanar ? i - 1 : 0; // A profile through one place twice crosses itself, and is told so.
            for (int j = i - 1; j >= first; j--)
            {
                bool closes = i == last && j == 0 && last > 1;
                if (!closes && (row.Places[i] - row.Places[j]).Length <= near) yield return faults.Repeated(Part(row, i), i, j);
            }
        }
    }

    private static IEnumerable<Notice> Centreline(PointRow row, CurveFaults faults)
    {
        double near = Tolerance.Centreline(row.Size);
        if (Math.Abs(row.Places[0].Y) > near) yield return faults.OffCentreline(Part(row, 0), row.Places[0].Y);
        for (int i = 1; i < row.Places.Length; i++)
        {
            if (row.Places[i].Y < -near) yield return faults.LeftOfCentreline(Part(row, i), row.Places[i].Y);
        }
    }

    private static IEnumerable<Notice> Folds(PointRow row, CurveFaults faults)
    {
        ImmutableArray<Vec3> p = row.Snapped().Places;
        int last = p.Length - 1;
        if (row.Mirror && IsFold(Mirrored(p[1]), p[0], p[1])) yield return faults.FoldsBack(Part(row, 0), p[0], row.IsPlanar);
        for (int i = 1; i + 1 < p.Length; i++)
        {
            if (IsFold(p[i - 1], p[i], p[i + 1])) yield return faults.FoldsBack(Part(row, i), p[i], row.IsPlanar);
        }
        bool foldsAtJoin = row.Mirror
            ? p[last].Y == 0 && IsFold(p[last - 1], p[last], Mirrored(p[last - 1]))
            : p[0] == p[last] && IsFold(p[last - 1], p[0], p[1]);
        if (foldsAtJoin) yield return faults.FoldsBack(Part(row, last), p[last], row.IsPlanar);
    }

    private static Vec3 Mirrored(Vec3 p) => p with { Y = -p.Y };

    private static bool IsFold(Vec3 before, Vec3 at, Vec3 after) => (at - before).AngleTo(after - at) > Tolerance.Fold;

    // Least |D1| of a span and where: the slowest sample, then a ternary search between its neighbours.
    private static (double Speed, Vec3 Place) Slowest(CurvePiece span)
    {
        double Speed(double t) => span.At(t).D1.Length;
        double slowest = Enumerable.Range(0, Samples + 1).Select(i => (double)i / Samples).MinBy(Speed);
        double lo = Math.Max(0, slowest - 1.0 / Samples), hi = Math.Min(1, slowest + 1.0 / Samples);
        for (int i = 0; i < 60; i++)
        {
            double a = lo + (hi - lo) / 3, b = hi - (hi - lo) / 3;
            if (Speed(a) < Speed(b)) hi = b; else lo = a;
        }
        double t = 0.5 * (lo + hi);
        return (Math.Min(Speed(t), Speed(slowest)), span.At(t).Point);
    }

    // Largest distance from the chord, as a segment.
    private static (double Distance, Vec3 Place) Widest(CurvePiece span)
    {
        Vec3 start = span.At(0).Point, chord = span.At(1).Point - start;
        double FromChord(Vec3 p)
        {
            double along = Math.Clamp((p - start).Dot(chord) / chord.Dot(chord), 0, 1);
            return (p - start - along * chord).Length;
        }
        Vec3 widest = Enumerable.Range(1, Samples - 1).Select(i => span.At((double)i / Samples).Point).MaxBy(FromChord);
        return (FromChord(widest), widest);
    }
}

using System.Collections.Immutable;
using NetTopologySuite.Geometries;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Allowances;

/// <summary>An allowance along a run of the outline.</summary>
/// <param name="Width">mm; negative on the metal's own side.</param>
/// <param name="Kind">Why.</param>
/// <param name="Corners">Treatment of its ends, and of corners within it.</param>
internal readonly record struct RunAllowance(double Width, JointKind Kind, CornerStyle Corners)
{
    /// <summary>Nothing left on.</summary>
    public static RunAllowance None => new(0, JointKind.Butt, CornerStyle.Mitre);
}

/// <summary>Regions that an allowance adds along a path whose metal lies on its left.</summary>
internal static class AllowanceBands
{
    // Turns below this, radians, are those of a smooth line.
    private const double Smooth = 0.15;

    // A mitre runs out no farther than this many widths.
    private const double LongestMitre = 3;

    // A corner that turns by less than this, radians, is not mitred beside a run without allowance: the taper would be longer than 1.7 widths.
    private const double LeastTaper = Math.PI / 6;

    // Piece of a band that is drawn in one go: it turns by less than a right angle in all, so that it does not meet itself.
    private const double MostTurn = 1.2;

    /// <summary>The band between a path and the line at a distance on its right; on its left if the distance is negative.</summary>
    public static IEnumerable<Polygon> Along(ImmutableArray<Vec2> path, RunAllowance allowance)
    {
        double width = allowance.Width;
        Vec2[] right = [.. Enumerable.Range(0, path.Length - 1).Select(i => -(path[i + 1] - path[i]).Unit.Left)];
        int from = 0;
        while (from < right.Length)
        {
            int to = from + 1;
            double turned = 0;
            while (to < right.Length)
            {
                double turn = Turn(right[to - 1], right[to]);
                turned += Math.Abs(turn);
                if (Math.Abs(turn) > Smooth || turned > MostTurn || Inverts(path, right, to, width)) break;
                to++;
            }
            foreach (Polygon strip in Strips(path, right, from, to, allowance)) yield return strip;
            // Between two pieces of the band, the corner or the smooth place where they part.
            if (to < right.Length)
                foreach (Polygon corner in Corner(path[to], right[to - 1], right[to], allowance, allowance)) yield return corner;
            from = to;
        }
    }

    /// <summary>What fills the corner between two runs.</summary>
    /// <param name="at">The corner.</param>
    /// <param name="before">Unit vector to the right of the run before it.</param>
    /// <param name="after">Unit vector to the right of the run after it.</param>
    /// <param name="first">Allowance of the run before.</param>
    /// <param name="second">Allowance of the run after.</param>
    public static IEnumerable<Polygon> Corner(Vec2 at, Vec2 before, Vec2 after, RunAllowance first, RunAllowance second)
    {
        double turn = Turn(before, after), w1 = first.Width, w2 = second.Width;
        // Only between two allowances on one side, and only on the side on which the corner opens, is there anything to fill.
        if (w1 * w2 <= 0 || turn * w1 <= 1e-9) yield break;
        CornerStyle style = Math.Abs(turn) <= Smooth ? CornerStyle.Mitre : Style(first, second);
        Vec2 p = at + w1 * before, q = at + w2 * after;
        if (style == CornerStyle.Square) yield break;
        if (style == CornerStyle.Round)
        {
            double radius = Math.Sign(w1) * Math.Min(Math.Abs(w1), Math.Abs(w2));
            int steps = (int)Math.Ceiling(Math.Abs(turn) / Math.Min(0.3, Math.Sqrt(8 * 0.004 / Math.Abs(radius))));
            if (Polygons.Simple([at, .. Enumerable.Range(0, steps + 1).Select(k => at + radius * before.Rotate(turn * k / steps))]) is { } sector) yield return sector;
            yield break;
        }
        // Where the two lines, run on, meet.
        Vec2 along1 = before.Left, along2 = after.Left;
        double cross = along1.Cross(along2);
        if (Math.Abs(cross) < 1e-9) yield break;
        Vec2 meeting = p + (q - p).Cross(along2) / cross * along1;
        double reach = (meeting - at).Length, most = LongestMitre * Math.Max(Math.Abs(w1), Math.Abs(w2));
        Vec2[] shape = [at, p, meeting, q];
        if (reach > most)
        {
            // Cut off square to the bisector.
            Vec2 out1 = p + most / reach * (meeting - p), out2 = q + most / reach * (meeting - q);
            shape = [at, p, out1, out2, q];
        }
        if (Polygons.Simple(shape) is { } mitre) yield return mitre;
    }

    /// <summary>What a mitred allowance loses beside a run that has none: what would stand out past that run's own line. Null where it loses nothing.</summary>
    /// <param name="at">The corner.</param>
    /// <param name="before">Unit vector to the right of the run before it.</param>
    /// <param name="after">Unit vector to the right of the run after it.</param>
    /// <param name="first">Allowance of the run before.</param>
    /// <param name="second">Allowance of the run after.</param>
    public static Polygon? Taper(Vec2 at, Vec2 before, Vec2 after, RunAllowance first, RunAllowance second)
    {
        RunAllowance given = first.Width != 0 ? first : second;
        double turn = Turn(before, after);
        // Nearly in line with its neighbour an allowance would lose far too much, and square to it nothing.
        if (given.Width <= 0 || first.Width * second.Width != 0 || given.Corners != CornerStyle.Mitre || turn < LeastTaper || turn > 0.5 * Math.PI - 1e-6) return null;
        // A wedge wider than the band, whose far line may bulge.
        double reach = 2 * given.Width;
        (Vec2 end, Vec2 line) = first.Width != 0 ? (before, -after.Left) : (after, before.Left);
        return Polygons.Simple([at, at + reach * end, at + reach / Math.Sin(turn) * line]);
    }

    /// <summary>Treatment of the corner between two allowances: a lip's first, since what stands up must clear its neighbour.</summary>
    public static CornerStyle Style(RunAllowance first, RunAllowance second)
    {
        if (first.Kind == JointKind.Lip != (second.Kind == JointKind.Lip)) return first.Kind == JointKind.Lip ? first.Corners : second.Corners;
        return first.Corners == second.Corners ? first.Corners : CornerStyle.Square;
    }

    /// <summary>Turn from one direction to another, radians, positive to the left.</summary>
    public static double Turn(Vec2 from, Vec2 to) => Math.Atan2(from.Cross(to), from.Dot(to));

    // True if the line at the distance would run backwards along the segment before a place.
    private static bool Inverts(ImmutableArray<Vec2> path, Vec2[] right, int at, double width)
    {
        double bend = Math.Abs(Turn(right[at - 1], right[at])) * Math.Abs(width);
        return bend > 0.5 * Math.Min((path[at] - path[at - 1]).Length, (path[at + 1] - path[at]).Length) && Turn(right[at - 1], right[at]) * width < 0;
    }

    // One strip along a smooth piece; where that would run into itself, segment by segment.
    private static IEnumerable<Polygon> Strips(ImmutableArray<Vec2> path, Vec2[] right, int from, int to, RunAllowance allowance)
    {
        if (Polygons.Simple(Strip(path, right, from, to, allowance.Width)) is { } strip) return [strip];
        if (to - from == 1) return [];
        return Enumerable.Range(from, to - from).SelectMany(i => Strips(path, right, i, i + 1, allowance)
            .Concat(i + 1 < to ? Corner(path[i + 1], right[i], right[i + 1], allowance, allowance) : []));
    }

    private static List<Vec2> Strip(ImmutableArray<Vec2> path, Vec2[] right, int from, int to, double width)
    {
        var shape = new List<Vec2>();
        for (int i = from; i <= to; i++) shape.Add(path[i]);
        for (int i = to; i >= from; i--)
        {
            Vec2 a = right[Math.Max(from, i - 1)], b = right[Math.Min(to - 1, i)];
            Vec2 mean = (a + b).Unit;
            shape.Add(path[i] + width / mean.Dot(b) * mean);
        }
        return shape;
    }
}

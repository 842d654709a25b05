using System.Collections.Immutable;
using NetTopologySuite.Geometries;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Allowances;

/// <summary>An allowance along a run of the outline.</summary>
/// <param name="Width">mm; negative on the metal's own side.</param>
/// <param name="Kind">Why.</param>
/// <param name="Corners">Treatment of its ends, and of corners within it.</param>
/// <param name="Setback">Of a lip, how far inside the net edge its bend begins, mm.</param>
internal readonly record struct RunAllowance(double Width, JointKind Kind, CornerStyle Corners, double Setback = 0)
{
    /// <summary>How wide it is along the run; null where it is as wide everywhere.</summary>
    public VaryingWidth? Varying { get; init; }

    /// <summary>The allowance as it is at a place of the run.</summary>
    public RunAllowance At(Vec2 place) => Varying is { } varying ? this with { Width = varying.At(place) } : this;

    /// <summary>It is bent.</summary>
    public bool IsLip => Kind == JointKind.Lip && Width > 0;

    /// <summary>Nothing left on.</summary>
    public static RunAllowance None => new(0, JointKind.Butt, CornerStyle.Mitre);
}

/// <summary>Regions that an allowance adds along a path whose metal lies on its left.</summary>
internal static class AllowanceBands
{
    // Piece of a band that is drawn in one go: it turns by less than a right angle in all, so that it does not meet itself.
    private const double MostTurn = 1.2;

    private const double Overlap = 1e-3;

    /// <summary>The band between a path and the line at a distance on its right; on its left if the distance is negative.</summary>
    public static IEnumerable<Polygon> Along(ImmutableArray<Vec2> path, RunAllowance allowance)
    {
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
                if (Math.Abs(turn) > AllowanceCorner.Smooth || turned > MostTurn || Inverts(path, right, to, allowance.At(path[to]).Width)) break;
                to++;
            }
            foreach (Polygon strip in Strips(path, right, from, to, allowance)) yield return strip;
            // Between two pieces of the band, the corner or the smooth place where they part.
            if (to < right.Length && Corner(to) is { } corner) yield return corner;
            from = to;
        }

        Polygon? Corner(int i) => new AllowanceCorner(path[i], right[i - 1], right[i], allowance.At(path[i]), allowance.At(path[i])).Filling();
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
        if (Polygons.Simple(Strip(path, right, from, to, allowance)) is { } strip) return [strip];
        if (to - from == 1) return [];
        return Enumerable.Range(from, to - from).SelectMany(i => Strips(path, right, i, i + 1, allowance)
            .Concat(i + 1 < to && new AllowanceCorner(path[i + 1], right[i], right[i + 1], allowance.At(path[i + 1]), allowance.At(path[i + 1])).Filling() is { } corner ? [corner] : []));
    }

    private static List<Vec2> Strip(ImmutableArray<Vec2> path, Vec2[] right, int from, int to, RunAllowance allowance)
    {
        var shape = new List<Vec2>();
        // Places that were put between those of the outline need not lie on it to the last digit: a little way into the metal no crack stays.
        for (int i = from; i <= to; i++) shape.Add(allowance.Varying is null ? path[i] : path[i] - Overlap * right[Math.Min(i, to - 1)]);
        for (int i = to; i >= from; i--)
        {
            double width = allowance.At(path[i]).Width;
            // At its ends to the last digit where the corner beside it is filled from, or a crack would stay between them.
            Vec2 end = right[i == from ? from : to - 1];
            if (i == from || i == to)
            {
                shape.Add(path[i] + width * end);
                continue;
            }
            Vec2 mean = (right[i - 1] + right[i]).Unit;
            shape.Add(path[i] + width / mean.Dot(right[i]) * mean);
        }
        return shape;
    }
}

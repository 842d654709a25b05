using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Patterns.CutPaths;

/// <summary>How far a piece of a dense cut line and the arcs that stand for it are apart, both ways.</summary>
/// <remarks>
/// Measured along the arc's radii (square to a line). The piece runs from one end of the arc to the other without turning back, so a radius through any
/// place of either meets the other: the greatest distance along radii bounds the Hausdorff distance. Along a chord the distance from a centre is convex,
/// so its ends and the foot of the centre tell it exactly.
/// </remarks>
internal static class PathDeviation
{
    /// <summary>True if a piece of a cut line stays within a tolerance of an arc.</summary>
    /// <param name="line">Cut line.</param>
    /// <param name="first">Index of the place at the start of the arc.</param>
    /// <param name="last">Index of the place at its end.</param>
    /// <param name="arc">The arc.</param>
    /// <param name="tolerance">mm.</param>
    public static bool Within(ReadOnlySpan<Vec2> line, int first, int last, PathArc arc, double tolerance)
    {
        var ruler = new Ruler(arc);
        for (int i = first; i < last; i++)
            if (!ruler.Holds(line[i], line[i + 1], tolerance)) return false;
        return true;
    }

    /// <summary>The same for two arcs that join without a break. The line goes over from the one to the other where it crosses their common normal.</summary>
    public static bool Within(ReadOnlySpan<Vec2> line, int first, int last, PathArc before, PathArc after, double tolerance)
    {
        (Ruler rulerBefore, Ruler rulerAfter) = (new Ruler(before), new Ruler(after));
        Vec2 joint = before.To, normal = after.Start;
        bool crossed = false;
        for (int i = first; i < last; i++)
        {
            double a = (line[i] - joint).Dot(normal), b = (line[i + 1] - joint).Dot(normal);
            if (!crossed && a <= 0 && b > 0 && (line[i] - joint).Length < 2 * (line[i + 1] - line[i]).Length + tolerance)
            {
                crossed = true;
                Vec2 at = Vec2.Lerp(line[i], line[i + 1], a / (a - b));
                if (!rulerBefore.Holds(line[i], at, tolerance) || !rulerAfter.Holds(at, line[i + 1], tolerance)) return false;
            }
            else if (!(crossed ? rulerAfter : rulerBefore).Holds(line[i], line[i + 1], tolerance)) return false;
        }
        return crossed;
    }

    private readonly struct Ruler(PathArc arc)
    {
        // An arc this flat is measured as the line that it is to within rounding.
        private const double FlatBulge = 1e-9;

        private readonly bool _straight = Math.Abs(arc.Bulge) < FlatBulge;
        private readonly Vec2 _centre = Math.Abs(arc.Bulge) < FlatBulge ? arc.From : arc.Centre;
        private readonly double _radius = Math.Abs(arc.Radius);
        private readonly Vec2 _chord = (arc.To - arc.From).Unit;
        private readonly double _side = Math.Sign(arc.Bulge);
        private readonly (Vec2 Start, Vec2 End) _along = (arc.Start, arc.End);

        public bool Holds(Vec2 a, Vec2 b, double tolerance)
        {
            if (!Between(a, tolerance) || !Between(b, tolerance)) return false;
            if (_straight)
                return (b - a).Dot(_chord) >= 0 && Math.Abs((a - arc.From).Cross(_chord)) <= tolerance && Math.Abs((b - arc.From).Cross(_chord)) <= tolerance;
            // Never back: the line turns about the centre as the arc does.
            if (_side * (a - _centre).Cross(b - _centre) < 0) return false;
            double far = Math.Max((a - _centre).Length, (b - _centre).Length), near = Segment.Distance(_centre, a, b);
            return far - _radius <= tolerance && _radius - near <= tolerance;
        }

        // Not before the start and not past the end; on an arc of more than half a turn only one of the two can tell.
        private bool Between(Vec2 p, double tolerance)
        {
            double before = (p - arc.From).Dot(_along.Start), past = (p - arc.To).Dot(_along.End);
            return before >= -tolerance && past <= tolerance || !_straight && Math.Abs(arc.Turn) > 0.5 * Math.PI;
        }
    }
}

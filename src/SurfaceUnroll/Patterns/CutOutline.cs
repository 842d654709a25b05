using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Patterns;

/// <summary>Questions about places on a blank. Each costs one walk round the cut line.</summary>
/// <param name="Points">Closed cut line, the first point not repeated, mm.</param>
internal readonly record struct CutOutline(ImmutableArray<Vec2> Points)
{
    /// <summary>How deep inside the cut line a place lies, mm; negative outside.</summary>
    public double Depth(Vec2 p)
    {
        double nearest = double.PositiveInfinity;
        bool inside = false;
        for (int i = 0, j = Points.Length - 1; i < Points.Length; j = i++)
        {
            Vec2 a = Points[j], b = Points[i];
            nearest = Math.Min(nearest, Distance(p, a, b));
            // Even-odd rule.
            if (a.Y > p.Y != b.Y > p.Y && p.X < a.X + (p.Y - a.Y) / (b.Y - a.Y) * (b.X - a.X)) inside = !inside;
        }
        return inside ? nearest : -nearest;
    }

    /// <summary>True if the whole of a text lies inside with at least <paramref name="clearance"/> mm of white around it.</summary>
    public bool Holds(TextOutline text, double clearance) => !Touches(text, clearance) && Depth(0.5 * (text.Corners[0] + text.Corners[2])) > 0;

    /// <summary>True if the whole of a text lies outside with at least <paramref name="clearance"/> mm of white around it.</summary>
    public bool Leaves(TextOutline text, double clearance) => !Touches(text, clearance) && Depth(0.5 * (text.Corners[0] + text.Corners[2])) < 0;

    private bool Touches(TextOutline text, double clearance)
    {
        ImmutableArray<Vec2> corners = text.Corners;
        Vec2 origin = corners[0], right = (corners[1] - corners[0]).Unit, up = right.Left;
        Vec2 ToBox(Vec2 p) => new((p - origin).Dot(right), (p - origin).Dot(up));
        Box box = Box.Around(corners.Select(ToBox)).Grow(clearance);
        Vec2 a = ToBox(Points[^1]);
        foreach (Vec2 point in Points)
        {
            Vec2 b = ToBox(point);
            bool beside = Math.Max(a.X, b.X) < box.Min.X || Math.Min(a.X, b.X) > box.Max.X || Math.Max(a.Y, b.Y) < box.Min.Y || Math.Min(a.Y, b.Y) > box.Max.Y;
            if (!beside && !Clip.Line([a, b], false, box).IsEmpty) return true;
            a = b;
        }
        return false;
    }

    private static double Distance(Vec2 p, Vec2 a, Vec2 b)
    {
        Vec2 along = b - a;
        double t = along.Dot(along) > 0 ? Math.Clamp((p - a).Dot(along) / along.Dot(along), 0, 1) : 0;
        return (p - (a + t * along)).Length;
    }
}

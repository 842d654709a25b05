using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Drawings;

/// <summary>Cuts lines to a box.</summary>
public static class Clip
{
    /// <summary>The parts of a polyline inside a box, in order, exact at the border.</summary>
    /// <param name="points">At least two.</param>
    /// <param name="closed">The last point joins the first.</param>
    /// <param name="box">Closed box.</param>
    public static ImmutableArray<ImmutableArray<Vec2>> Line(ImmutableArray<Vec2> points, bool closed, Box box)
    {
        var parts = ImmutableArray.CreateBuilder<ImmutableArray<Vec2>>();
        var part = ImmutableArray.CreateBuilder<Vec2>();
        int segments = closed ? points.Length : points.Length - 1;
        for (int i = 0; i < segments; i++)
        {
            Vec2 a = points[i], b = points[(i + 1) % points.Length];
            if (Segment(a, b, box) is not { } inside)
            {
                End();
                continue;
            }
            if (inside.From > 0) End();
            if (part.Count == 0) part.Add(Vec2.Lerp(a, b, inside.From));
            part.Add(inside.To < 1 ? Vec2.Lerp(a, b, inside.To) : b);
            if (inside.To < 1) End();
        }
        End();
        return parts.ToImmutable();

        void End()
        {
            if (part.Count > 1) parts.Add(part.ToImmutable());
            part.Clear();
        }
    }

    /// <summary>True if a segment has more than a point in a box.</summary>
    public static bool Meets(Vec2 a, Vec2 b, Box box) => Segment(a, b, box) is not null;

    // The stretch of a segment inside a box, as fractions (Liang and Barsky, ACM Transactions on Graphics 3(1), 1984).
    private static (double From, double To)? Segment(Vec2 a, Vec2 b, Box box)
    {
        double from = 0, to = 1;
        Vec2 d = b - a;
        return Cut(-d.X, a.X - box.Min.X) && Cut(d.X, box.Max.X - a.X) && Cut(-d.Y, a.Y - box.Min.Y) && Cut(d.Y, box.Max.Y - a.Y) && from < to
            ? (from, to)
            : null;

        bool Cut(double slope, double room)
        {
            if (slope == 0) return room >= 0;
            double t = room / slope;
            if (slope < 0) from = Math.Max(from, t); else to = Math.Min(to, t);
            return from <= to;
        }
    }
}

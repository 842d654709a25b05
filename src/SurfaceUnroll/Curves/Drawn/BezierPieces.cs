using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Curves.Drawn;

/// <summary>Makes pieces of Bézier curves as drawing programs write them, with the freaks that those have.</summary>
public static class BezierPieces
{
    // Control points this near to the chord, as a part of it, draw a straight line.
    private const double Straight = 1e-10;

    // A handle of no length leaves the direction at its end to the next control point, but the speed there is zero. Moved this part of the way towards
    // that one, the curve is nowhere off by more than 4/9 of it: 0.0045 mm for a handle of 100 mm.
    private const double Nudge = 1e-4;

    /// <summary>The piece of four control points, mm; null where they are one point.</summary>
    public static CurvePiece? Cubic(Vec3 a, Vec3 b, Vec3 c, Vec3 d)
    {
        double size = Math.Max((b - a).Length, Math.Max((c - a).Length, (d - a).Length));
        if (size == 0) return null;
        if (IsStraight(a, [b, c], d)) return new LinePiece(a, d);
        if ((b - a).Length <= Straight * size) b = Vec3.Lerp(a, (c - a).Length > Straight * size ? c : d, Nudge);
        if ((c - d).Length <= Straight * size) c = Vec3.Lerp(d, (b - d).Length > Straight * size ? b : a, Nudge);
        return new CubicPiece(a, 3 * (b - a), 3 * (c - 2 * b + a), d - 3 * c + 3 * b - a);
    }

    /// <summary>The piece of three control points, mm; null where they are one point.</summary>
    public static CurvePiece? Quadratic(Vec3 a, Vec3 b, Vec3 c) => Cubic(a, Vec3.Lerp(a, b, 2.0 / 3), Vec3.Lerp(c, b, 2.0 / 3), c);

    /// <summary>The piece of any number of control points from two up, mm, with their weights; null where they are one point.</summary>
    public static CurvePiece? Rational(ImmutableArray<Vec3> points, ImmutableArray<double> weights)
    {
        if (points.All(p => p == points[0])) return null;
        bool plain = weights.All(w => Math.Abs(w - weights[0]) <= 1e-12 * weights[0]);
        if (IsStraight(points[0], points[1..^1], points[^1])) return new LinePiece(points[0], points[^1]);
        return (plain, points.Length) switch
        {
            (true, 3) => Quadratic(points[0], points[1], points[2]),
            (true, 4) => Cubic(points[0], points[1], points[2], points[3]),
            _ => new RationalPiece(points, weights),
        };
    }

    // On the chord, in order along it.
    private static bool IsStraight(Vec3 from, ImmutableArray<Vec3> between, Vec3 to)
    {
        Vec3 chord = to - from;
        double length = chord.Length, before = 0;
        if (length == 0) return false;
        foreach (Vec3 p in between)
        {
            double along = (p - from).Dot(chord) / length;
            if (along < before - Straight * length || along > length * (1 + Straight) || (p - from).Cross(chord).Length > Straight * length * length) return false;
            before = along;
        }
        return true;
    }
}

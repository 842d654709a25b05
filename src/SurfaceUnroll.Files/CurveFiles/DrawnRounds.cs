using SurfaceUnroll.Curves;
using SurfaceUnroll.Curves.Drawn;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Files.CurveFiles;

/// <summary>Makes the round pieces of drawings.</summary>
internal static class DrawnRounds
{
    /// <summary>A whole ellipse or circle, from its lowest place.</summary>
    public static CurvePiece Whole(Vec3 centre, Vec3 a, Vec3 b) => EllipsePiece.Of(centre, a, b, Math.Atan2(b.Z, a.Z) + Math.PI, Math.Tau);

    /// <summary>An arc of a circle of the drawing.</summary>
    /// <param name="map">Where the drawing goes.</param>
    /// <param name="x">Centre.</param>
    /// <param name="y">Centre.</param>
    /// <param name="radius">More than 0.</param>
    /// <param name="start">Radians from x towards y.</param>
    /// <param name="sweep">Radians, not 0.</param>
    public static CurvePiece Arc(DrawingMap map, double x, double y, double radius, double start, double sweep) =>
        EllipsePiece.Of(map.Point(x, y), map.Direction(radius, 0), map.Direction(0, radius), start, sweep);

    /// <summary>From one corner of a polyline to the next; null where they are one place.</summary>
    /// <param name="map">Where the drawing goes.</param>
    /// <param name="from">A corner.</param>
    /// <param name="to">The next.</param>
    /// <param name="bulge">Tangent of a quarter of the angle that the arc turns through, positive to the left; 0 for a straight.</param>
    public static CurvePiece? Bulged(DrawingMap map, Vec2 from, Vec2 to, double bulge)
    {
        Vec2 chord = to - from;
        if (chord.Length == 0) return null;
        // Arcs flatter than this rise by less than a billionth of their chord.
        if (Math.Abs(bulge) < 1e-9) return new LinePiece(map.Point(from.X, from.Y), map.Point(to.X, to.Y));
        Vec2 centre = Vec2.Lerp(from, to, 0.5) + (1 - bulge * bulge) / (4 * bulge) * chord.Left, out0 = from - centre;
        return Arc(map, centre.X, centre.Y, out0.Length, Math.Atan2(out0.Y, out0.X), 4 * Math.Atan(bulge));
    }
}

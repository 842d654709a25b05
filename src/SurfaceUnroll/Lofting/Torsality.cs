using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Lofting;

/// <summary>How far a ruling is from torsal, that is from having one tangent plane along its whole length.</summary>
/// <remarks>With r the ruling and a, b the directrix tangents at its ends, the end normals are r × a and r × b, and
/// (r × a) × (r × b) = r·det[r, a, b]: the ruling is torsal where F = det[a, b, r] = 0 and the normals agree in sense
/// (do Carmo, Differential Geometry of Curves and Surfaces, section 3-5: developable ruled surfaces).</remarks>
internal static class Torsality
{
    // Sine of the angle between tangent and ruling below which they count as parallel; the sheet's normal is then free at that end.
    private const double Parallel = 1e-9;

    // A ruling shorter than this share of its ends' distance from the origin is rounding: the curves meet there.
    private const double Meeting = 1e-11;

    /// <summary>True where two curves meet, so that the ruling has no length of its own.</summary>
    public static bool Meet(Vec3 front, Vec3 rear)
    {
        Vec3 r = rear - front;
        return r.Dot(r) <= Meeting * Meeting * (front.Dot(front) + rear.Dot(rear));
    }

    /// <summary>Signed angle from the front normal to the rear normal about the ruling, radians in (−π, π]; 0 where either normal is free.</summary>
    public static double SignedTwist(in DirectrixSample front, in DirectrixSample rear)
    {
        Vec3 r = rear.Point - front.Point;
        Vec3 na = r.Cross(front.Tangent), nb = r.Cross(rear.Tangent);
        if (Meet(front.Point, rear.Point) || IsFree(na, r, front.Tangent) || IsFree(nb, r, rear.Tangent)) return 0;
        return Math.Atan2(front.Tangent.Cross(rear.Tangent).Dot(r) * r.Length, na.Dot(nb));
    }

    /// <summary>sin² of half the twist: 0 torsal, 1 where the sheet turns inside out. Smooth, and free of trigonometry.</summary>
    public static double Cost(in DirectrixSample front, in DirectrixSample rear)
    {
        Vec3 r = rear.Point - front.Point;
        Vec3 na = r.Cross(front.Tangent), nb = r.Cross(rear.Tangent);
        if (Meet(front.Point, rear.Point) || IsFree(na, r, front.Tangent) || IsFree(nb, r, rear.Tangent)) return 0;
        return 0.5 - 0.5 * na.Dot(nb) / Math.Sqrt(na.Dot(na) * nb.Dot(nb));
    }

    private static bool IsFree(Vec3 normal, Vec3 ruling, Vec3 tangent) =>
        normal.Dot(normal) <= Parallel * Parallel * ruling.Dot(ruling) * tangent.Dot(tangent);
}

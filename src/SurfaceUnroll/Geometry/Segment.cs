namespace SurfaceUnroll.Geometry;

/// <summary>Straight lines from one place to another.</summary>
public static class Segment
{
    /// <summary>Share of the way from <paramref name="a"/> to <paramref name="b"/> at which a place is nearest; 0 if the two coincide.</summary>
    public static double NearestShare(Vec2 p, Vec2 a, Vec2 b)
    {
        Vec2 along = b - a;
        return along.Dot(along) > 0 ? Math.Clamp((p - a).Dot(along) / along.Dot(along), 0, 1) : 0;
    }

    /// <summary>The same in space.</summary>
    public static double NearestShare(Vec3 p, Vec3 a, Vec3 b)
    {
        Vec3 along = b - a;
        return along.Dot(along) > 0 ? Math.Clamp((p - a).Dot(along) / along.Dot(along), 0, 1) : 0;
    }

    /// <summary>Distance from a place, mm.</summary>
    public static double Distance(Vec2 p, Vec2 a, Vec2 b) => (p - Vec2.Lerp(a, b, NearestShare(p, a, b))).Length;
}

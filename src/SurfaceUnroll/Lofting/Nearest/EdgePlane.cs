using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Lofting.Nearest;

/// <summary>The plane of a measured curve, with its own coordinates.</summary>
/// <param name="Origin">On the plane, mm.</param>
/// <param name="Across">Unit vector in the plane.</param>
/// <param name="Up">Unit vector in the plane, square to <paramref name="Across"/>.</param>
public readonly record struct EdgePlane(Vec3 Origin, Vec3 Across, Vec3 Up)
{
    // A curve farther than this off a plane (mm) is a space curve: no edge is marked or cut more truly.
    private const double Flatness = 0.01;

    /// <summary>Unit normal.</summary>
    public Vec3 Normal => Across.Cross(Up);

    /// <summary>The plane in which a curve lies, or null if there is none, or many because the curve is straight.</summary>
    public static EdgePlane? Of(SpaceCurve curve)
    {
        const int steps = 64;
        Vec3[] places = [.. Enumerable.Range(0, steps + 1).Select(i => curve.AtLength(curve.Length * i / steps).Point)];
        Vec3 origin = places[0], far = places.MaxBy(p => (p - origin).Length), along = (far - origin).Unit;
        Vec3 side = places.Select(p => p - origin - (p - origin).Dot(along) * along).MaxBy(v => v.Length);
        if (side.Length <= Flatness) return null;
        var plane = new EdgePlane(origin, along, side.Unit);
        return plane.Holds(curve) ? plane : null;
    }

    /// <summary>True if a curve lies in the plane.</summary>
    public bool Holds(SpaceCurve curve)
    {
        const int steps = 256;
        EdgePlane plane = this;
        return Enumerable.Range(0, steps + 1).All(i => Math.Abs((curve.AtLength(curve.Length * i / steps).Point - plane.Origin).Dot(plane.Normal)) <= Flatness);
    }

    /// <summary>A place in the plane's coordinates (across, up, off the plane), mm.</summary>
    public Vec3 Own(Vec3 place) => OwnDirection(place - Origin);

    /// <summary>A direction in the plane's coordinates.</summary>
    public Vec3 OwnDirection(Vec3 v) => new(v.Dot(Across), v.Dot(Up), v.Dot(Normal));

    /// <summary>A place of the plane in job space, mm.</summary>
    public Vec3 Place(Vec2 p) => Origin + Direction(p);

    /// <summary>A direction of the plane in job space.</summary>
    public Vec3 Direction(Vec2 v) => v.X * Across + v.Y * Up;
}

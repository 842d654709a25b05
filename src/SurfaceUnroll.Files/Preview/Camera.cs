using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Files.Preview;

/// <summary>A far camera: parallel projection onto a picture with x to the right and y up, lengths in mm.</summary>
internal readonly record struct Camera(Vec3 ToEye, Vec3 Right, Vec3 Up)
{
    /// <summary>Stands in front of the job, to its left and above it.</summary>
    public static Camera FrontLeftAbove { get; } = From(azimuth: 38 * Math.PI / 180, elevation: 30 * Math.PI / 180);

    // Forward is −x and left is −y; the azimuth goes from forward to left.
    private static Camera From(double azimuth, double elevation)
    {
        (double sa, double ca) = Math.SinCos(azimuth);
        (double se, double ce) = Math.SinCos(elevation);
        var toEye = new Vec3(-ca * ce, -sa * ce, se);
        var right = new Vec3(sa, -ca, 0);
        return new Camera(toEye, right, toEye.Cross(right));
    }

    /// <summary>Place on the picture.</summary>
    public Vec2 Project(Vec3 p) => new(Right.Dot(p), Up.Dot(p));

    /// <summary>Nearness to the eye: larger is nearer, mm.</summary>
    public double Nearness(Vec3 p) => ToEye.Dot(p);
}

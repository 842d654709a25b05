using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.Preview;

/// <summary>A far camera: parallel projection onto a picture with x to the right and y up, lengths in mm.</summary>
internal readonly record struct Camera(Vec3 ToEye, Vec3 Right, Vec3 Up)
{
    private const double Azimuth = 38 * Math.PI / 180, Elevation = 30 * Math.PI / 180;

    // How much more of the outside the rear view must show before it is taken: pictures of one kind should look alike.
    private const double Advantage = 1.25;

    /// <summary>Stands in front of the job, to its left and above it.</summary>
    public static Camera FrontLeftAbove { get; } = From(-Math.Cos(Azimuth));

    /// <summary>Stands behind the job, to its left and above it.</summary>
    public static Camera RearLeftAbove { get; } = From(Math.Cos(Azimuth));

    /// <summary>Front left above, unless the rear shows clearly more of the sheet's outside (a cover that slopes down aft).</summary>
    public static Camera For(SheetMesh mesh) =>
        RearLeftAbove.OutsideSeen(mesh) > Advantage * FrontLeftAbove.OutsideSeen(mesh) ? RearLeftAbove : FrontLeftAbove;

    // Aft is +x and left is −y.
    private static Camera From(double aft)
    {
        var toEye = new Vec3(aft * Math.Cos(Elevation), -Math.Sin(Azimuth) * Math.Cos(Elevation), Math.Sin(Elevation));
        Vec3 right = new Vec3(0, 0, 1).Cross(toEye).Unit;
        return new Camera(toEye, right, toEye.Cross(right));
    }

    // Projected area, mm², of the faces that turn their outside to the eye; what hides them is left out of account.
    private double OutsideSeen(SheetMesh mesh)
    {
        double area = 0;
        foreach ((int a, int b, int c) in mesh.Faces)
        {
            Vec3 normal = (mesh.Formed[b] - mesh.Formed[a]).Cross(mesh.Formed[c] - mesh.Formed[a]);
            area += Math.Max(0, 0.5 * normal.Dot(ToEye));
        }
        return area;
    }

    /// <summary>Place on the picture.</summary>
    public Vec2 Project(Vec3 p) => new(Right.Dot(p), Up.Dot(p));

    /// <summary>Nearness to the eye: larger is nearer, mm.</summary>
    public double Nearness(Vec3 p) => ToEye.Dot(p);
}

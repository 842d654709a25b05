using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Plates;

/// <summary>The six directions of the job as vectors.</summary>
internal static class Ways
{
    /// <summary>Unit vector in job space.</summary>
    public static Vec3 Of(Way way) => way switch
    {
        Way.Forward => new Vec3(-1, 0, 0),
        Way.Aft => new Vec3(1, 0, 0),
        Way.Left => new Vec3(0, -1, 0),
        Way.Right => new Vec3(0, 1, 0),
        Way.Up => new Vec3(0, 0, 1),
        _ => new Vec3(0, 0, -1),
    };
}

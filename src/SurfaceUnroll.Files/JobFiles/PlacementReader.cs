using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Reads where a curve or a plane stands.</summary>
internal sealed class PlacementReader(Measures measures)
{
    /// <summary>The placement under a key; none where it is left out.</summary>
    public Placement Read(JobBlock owner, string key = "at")
    {
        if (owner.Find(key) is not { } tree) return Placement.None;
        if (JobBlock.Of(tree, owner.PathOf(key), owner.Faults, "{ \"origin\": [0, 0, 0], \"lean\": 25 }") is not { } block) return Placement.None;
        block.CheckKeys(["origin", "roll", "lean", "turn"]);
        Vec3 origin = Vec3.Zero;
        if (block.Find("origin") is { } place && measures.Tuple(place, block.PathOf("origin"), "[x, y, z]", 3) is [double x, double y, double z]) origin = new Vec3(x, y, z);
        return new Placement(origin, Angle(block, "roll"), Angle(block, "lean"), Angle(block, "turn"));
    }

    private double Angle(JobBlock block, string key) => block.Find(key) is { } tree ? measures.Angle(tree, block.PathOf(key)) : 0;
}

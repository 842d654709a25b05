using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Reads where a curve or a plane stands.</summary>
internal sealed class PlacementReader(Measures measures)
{
    /// <summary>The placement under a key; none where it is left out.</summary>
    /// <param name="owner">Where the key stands.</param>
    /// <param name="key">The key.</param>
    /// <param name="errors">Takes the errors that it may have; null: it has none.</param>
    public Placement Read(JobBlock owner, string key = "at", ErrorReader? errors = null)
    {
        if (owner.Find(key) is not { } tree) return Placement.None;
        if (JobBlock.Of(tree, owner.PathOf(key), owner.Faults, "{ \"origin\": [0, 0, 0], \"lean\": 25 }") is not { } block) return Placement.None;
        string[] keys = ["origin", "roll", "lean", "turn"];
        block.CheckKeys(errors is null ? keys : [.. keys, "error", "angleError"]);
        errors?.Placement(block);
        Vec3 origin = Vec3.Zero;
        if (block.Find("origin") is { } place && measures.Tuple(place, block.PathOf("origin"), "[x, y, z]", 3) is [double x, double y, double z]) origin = new Vec3(x, y, z);
        return new Placement(origin, Angle(block, "roll"), Angle(block, "lean"), Angle(block, "turn"));
    }

    private double Angle(JobBlock block, string key) => block.Find(key) is { } tree ? measures.Angle(tree, block.PathOf(key)) : 0;
}

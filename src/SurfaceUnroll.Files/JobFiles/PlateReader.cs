using System.Collections.Immutable;
using SurfaceUnroll.Files.Json;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Reads flat plates and plates with bends.</summary>
/// <param name="measures">Reads single values.</param>
/// <param name="curves">Names of the job's curves.</param>
/// <param name="open">Opens a file by its name in the job.</param>
internal sealed class PlateReader(Measures measures, CurveNames curves, Func<string, FileReading> open)
{
    private const string BentExample = "{ \"plan\": \"hoop\", \"side\": [[0, 0], [150, 0], [300, 60]] }";

    private static readonly string[] Keys = ["plan", "width", "side", "radius", "at", "error"];

    private readonly FaultList _faults = measures.Faults;

    /// <summary>The flat plate of a panel.</summary>
    public FlatSpec Flat(JobBlock panel)
    {
        Way? outside = panel.Find("outside") is { } tree ? measures.Way(tree, panel.PathOf("outside")) : null;
        return new FlatSpec(curves.ListOrOne(panel.Find("flat")!, panel.PathOf("flat"), "\"front\", or a list such as [\"front\", \"sill\"]"), outside);
    }

    /// <summary>The bent plate of a panel; null if it is none.</summary>
    public BentSpec? Bent(JobBlock panel)
    {
        if (JobBlock.Of(panel.Find("bent")!, panel.PathOf("bent"), _faults, BentExample) is not { } block) return null;
        bool points = block.Find("side") is null or JsonList;
        block.CheckKeys(points ? [.. Keys, "sideFit"] : Keys, key => key == "sideFit" ? "\"sideFit\" says how the points of a side are joined, and here are none." : null);
        double? width = block.Find("width") is { } w ? measures.Length(w, block.PathOf("width"), Allowed.Positive) : null;
        ImmutableArray<PlanCurve> plan = [];
        if (width is not null && block.Find("plan") is { } both)
            _faults.Add("plan-and-width", block.PathOf("plan"), both.Place, "A plate has a plan or a width, but not both.", "Keep \"width\" for a plate that is equally wide all along its side, \"plan\" for others.");
        else if (width is null && block.Need("plan", "Name the curve that goes round the plate as seen from above, or give \"width\" for one that is equally wide all along.") is { } tree)
            plan = Plan(tree, block.PathOf("plan"));
        SideProfile side = block.Need("side", "Give the side view as [aft, height] pairs from front to rear, such as [[0, 0], [150, 0], [300, 60]].") is { } profile
            ? new SideReader(measures, curves).Read(block, profile)
            : new SidePoints([], Fit.Straight);
        double? radius = block.Find("radius") is { } r ? measures.Length(r, block.PathOf("radius"), Allowed.NotNegative) : null;
        return new BentSpec(plan, side, radius, new PlacementReader(measures).Read(block)) { Width = width, Errors = new ErrorReader(measures, block).Errors };
    }

    private ImmutableArray<PlanCurve> Plan(JsonTree tree, string path)
    {
        if (tree is not JsonObject) return [.. curves.ListOrOne(tree, path, "\"hoop\", a list of curves, or a curve measured here").Select(name => new PlanCurve(name, null))];
        return new CurveReader(measures, open).ReadPlan(tree, path) is { } own ? [new PlanCurve("outline", own)] : [];
    }
}

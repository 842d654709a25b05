using System.Collections.Immutable;
using SurfaceUnroll.Files.Json;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Reads runs of straights and arcs.</summary>
/// <param name="measures">Reads single values.</param>
/// <param name="errors">Takes the error that a step may have of its own.</param>
internal sealed class RunReader(Measures measures, ErrorReader errors)
{
    private const string Example = "[ { \"line\": 55 }, { \"arc\": 120, \"turn\": 180 }, { \"line\": 55 } ]";

    private readonly FaultList _faults = measures.Faults;

    /// <summary>The run of a curve.</summary>
    public RunSpec Read(JobBlock block, Placement at)
    {
        double heading = block.Find("heading") is { } angle ? measures.Angle(angle, block.PathOf("heading")) : 0;
        Vec2? start = null;
        if (block.Find("start") is { } place && measures.Tuple(place, block.PathOf("start"), "[across, up]", 2) is [double across, double up]) start = new Vec2(across, up);
        return new RunSpec(Steps(block.Find("run")!, block.PathOf("run")), heading, start, at);
    }

    private ImmutableArray<RunStep> Steps(JsonTree tree, string path)
    {
        if (measures.List(tree, path, Example) is not { } list) return [];
        if (list.Items.IsEmpty) _faults.Add("curve-too-few-points", path, list.Place, "The run has no step.", $"Give at least one line or arc, like {Example}.");
        var steps = ImmutableArray.CreateBuilder<RunStep>();
        for (int i = 0; i < list.Items.Length; i++)
        {
            if (Step(list.Items[i], $"{path}[{Measures.Count(i)}]") is { } step) steps.Add(step);
        }
        return steps.ToImmutable();
    }

    private RunStep? Step(JsonTree tree, string path)
    {
        if (JobBlock.Of(tree, path, _faults, "{ \"line\": 55 } or { \"arc\": 120, \"turn\": 90 }") is not { } block) return null;
        (JsonTree? line, JsonTree? arc) = (block.Find("line"), block.Find("arc"));
        if (line is not null && arc is not null)
        {
            _faults.Add("step-two-kinds", path, block.Tree.Place, "This step is a line and an arc at once.", "Make two steps of it, in the order in which they come.");
            return null;
        }
        block.CheckKeys(line is not null ? ["line", "error"] : ["line", "arc", "turn", "error", "turnError"], key => key is "turn" or "turnError" ? "A line does not turn." : null);
        errors.Step(block);
        if (line is not null) return new LineStep(measures.Length(line, block.PathOf("line"), Allowed.Positive));
        if (arc is null)
        {
            _faults.Add("step-no-kind", path, block.Tree.Place, "This step is neither a line nor an arc.", "Write { \"line\": 55 } or { \"arc\": 120, \"turn\": 90 }.");
            return null;
        }
        double radius = measures.Length(arc, block.PathOf("arc"), Allowed.Positive);
        double turn = block.Need("turn", "Give the angle in degrees by which the arc turns, positive to the right.") is { } t ? measures.Angle(t, block.PathOf("turn")) : double.NaN;
        if (turn == 0)
        {
            _faults.Add("curve-step-size", block.PathOf("turn"), block.Find("turn")!.Place, "An arc must turn by some angle; this one turns by 0°.",
                "Give the turn in degrees, positive to the right, or make it a line.");
        }
        return new ArcStep(radius, turn);
    }
}

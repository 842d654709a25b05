using System.Collections.Immutable;
using SurfaceUnroll.Files.Json;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Reads the side profile of a bent plate.</summary>
/// <param name="measures">Reads single values.</param>
/// <param name="curves">Names of the job's curves.</param>
internal sealed class SideReader(Measures measures, CurveNames curves)
{
    private const string PointsExample = "[[0, 0], [150, 0], [300, 60]]";

    private const string StepExample = "{ \"line\": 120 }, { \"bend\": 90, \"radius\": 1.5 } or { \"arc\": 200, \"turn\": 30 }";

    private static readonly string[] StepKinds = ["line", "arc", "bend"];

    private readonly FaultList _faults = measures.Faults;

    /// <summary>The profile.</summary>
    /// <param name="bent">The block that it stands in.</param>
    /// <param name="side">What stands there.</param>
    public SideProfile Read(JobBlock bent, JsonTree side)
    {
        string path = bent.PathOf("side");
        switch (side)
        {
            case JsonText name:
                return curves.HasSide(name.Value, path, name) ? new SideOfCurve(name.Value) : new SidePoints([], Fit.Straight);
            case JsonObject:
                return Run(JobBlock.Of(side, path, _faults, "")!);
            case JsonList list:
                return Points(list, path, measures.Choice(bent, "sideFit", Fit.Straight, ("smooth", Fit.Smooth), ("straight", Fit.Straight)));
            default:
                _faults.WrongType(path, side, "a list of [aft, height] pairs, a run, or the name of a curve", $"Write it like {PointsExample}.");
                return new SidePoints([], Fit.Straight);
        }
    }

    private SidePoints Points(JsonList list, string path, Fit fit)
    {
        if (list.Items.Length < 2)
            _faults.Add("curve-too-few-points", path, list.Place, $"A side needs at least two points; here {(list.Items.IsEmpty ? "is none" : "is one")}.", $"Write it like {PointsExample}.");
        var points = ImmutableArray.CreateBuilder<SidePoint>(list.Items.Length);
        for (int i = 0; i < list.Items.Length; i++)
        {
            string at = $"{path}[{Measures.Count(i)}]";
            bool inner = i > 0 && i < list.Items.Length - 1;
            SidePoint point = Point(list.Items[i], at, inner);
            points.Add(inner && fit == Fit.Straight ? point with { IsBend = true } : point);
            if (i == 0 || point.Place.X - points[i - 1].Place.X > PointListReader.SamePlace || double.IsNaN(point.Place.X + points[i - 1].Place.X)) continue;
            _faults.Add("curve-side-range", at, list.Items[i].Place,
                $"Each place of the side must lie aft of the one before it; here {measures.Show(point.Place.X)} follows {measures.Show(points[i - 1].Place.X)}.",
                "Put the points in order from front to rear; for a side that stands upright or turns back give a \"run\".");
        }
        return new SidePoints(points.ToImmutable(), fit);
    }

    private SidePoint Point(JsonTree tree, string path, bool inner)
    {
        (bool bend, double? radius) = (false, null);
        if (tree is JsonList { Items: [_, _, var third] } marked)
        {
            bend = true;
            if (!inner) _faults.Add("side-end-bend", path + "[2]", third.Place, "A side has no bend at its end.", "Take the third value out.");
            if (third is JsonText { Value: "bend" }) radius = null;
            else if (third is JsonText word && NearestWord.To(word.Value, ["bend"]) is not null)
                _faults.Add("choice-unknown", path + "[2]", third.Place, $"\"{word.Value}\" is neither an inside radius nor the word \"bend\".", "Did you mean \"bend\"? It makes a bend with the radius of the plate.");
            else radius = measures.Length(third, path + "[2]", Allowed.NotNegative);
            tree = new JsonList(marked.Place, marked.Items[..2]);
        }
        Vec2 place = measures.Tuple(tree, path, "[aft, height]", 2) is [double aft, double height] ? new Vec2(aft, height) : new Vec2(double.NaN, double.NaN);
        return new SidePoint(place, bend, radius);
    }

    private SideRun Run(JobBlock block)
    {
        block.CheckKeys(["run", "heading", "start"]);
        double heading = block.Find("heading") is { } angle ? measures.Angle(angle, block.PathOf("heading")) : 0;
        Vec2 start = block.Find("start") is { } place && measures.Tuple(place, block.PathOf("start"), "[aft, height]", 2) is [double aft, double height] ? new Vec2(aft, height) : Vec2.Zero;
        var steps = ImmutableArray.CreateBuilder<SideStep>();
        string path = block.PathOf("run");
        if (block.Need("run", $"Give the steps of the side from front to rear, each {StepExample}.") is { } tree && measures.List(tree, path, $"[ {StepExample} ]") is { } list)
        {
            if (list.Items.IsEmpty) _faults.Add("curve-too-few-points", path, list.Place, "The run has no step.", $"Give at least one: {StepExample}.");
            for (int i = 0; i < list.Items.Length; i++)
                if (Step(list.Items[i], $"{path}[{Measures.Count(i)}]") is { } step) steps.Add(step);
        }
        return new SideRun(steps.ToImmutable(), heading, start);
    }

    private SideStep? Step(JsonTree tree, string path)
    {
        if (JobBlock.Of(tree, path, _faults, StepExample) is not { } block) return null;
        string[] kinds = [.. StepKinds.Where(block.Has)];
        if (kinds.Length > 1)
        {
            _faults.Add("step-two-kinds", path, block.Tree.Place, $"This step is {string.Join(" and ", kinds.Select(k => $"\"{k}\""))} at once.", "Make a step of each, in the order in which they come.");
            return null;
        }
        switch (kinds.FirstOrDefault())
        {
            case "line":
                block.CheckKeys(["line"], key => key is "turn" or "radius" ? "A line does not turn." : null);
                return new SideLine(measures.Length(block.Find("line")!, block.PathOf("line"), Allowed.Positive));
            case "arc":
                block.CheckKeys(["arc", "turn"]);
                double radius = measures.Length(block.Find("arc")!, block.PathOf("arc"), Allowed.Positive);
                return new SideArc(radius, block.Need("turn", "Give the angle in degrees by which the arc turns, positive down, as over an arch.") is null ? double.NaN : Turn(block, "turn"));
            case "bend":
                block.CheckKeys(["bend", "radius"]);
                return new SideBend(Turn(block, "bend"), block.Find("radius") is { } own ? measures.Length(own, block.PathOf("radius"), Allowed.NotNegative) : null);
            default:
                int before = _faults.Count;
                block.CheckKeys(["line", "arc", "turn", "bend", "radius"]);
                if (_faults.Count == before) _faults.Add("step-no-kind", path, block.Tree.Place, "This step is neither a line nor an arc nor a bend.", $"Write {StepExample}.");
                return null;
        }
    }

    private double Turn(JobBlock block, string key)
    {
        (JsonTree tree, string path) = (block.Find(key)!, block.PathOf(key));
        double turn = measures.Angle(tree, path);
        if (turn == 0) _faults.Add("curve-step-size", path, tree.Place, "A bend or an arc must turn by some angle; this one turns by 0°.", "Give the angle in degrees, positive down, or make it a line.");
        if (key == "bend" && Math.Abs(turn) >= Math.PI)
            _faults.Add("bend-angle", path, tree.Place, "A sheet is bent through less than 180°.", "Give the angle that it is bent through, 90 for a square bend.");
        return turn;
    }
}

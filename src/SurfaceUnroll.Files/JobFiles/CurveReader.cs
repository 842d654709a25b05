using System.Collections.Immutable;
using SurfaceUnroll.Files.Json;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Reads one measured curve of any kind.</summary>
/// <param name="measures">Reads single values.</param>
/// <param name="open">Opens a file by its name in the job.</param>
internal sealed class CurveReader(Measures measures, Func<string, FileReading> open)
{
    private const string KindsMend = "Give one of: points, run, chord (with rise), plan (with side), xyz, file, section.";

    private readonly FaultList _faults = measures.Faults;

    /// <summary>A kind of curve: the key that makes it, and the keys that go with it.</summary>
    private sealed record Kind(string Key, string[] Others)
    {
        public IEnumerable<string> Own => Others.Prepend(Key);
    }

    // What any curve may have.
    private static readonly string[] Besides = ["at", "taped", "error"];

    private static readonly Kind[] Kinds =
    [
        new("points", ["mirror", "fit", "within", "symmetric"]),
        new("run", ["heading", "start"]),
        new("chord", ["rise"]),
        new("plan", ["side", "sideFit"]),
        new("xyz", ["fit", "within"]),
        new("file", FileCurveReader.Keys),
        new("section", ["reverse"]),
    ];

    /// <summary>The curve; null if its kind cannot be told.</summary>
    public CurveSpec? Read(JsonTree tree, string path) => Read(tree, path, inPlan: false);

    /// <summary>A curve as seen from above, lying flat; null if its kind cannot be told.</summary>
    public CurveSpec? ReadPlan(JsonTree tree, string path) => Read(tree, path, inPlan: true);

    private CurveSpec? Read(JsonTree tree, string path, bool inPlan)
    {
        if (JobBlock.Of(tree, path, _faults, "{ \"chord\": 240, \"rise\": 120 }") is not { } block) return null;
        if (KindOf(block, inPlan) is not { } kind) return null;
        block.CheckKeys([.. kind.Own, .. Besides.Where(k => k != (kind.Key == "section" ? "at" : inPlan ? "taped" : ""))], key => Misplaced(key, kind));
        var errors = new ErrorReader(measures, block);
        Placement at = Placement.None;
        if (inPlan && block.Find("at") is { } placed)
            _faults.Add("plan-placed", block.PathOf("at"), placed.Place, "A plan view has no placement of its own.", "Put \"at\" beside \"plan\" and \"side\": it places the whole curve.");
        else
            at = kind.Key == "section" ? Placement.None : new PlacementReader(measures).Read(block, errors: errors);
        return Curve(block, kind, at, errors) is { } curve ? curve with { Taped = inPlan ? null : Taped(block), Errors = errors.Errors } : null;
    }

    private CurveSpec? Curve(JobBlock block, Kind kind, Placement at, ErrorReader errors) => kind.Key switch
    {
        "points" => Points(block, at, errors),
        "run" => new RunReader(measures, errors).Read(block, at),
        "chord" => Chord(block, at),
        "plan" => PlanSide(block, at, errors),
        "file" => new FileCurveReader(measures, open).Read(block, at),
        "section" => new SectionReader(measures, open).Read(block),
        _ => Space(block, at, errors),
    };

    private TapedSizes? Taped(JobBlock curve)
    {
        if (curve.Find("taped") is not { } tree || JobBlock.Of(tree, curve.PathOf("taped"), _faults, "{ \"girth\": 487, \"width\": 240 }") is not { } block) return null;
        block.CheckKeys(["girth", "width", "height", "chord"]);
        double? Size(string key) => block.Find(key) is { } size ? measures.Length(size, block.PathOf(key), Allowed.NotNegative) : null;
        return new TapedSizes(Size("girth"), Size("width"), Size("height"), Size("chord"));
    }

    private static string? Misplaced(string key, Kind kind) => key == "at" ? "A section stands where the scan has it; \"plane\" says where." : Array.Find(Kinds, k => k.Own.Contains(key)) is { } other
        ? $"\"{key}\" goes with \"{other.Key}\", not with \"{kind.Key}\"."
        : null;

    // The one kind of a curve; with none or more than one, a fault and null.
    private Kind? KindOf(JobBlock block, bool inPlan)
    {
        Kind[] present = [.. Kinds.Where(k => block.Has(k.Key))];
        if (present.Length > 1)
        {
            JsonMember second = block.Tree.Members.Where(m => present.Any(k => k.Key == m.Key)).Skip(1).First();
            _faults.Add("curve-two-kinds", block.PathOf(second.Key), second.Place,
                $"A curve is measured in one way, but here are {string.Join(" and ", present.Select(k => $"\"{k.Key}\""))}.", "Keep one of them, or make two curves.");
            return null;
        }
        if (present.Length == 0)
        {
            NoKind(block);
            return null;
        }
        if (inPlan && (present[0].Key is "plan" or "xyz" or "section"))
        {
            _faults.Add("curve-plan-kind", block.PathOf(present[0].Key), block.Find(present[0].Key)!.Place, "A plan view must be flat: points, run or chord.",
                "Give the height in \"side\", or give the whole curve as \"xyz\" points.");
            return null;
        }
        return present[0];
    }

    private void NoKind(JobBlock block)
    {
        // A key that goes with a kind (rise, side) tells which one is missing.
        foreach ((string part, string whole, string mend) in new[]
        {
            ("rise", "chord", "Give the chord, the straight distance between the ends of the arc."),
            ("side", "plan", "Give the plan view as points, a run or a chord; or the curve in space as \"xyz\"."),
        })
        {
            if (!block.Has(part)) continue;
            block.Need(whole, mend);
            return;
        }
        string[] keys = [.. Kinds.SelectMany(k => k.Own).Distinct(), .. Besides];
        int before = _faults.Count;
        block.CheckKeys(keys);
        bool mistyped = _faults.Count > before && block.Tree.Members.Any(m => NearestWord.To(m.Key, Kinds.Select(k => k.Key)) is not null);
        if (!mistyped) _faults.Add("curve-no-kind", block.Path, block.Tree.Place, "This curve holds no measures.", KindsMend);
    }

    private PointsSpec Points(JobBlock block, Placement at, ErrorReader errors)
    {
        bool mirror = measures.Flag(block, "mirror");
        ImmutableArray<ProfilePoint> points = new PointListReader(measures, errors).InPlane(block, "points");
        if (mirror && points is [_, _, ..]) Centreline(block, points);
        (Fit fit, double? within) = new FitReader(measures).Read(block);
        return new PointsSpec(points, mirror, fit, at) { Symmetric = measures.Flag(block, "symmetric"), Within = within };
    }

    private void Centreline(JobBlock block, ImmutableArray<ProfilePoint> points)
    {
        var list = (JsonList)block.Find("points")!;
        for (int i = 0; i < points.Length; i++)
        {
            double across = points[i].Place.X;
            string path = $"{block.PathOf("points")}[{Measures.Count(i)}]";
            if (i == 0 && Math.Abs(across) > PointListReader.SamePlace)
            {
                _faults.Add("curve-not-on-centreline", path, list.Items[i].Place,
                    $"A mirrored curve starts on the centreline, but its first point is {measures.Show(across)} across.",
                    "Begin with the point where the curve crosses the centreline (across 0), or leave out \"mirror\" and give both halves.");
            }
            else if (across < -PointListReader.SamePlace)
            {
                _faults.Add("curve-not-on-centreline", path, list.Items[i].Place,
                    $"A mirrored curve goes out to the right, but this point is {measures.Show(-across)} left of the centreline.",
                    "Give the right half only, or leave out \"mirror\" and give both halves.");
            }
        }
    }

    private ChordSpec Chord(JobBlock block, Placement at)
    {
        double chord = measures.Length(block.Find("chord")!, block.PathOf("chord"), Allowed.Positive);
        double rise = block.Need("rise", "Give the rise, the height of the arc over the middle of its chord.") is { } tree ? measures.Length(tree, block.PathOf("rise")) : double.NaN;
        if (rise == 0)
            _faults.Add("curve-step-size", block.PathOf("rise"), block.Find("rise")!.Place, "An arc with no rise is a straight line.", "Give the rise, or two points with \"fit\": \"straight\".");
        return new ChordSpec(chord, rise, at);
    }

    private PlanSideSpec PlanSide(JobBlock block, Placement at, ErrorReader errors)
    {
        CurveSpec? plan = Read(block.Find("plan")!, block.PathOf("plan"), inPlan: true);
        ImmutableArray<Vec2> side = block.Need("side", "Give the side view as [aft, height] pairs from front to rear.") is null
            ? []
            : new PointListReader(measures, errors).SideView(block, "side");
        // A plan that could not be read has its fault already.
        return new PlanSideSpec(plan ?? new ChordSpec(1, 1, Placement.None), side, measures.Choice(block, "sideFit", Fit.Smooth, ("smooth", Fit.Smooth), ("straight", Fit.Straight)), at);
    }

    private SpaceSpec Space(JobBlock block, Placement at, ErrorReader errors)
    {
        (Fit fit, double? within) = new FitReader(measures).Read(block);
        return new SpaceSpec(new PointListReader(measures, errors).InSpace(block, "xyz"), fit, at) { Within = within };
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Files.Json;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Reads holes in the plane of a plate, and openings that are let through a sheet from where they stand.</summary>
/// <param name="measures">Reads single values.</param>
/// <param name="curves">Names of the job's curves.</param>
internal sealed class OpeningReader(Measures measures, CurveNames curves)
{
    private const int MostHoles = 1000;

    private const string HoleExample = "{ \"at\": [0, 40], \"round\": 8 }";

    private const string OpeningExample = "{ \"name\": \"lamp\", \"round\": 90, \"at\": { \"origin\": [200, 0, 150], \"lean\": 60 } }";

    private static readonly string[] Shapes = ["round", "rectangle", "slot", "curve"];

    private readonly FaultList _faults = measures.Faults;

    /// <summary>The holes of a plate.</summary>
    public ImmutableArray<OpeningSpec> Holes(JobBlock panel) => List(panel, "holes", HoleExample, (block, name) =>
    {
        block.CheckKeys(["name", "at", "round", "rectangle", "corner", "slot", "turn", "pattern"], Misplaced);
        return Shape(block, Shapes[..3]) is { } shape ? new OpeningSpec(name, shape, Pair(block, "at", "[across, up]"), Turn(block), Pattern(block), null, null) : null;
    }, "hole");

    /// <summary>The openings of a panel.</summary>
    public ImmutableArray<OpeningSpec> Openings(JobBlock panel) => List(panel, "openings", OpeningExample, (block, name) => Opening(block, name, []), "opening");

    /// <summary>The openings of the whole job.</summary>
    public ImmutableArray<OpeningSpec> Shared(JobBlock job, ImmutableArray<string> panels) => List(job, "openings", OpeningExample, (block, name) =>
    {
        ImmutableArray<string> through = Through(block, panels);
        return Opening(block, name, ["through"]) is { } opening ? opening with { Through = through } : null;
    }, "shared opening");

    private static string? Misplaced(string key) => key switch
    {
        "curve" or "along" or "centre" => $"\"{key}\" goes with \"openings\": a hole is round, a rectangle or a slot, and goes square through the plate.",
        _ => null,
    };

    private ImmutableArray<OpeningSpec> List(JobBlock owner, string key, string example, Func<JobBlock, string, OpeningSpec?> read, string unnamed)
    {
        if (owner.Find(key) is not { } tree || measures.List(tree, owner.PathOf(key), $"[ {example} ]") is not { } list) return [];
        var found = ImmutableArray.CreateBuilder<OpeningSpec>();
        for (int i = 0; i < list.Items.Length; i++)
        {
            if (JobBlock.Of(list.Items[i], $"{owner.PathOf(key)}[{Measures.Count(i)}]", _faults, example) is not { } block) continue;
            string name = measures.Name(block, "opening") ?? $"{unnamed} {Measures.Count(i + 1)}";
            if (read(block, name) is { } opening) found.Add(opening);
        }
        return found.ToImmutable();
    }

    private OpeningSpec? Opening(JobBlock block, string name, string[] more)
    {
        bool curve = block.Has("curve");
        string[] own = curve ? [] : ["corner", "at", "centre", "turn", "pattern"];
        block.CheckKeys(["name", "along", .. Shapes, .. own, .. more], key => curve && key is "at" or "centre" or "turn" or "pattern" or "corner" ? $"A curve stands where it was measured, so \"{key}\" cannot stand here." : null);
        if (Shape(block, Shapes) is not { } shape) return null;
        Placement? at = null;
        if (!curve && block.Need("at", "Say where the plane of the opening stands: { \"origin\": [x, y, z], \"lean\": …, \"roll\": …, \"turn\": … }.") is not null) at = new PlacementReader(measures).Read(block);
        return new OpeningSpec(name, shape, Pair(block, "centre", "[across, up]"), Turn(block), Pattern(block), at, Along(block));
    }

    private OpeningShape? Shape(JobBlock block, string[] kinds)
    {
        string[] present = [.. Shapes.Where(block.Has)];
        if (present.Length > 1)
        {
            _faults.Add("opening-two-shapes", block.Path, block.Tree.Place, $"This opening is {string.Join(" and ", present.Select(k => $"\"{k}\""))} at once.", "Keep one of them, or make two openings.");
            return null;
        }
        if (present.Length == 0 || !kinds.Contains(present[0]))
        {
            bool mistyped = block.Tree.Members.Any(m => NearestWord.To(m.Key, kinds) is not null);
            if (present.Length == 0 && !mistyped)
                _faults.Add("opening-no-shape", block.Path, block.Tree.Place, "This opening has no shape.", $"Give one of: {string.Join(", ", kinds)}; for example \"round\": 8.");
            return null;
        }
        (JsonTree tree, string path) = (block.Find(present[0])!, block.PathOf(present[0]));
        if (present[0] != "rectangle" && block.Find("corner") is { } stray)
            _faults.Add("key-misplaced", block.PathOf("corner"), stray.Place, "\"corner\" is the corner radius of a \"rectangle\".", "Take \"corner\" out.");
        switch (present[0])
        {
            case "round":
                return new RoundShape(measures.Length(tree, path, Allowed.Positive));
            case "curve":
                return measures.Text(tree, path) is { } name && curves.Has(name, path, tree) ? new CurveShape(name) : null;
            case "slot":
                (double length, double width) = Sizes(tree, path, "[length, width]");
                if (length < width) _faults.Add("slot-size", path, tree.Place, $"A slot is at least as long as it is wide; this one is {measures.Show(length)} long and {measures.Show(width)} wide.", "Write [length, width], the length over both round ends.");
                return new SlotShape(length, width);
            default:
                (double across, double up) = Sizes(tree, path, "[width, height]");
                double corner = block.Find("corner") is { } c ? measures.Length(c, block.PathOf("corner"), Allowed.NotNegative) : 0;
                if (corner > 0.5 * Math.Min(across, up))
                    _faults.Add("corner-radius", block.PathOf("corner"), block.Find("corner")!.Place, $"A corner radius of {measures.Show(corner)} is more than half the smaller side.", "Make it smaller, or make the opening a slot.");
                return new RectangleShape(across, up, corner);
        }
    }

    private (double, double) Sizes(JsonTree tree, string path, string shape)
    {
        if (measures.Tuple(tree, path, shape, 2) is not [double a, double b]) return (double.NaN, double.NaN);
        foreach (double size in new[] { a, b })
            if (size <= 0) _faults.Add("length-not-positive", path, tree.Place, $"This length must be more than zero; it is {measures.Show(size)}.", "Measure it again, or take this part out.");
        return (a, b);
    }

    private OpeningPattern? Pattern(JobBlock block)
    {
        const string example = "{ \"across\": 4, \"pitch\": 30 } or { \"ring\": 6, \"diameter\": 80 }";
        if (block.Find("pattern") is not { } tree || JobBlock.Of(tree, block.PathOf("pattern"), _faults, example) is not { } pattern) return null;
        bool ring = pattern.Has("ring");
        pattern.CheckKeys(ring ? ["ring", "diameter"] : ["across", "up", "pitch", "ring"], key => key switch
        {
            "diameter" => "\"diameter\" goes with \"ring\", the number of holes round it.",
            "across" or "up" or "pitch" => "A ring has no rows.",
            _ => null,
        });
        if (ring)
        {
            int holes = measures.Whole(pattern, "ring", 2, 2, MostHoles);
            double diameter = pattern.Need("diameter", "Give the diameter of the circle through the centres.") is { } d ? measures.Length(d, pattern.PathOf("diameter"), Allowed.Positive) : double.NaN;
            return new RingPattern(holes, diameter);
        }
        int before = _faults.Count;
        (int columns, int rows) = (measures.Whole(pattern, "across", 1, 1, MostHoles), measures.Whole(pattern, "up", 1, 1, MostHoles));
        if (_faults.Count == before && (columns * rows is < 2 or > MostHoles))
            _faults.Add("pattern-count", pattern.Path, pattern.Tree.Place, $"A pattern has 2 to {MostHoles} holes; this one has {columns * rows}.", $"Write it like {example}.");
        if (pattern.Need("pitch", "Give the distance from centre to centre, or [across, up].") is not { } pitch) return null;
        string path = pattern.PathOf("pitch");
        if (pitch is JsonList)
        {
            (double a, double u) = Sizes(pitch, path, "[across, up]");
            return new GridPattern(columns, rows, a, u);
        }
        double both = measures.Length(pitch, path, Allowed.Positive);
        return new GridPattern(columns, rows, both, both);
    }

    private double Turn(JobBlock block) => block.Find("turn") is { } tree ? measures.Angle(tree, block.PathOf("turn")) : 0;

    private Vec2 Pair(JobBlock block, string key, string shape) =>
        block.Find(key) is { } tree && measures.Tuple(tree, block.PathOf(key), shape, 2) is [double across, double up] ? new Vec2(across, up) : Vec2.Zero;

    private Vec3? Along(JobBlock block)
    {
        if (block.Find("along") is not { } tree) return null;
        string path = block.PathOf("along");
        if (tree is JsonList { Items: [JsonNumber x, JsonNumber y, JsonNumber z] } && new Vec3(x.Value, y.Value, z.Value) is { Length: > 0 } way && double.IsFinite(way.Length)) return way;
        _faults.Add("direction-shape", path, tree.Place, "Here should be a direction [x, y, z], three plain numbers, not all zero.", "Write it like [0, 0, -1], straight down.");
        return null;
    }

    private ImmutableArray<string> Through(JobBlock block, ImmutableArray<string> panels)
    {
        if (block.Need("through", "Name the panels that the opening goes through, such as [\"base\", \"bracket\"].") is not { } tree) return [];
        string path = block.PathOf("through");
        if (measures.List(tree, path, "[\"base\", \"bracket\"]") is not { } list) return [];
        var names = ImmutableArray.CreateBuilder<string>();
        for (int i = 0; i < list.Items.Length; i++)
        {
            string at = $"{path}[{Measures.Count(i)}]";
            if (measures.Text(list.Items[i], at) is not { } name) continue;
            if (names.Contains(name)) _faults.Add("through-twice", at, list.Items[i].Place, $"\"{name}\" is named twice.", "Take one of the two out.");
            else if (PanelNames.Has(name, panels, at, list.Items[i], _faults)) names.Add(name);
        }
        if (list.Items.Length < 2) _faults.Add("through-one", path, list.Place, "An opening of the whole job goes through two panels or more.", "Name another, or give the opening in the panel itself.");
        return names.ToImmutable();
    }
}

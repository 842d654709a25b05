using System.Collections.Immutable;
using SurfaceUnroll.Files.Json;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Reads how edges meet.</summary>
/// <param name="measures">Reads single values.</param>
/// <param name="panels">The panels that could be read.</param>
/// <param name="names">Names of all panels, also of those with faults.</param>
/// <param name="edges">Names of their edges.</param>
internal sealed class JointReader(Measures measures, ImmutableArray<PanelSpec> panels, ImmutableArray<string> names, EdgeNames edges)
{
    private const string Example = "{ \"edges\": [\"cover/front\", \"plate/arch\"], \"kind\": \"lip\", \"width\": 12, \"on\": \"plate\" }";

    // Marks and notches that stand closer than this, mm, are none that anyone would file.
    private const double LeastPitch = 5;

    private readonly FaultList _faults = measures.Faults;

    // Pieces of split panels can be joined like panels.
    private readonly ImmutableArray<string> _all = [.. names, .. panels.SelectMany(p => PanelNames.Pieces(p.Name, p.Pieces))];

    /// <summary>The joints of a job.</summary>
    public ImmutableArray<JointSpec> Read(JobBlock job)
    {
        if (job.Find("joints") is not { } tree || measures.List(tree, "joints", $"[ {Example} ]") is not { } list) return [];
        var joints = ImmutableArray.CreateBuilder<JointSpec>();
        var labels = new JointNames(_faults, panels, list.Items.Length);
        for (int i = 0; i < list.Items.Length; i++)
        {
            if (JobBlock.Of(list.Items[i], $"joints[{Measures.Count(i)}]", _faults, Example) is not { } block) continue;
            JointSpec joint = Joint(block);
            if (joint.Name is { } name) labels.Add(name, block.PathOf("name"), block.Find("name")!.Place);
            joints.Add(joint);
        }
        return labels.Lettered(joints.ToImmutable());
    }

    private JointSpec Joint(JobBlock block)
    {
        int before = _faults.Count;
        JointKind kind = block.Need("kind", "Say how the edges meet: \"butt\", \"lap\", \"lip\" or \"trim\".") is { } word
            ? measures.Choice(word, block.PathOf("kind"), JointKind.Butt, ("butt", JointKind.Butt), ("lap", JointKind.Lap), ("lip", JointKind.Lip), ("trim", JointKind.Trim))
            : JointKind.Butt;
        // Of an unknown kind nothing more can be asked.
        if (_faults.Count > before) return new JointSpec(null, [], kind, 0, 0, null, null, null);
        string size = kind switch { JointKind.Butt => "gap", JointKind.Trim => "extra", _ => "width" };
        string[] own = kind switch
        {
            JointKind.Butt => ["gap", "corners"],
            JointKind.Lip => ["width", "on", "angle", "radius", "bend", "relief", "corners"],
            JointKind.Trim => ["extra", "on", "corners"],
            _ => ["width", "on", "corners"],
        };
        block.CheckKeys(["name", "edges", "kind", "marks", .. own], Misplaced);
        string? name = measures.Name(block, "joint");
        before = _faults.Count;
        ImmutableArray<EdgeName> mates = Edges(block, kind);
        bool named = _faults.Count == before;
        bool auto = kind == JointKind.Trim && block.Find(size) is JsonText text && text.Value.Equals("auto", StringComparison.OrdinalIgnoreCase) && measures.Choice(text, block.PathOf(size), true, ("auto", true));
        double width = auto ? 0 : block.Find(size) is { } tree
            ? measures.Length(tree, block.PathOf(size), kind == JointKind.Butt ? Allowed.NotNegative : Allowed.Positive)
            : kind == JointKind.Butt ? 0 : Missing(block, size, kind);
        return new JointSpec(name, mates, kind, width, named ? On(block, mates) : 0, kind == JointKind.Lip ? Lip(block) : null, Corners(block), Marks(block)) { Auto = auto };
    }

    private static string? Misplaced(string key) => key switch
    {
        "gap" => "\"gap\" goes with the kind \"butt\".",
        "extra" => "\"extra\" goes with the kind \"trim\".",
        "width" => "\"width\" goes with the kinds \"lap\" and \"lip\"; a butt joint has a \"gap\", a trim an \"extra\".",
        "on" => "\"on\" says which piece carries a lap, a lip or a trim: a butt joint is shared by both.",
        "angle" or "radius" or "bend" or "relief" => $"\"{key}\" goes with the kind \"lip\".",
        _ => null,
    };

    private static double Missing(JobBlock block, string key, JointKind kind)
    {
        block.Need(key, kind == JointKind.Trim ? "Give how much extra is left on." : $"Give the width of the {kind.ToString().ToLowerInvariant()}.");
        return double.NaN;
    }

    private ImmutableArray<EdgeName> Edges(JobBlock block, JointKind kind)
    {
        const string example = "[\"cover/front\", \"plate/arch\"]";
        if (block.Need("edges", $"Name the two edges that meet, like {example}.") is not { } tree) return [];
        string path = block.PathOf("edges");
        if (measures.List(tree, path, example) is not { } list) return [];
        bool alone = kind is JointKind.Lip or JointKind.Trim;
        if (list.Items.Length is 0 or > 2 || (list.Items.Length == 1 && !alone))
            _faults.Add("joint-edges", path, list.Place, $"A joint has two edges{(alone ? ", or one that is left alone" : "")}; here {(list.Items.Length == 1 ? "is one" : $"are {list.Items.Length}")}.", $"Write it like {example}.");
        var found = ImmutableArray.CreateBuilder<EdgeName>();
        for (int i = 0; i < list.Items.Length; i++)
        {
            string at = $"{path}[{Measures.Count(i)}]";
            if (measures.Text(list.Items[i], at) is not { } text) continue;
            int slash = text.LastIndexOf('/');
            if (slash <= 0 || slash == text.Length - 1)
            {
                _faults.Add("edge-shape", at, list.Items[i].Place, $"\"{text}\" does not name an edge of a panel.", "Write PANEL/EDGE, such as \"cover/front\".");
                continue;
            }
            var edge = new EdgeName(text[..slash].Trim(), text[(slash + 1)..].Trim());
            if (!PanelNames.Has(edge.Panel, _all, at, list.Items[i], _faults) || !edges.Has(edge, at, list.Items[i])) continue;
            if (found.Contains(edge)) _faults.Add("joint-same-edge", at, list.Items[i].Place, "An edge cannot meet itself.", "Name the other edge.");
            found.Add(edge);
        }
        return found.ToImmutable();
    }

    // Which of the edges carries the allowance.
    private int On(JobBlock block, ImmutableArray<EdgeName> mates)
    {
        if (block.Find("on") is not { } tree || measures.Text(tree, block.PathOf("on")) is not { } on || mates.IsEmpty) return 0;
        int[] named = [.. Enumerable.Range(0, mates.Length).Where(i => mates[i].ToString() == on || mates[i].Panel == on)];
        if (named.Length == 1) return named[0];
        if (named.Length == 0)
            _faults.Add("joint-on", block.PathOf("on"), tree.Place, $"\"{on}\" is none of the two pieces of this joint.", $"Write {string.Join(" or ", mates.Select(e => $"\"{e.Panel}\""))}.");
        else
            _faults.Add("joint-on", block.PathOf("on"), tree.Place, $"Both edges belong to \"{on}\", so that this does not tell which one is meant.", $"Write {string.Join(" or ", mates.Select(e => $"\"{e}\""))}.");
        return 0;
    }

    private LipSpec Lip(JobBlock block)
    {
        double? angle = block.Has("angle") ? measures.BendAngle(block, "angle", "") : null;
        double? radius = block.Find("radius") is { } r ? measures.Length(r, block.PathOf("radius"), Allowed.NotNegative) : null;
        bool? up = measures.Choice<bool?>(block, "bend", null, ("up", true), ("down", false));
        (LipRelief relief, double? pitch) = (LipRelief.Auto, null);
        if (block.Find("relief") is JsonText { Value: "auto" or "none" } word) relief = word.Value == "none" ? LipRelief.None : LipRelief.Auto;
        else if (block.Find("relief") is { } tree) (relief, pitch) = (LipRelief.Pitch, Pitch(tree, block.PathOf("relief"), "notches"));
        return new LipSpec(angle, radius, up, relief, pitch);
    }

    private CornerStyle? Corners(JobBlock block) =>
        measures.Choice<CornerStyle?>(block, "corners", null, ("mitre", CornerStyle.Mitre), ("square", CornerStyle.Square), ("round", CornerStyle.Round));

    private double? Marks(JobBlock block) => block.Find("marks") switch
    {
        null => null,
        JsonText { Value: "none" } => 0,
        { } tree => Pitch(tree, block.PathOf("marks"), "marks"),
    };

    private double Pitch(JsonTree tree, string path, string what)
    {
        double pitch = measures.Length(tree, path, Allowed.Positive);
        if (pitch < LeastPitch)
            _faults.Add("pitch-too-small", path, tree.Place, $"{measures.Show(pitch)} from one to the next is too close for {what}; the least is {measures.Show(LeastPitch)}.", "Check the decimal point and the unit of the distance.");
        return pitch;
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Files.Json;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Reads the panels of a job.</summary>
/// <param name="measures">Reads single values.</param>
/// <param name="curves">Names of the job's curves.</param>
/// <param name="open">Opens a file by its name in the job.</param>
internal sealed class PanelReader(Measures measures, CurveNames curves, Func<string, FileReading> open)
{
    private const string Example = "{ \"name\": \"cover\", \"loft\": [\"front\", \"rear\"] }";

    private static readonly string[] Kinds = ["loft", "flat", "bent", "mesh"];

    private static readonly string[] LoftKeys = ["name", "loft", "elements", "hold", "shrinkCost", "pieces", "along", "slits", "freedom", "measured", "trims", "trim", "openings"];

    private static readonly string[] MeshKeys = ["name", "mesh", "meshUnits", "hold", "shrinkCost", "trims", "openings"];

    private static readonly string[] FlatKeys = ["name", "flat", "outside", "holes", "measured", "trims", "trim", "openings"];

    private static readonly string[] BentKeys = ["name", "bent", "holes", "measured", "trims", "trim", "openings"];

    private readonly FaultList _faults = measures.Faults;

    private readonly FreedomReader _freedom = new(measures);

    /// <summary>Names of all panels that have one, also of those with faults.</summary>
    public ImmutableArray<string> Names { get; private set; } = [];

    /// <summary>All panels, with their names checked against each other.</summary>
    public ImmutableArray<PanelSpec> Read(JobBlock job)
    {
        if (job.Need("panels", $"Give the pieces to develop, like \"panels\": [ {Example} ].") is not { } tree) return [];
        if (measures.List(tree, "panels", $"[ {Example} ]") is not { } list) return [];
        if (list.Items.IsEmpty) _faults.Add("panels-none", "panels", list.Place, "There is no panel in the job.", $"Give at least one, like {Example}.");
        var panels = ImmutableArray.CreateBuilder<PanelSpec>();
        var names = new PanelNames(_faults);
        Names = [.. list.Items.OfType<JsonObject>().Select(p => p.Find("name")).OfType<JsonText>().Select(n => n.Value)];
        for (int i = 0; i < list.Items.Length; i++)
        {
            if (JobBlock.Of(list.Items[i], $"panels[{Measures.Count(i)}]", _faults, Example) is not { } block) continue;
            string? name = block.Need("name", "Give the panel a name; its files are called by it.") is { } text ? measures.Text(text, block.PathOf("name")) : null;
            if (name is not null) names.Add(name, Pieces(block, name), block.PathOf("name"), block.Find("name")!.Place);
            if (Panel(block, name ?? "") is { } panel) panels.Add(panel);
        }
        return panels.ToImmutable();
    }

    // As many as the panel asks for.
    private static IEnumerable<string> Pieces(JobBlock block, string name) => block.Find("pieces") switch
    {
        JsonNumber { Value: >= 2 and <= FormingReader.MostPieces } count => PanelNames.Pieces(name, (int)count.Value),
        _ => [],
    };

    private PanelSpec? Panel(JobBlock block, string name)
    {
        string[] present = [.. Kinds.Where(block.Has)];
        string[] kinds = present.Length > 0 ? present : ["mesh"]; // Of none, so that a slip of the finger in it gets its suggestion.
        string[] own = present.FirstOrDefault() switch { "mesh" => MeshKeys, "flat" => FlatKeys, "bent" => BentKeys, _ => LoftKeys };
        block.CheckKeys([.. own.Union(kinds)], key => Misplaced(key, present));
        if (present.Length > 1)
        {
            JsonMember second = block.Tree.Members.Where(m => present.Contains(m.Key)).Skip(1).First();
            _faults.Add("panel-two-kinds", block.PathOf(second.Key), second.Place,
                $"A panel is made in one way, but here are {string.Join(" and ", present.Select(k => $"\"{k}\""))}.", "Keep one of them, or make two panels.");
            return null;
        }
        if (present.Length == 0)
        {
            bool mistyped = block.Tree.Members.Any(m => !LoftKeys.Contains(m.Key) && NearestWord.To(m.Key, Kinds) is not null);
            if (!mistyped) _faults.Add("panel-no-kind", block.Path, block.Tree.Place, "This panel does not say what it is made of.", $"Write it like {Example}.");
            return null;
        }
        PanelSpec? panel = Kind(block, name, present[0]);
        return panel is null ? null : panel with
        {
            Measured = measures.Choice<MeasuredFace?>(block, "measured", null, ("outside", MeasuredFace.Outside), ("inside", MeasuredFace.Inside), ("middle", MeasuredFace.Middle)),
            AutoTrim = measures.Choice(block, "trim", false, ("auto", true)),
            Trims = new TrimReader(measures, Names).Read(block, name),
            Openings = [.. new OpeningReader(measures, curves).Holes(block), .. new OpeningReader(measures, curves).Openings(block)],
        };
    }

    private PanelSpec? Kind(JobBlock block, string name, string kind)
    {
        var forming = new FormingReader(measures);
        var empty = new PanelSpec(name, [], ElementMatching.BendOnly);
        return kind switch
        {
            "mesh" => forming.Read(block, empty with { Mesh = new MeshReader(measures, open).Read(block) }),
            "flat" => empty with { Flat = new PlateReader(measures, curves, open).Flat(block) },
            "bent" => new PlateReader(measures, curves, open).Bent(block) is { } bent ? empty with { Bent = bent } : null,
            _ => forming.Read(block, Lofted(block, name)),
        };
    }

    private PanelSpec Lofted(JobBlock block, string name)
    {
        ImmutableArray<string> loft = Loft(block);
        ElementMatching elements = measures.Choice(block, "elements", ElementMatching.BendOnly, ("bend-only", ElementMatching.BendOnly), ("even", ElementMatching.Even));
        return new PanelSpec(name, loft, elements) { Freedom = _freedom.Read(block, loft) };
    }

    private static string? Misplaced(string key, string[] present) => (key, present.FirstOrDefault()) switch
    {
        ("elements" or "pieces" or "along" or "slits", "mesh") => $"A mesh has no element lines, so \"{key}\" cannot stand here: it goes with \"loft\".",
        ("elements" or "pieces" or "along" or "slits" or "hold" or "shrinkCost", "flat" or "bent") => $"A plate is not stretched, so \"{key}\" cannot stand here: it goes with \"loft\".",
        ("trim", "mesh") => "Nobody read a mesh off a part, so there is no error that \"trim\" could follow.",
        ("freedom", "mesh" or "flat" or "bent") => "Only a curve of a loft may move, so \"freedom\" cannot stand here.",
        ("measured", "mesh") => "A mesh is taken for the middle of the sheet, so \"measured\" cannot stand here.",
        ("meshUnits", _) => "\"meshUnits\" goes with \"mesh\".",
        ("outside", _) => "\"outside\" goes with \"flat\".",
        ("holes", _) => "\"holes\" are given in the plane of a plate: they go with \"flat\" and \"bent\". For other panels use \"openings\".",
        _ => null,
    };

    private ImmutableArray<string> Loft(JobBlock block)
    {
        string path = block.PathOf("loft");
        if (measures.List(block.Find("loft")!, path, "[\"front\", \"rear\"]") is not { } list) return [];
        if (list.Items.IsEmpty) _faults.Add("loft-empty", path, list.Place, "The loft names no curve.", "Name two curves or more, from front to rear: [\"front\", \"rear\"].");
        if (list.Items.Length == 1) _faults.Add("loft-one-curve", path, list.Place, "A sheet spans two curves, but the loft names one.", "Name the rear curve too: [\"front\", \"rear\"].");
        var names = ImmutableArray.CreateBuilder<string>();
        for (int i = 0; i < list.Items.Length; i++)
        {
            string place = $"{path}[{Measures.Count(i)}]";
            if (measures.Text(list.Items[i], place) is not { } name) continue;
            if (curves.Has(name, place, list.Items[i]) && names.Contains(name)) _faults.Add("loft-same-curve", place, list.Items[i].Place, $"The loft names \"{name}\" twice.", "A sheet spans different curves: name the other one.");
            names.Add(name);
        }
        return names.ToImmutable();
    }
}

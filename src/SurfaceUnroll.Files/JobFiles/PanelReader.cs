using System.Collections.Immutable;
using SurfaceUnroll.Files.Json;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Reads the panels of a job.</summary>
/// <param name="measures">Reads single values.</param>
/// <param name="curves">Names of the job's curves, also of those with faults.</param>
/// <param name="open">Opens a file by its name in the job.</param>
internal sealed class PanelReader(Measures measures, ImmutableArray<string> curves, Func<string, FileReading> open)
{
    private const string Example = "{ \"name\": \"cover\", \"loft\": [\"front\", \"rear\"] }";

    private static readonly string[] Kinds = ["loft", "flat", "bent", "mesh"];

    private static readonly string[] LoftKeys = ["name", "loft", "elements", "hold", "shrinkCost", "pieces", "along", "slits"];

    private static readonly string[] MeshKeys = ["name", "mesh", "meshUnits", "hold", "shrinkCost"];

    private readonly FaultList _faults = measures.Faults;

    /// <summary>All panels, with their names checked against each other.</summary>
    public ImmutableArray<PanelSpec> Read(JobBlock job)
    {
        if (job.Need("panels", $"Give the pieces to develop, like \"panels\": [ {Example} ].") is not { } tree) return [];
        if (measures.List(tree, "panels", $"[ {Example} ]") is not { } list) return [];
        if (list.Items.IsEmpty) _faults.Add("panels-none", "panels", list.Place, "There is no panel in the job.", $"Give at least one, like {Example}.");
        var panels = ImmutableArray.CreateBuilder<PanelSpec>();
        var names = new PanelNames(_faults);
        for (int i = 0; i < list.Items.Length; i++)
        {
            if (JobBlock.Of(list.Items[i], $"panels[{Measures.Count(i)}]", _faults, Example) is not { } block) continue;
            string? name = block.Need("name", "Give the panel a name; its files are called by it.") is { } text ? measures.Text(text, block.PathOf("name")) : null;
            if (name is not null) names.Add(name, block.PathOf("name"), block.Find("name")!.Place);
            if (Panel(block, name ?? "") is { } panel) panels.Add(panel);
        }
        return panels.ToImmutable();
    }

    private PanelSpec? Panel(JobBlock block, string name)
    {
        string[] present = [.. Kinds.Where(block.Has)];
        string[] kinds = present.Length > 0 ? present : ["mesh"]; // Of none, so that a slip of the finger in it gets its suggestion.
        block.CheckKeys([.. present.Contains("mesh") ? MeshKeys : LoftKeys, .. kinds], key => Misplaced(key, present));
        if (present.Length > 1)
        {
            JsonMember second = block.Tree.Members.Where(m => present.Contains(m.Key)).Skip(1).First();
            _faults.Add("panel-two-kinds", block.PathOf(second.Key), second.Place,
                $"A panel is made in one way, but here are {string.Join(" and ", present.Select(k => $"\"{k}\""))}.", "Keep one of them, or make two panels.");
            return null;
        }
        if (present.Length == 0)
        {
            bool mistyped = block.Tree.Members.Any(m => !LoftKeys.Contains(m.Key) && NearestWord.To(m.Key, ["loft", "mesh"]) is not null);
            if (!mistyped) _faults.Add("panel-no-kind", block.Path, block.Tree.Place, "This panel does not say what it is made of.", $"Write it like {Example}.");
            return null;
        }
        if (present[0] is "flat" or "bent")
        {
            _faults.Add("panel-kind-not-yet", block.PathOf(present[0]), block.Find(present[0])!.Place, $"Panels of the kind \"{present[0]}\" cannot be made yet.",
                "What can be made is a sheet between curves, \"loft\": [\"front\", \"rear\"], or one given as a mesh, \"mesh\": \"cover.obj\".");
            return null;
        }
        PanelSpec panel = present[0] == "mesh"
            ? new PanelSpec(name, [], ElementMatching.BendOnly) { Mesh = new MeshReader(measures, open).Read(block) }
            : new PanelSpec(name, Loft(block), measures.Choice(block, "elements", ElementMatching.BendOnly, ("bend-only", ElementMatching.BendOnly), ("even", ElementMatching.Even)));
        return new FormingReader(measures).Read(block, panel);
    }

    private static string? Misplaced(string key, string[] present) => (key, present.Contains("mesh")) switch
    {
        ("elements" or "pieces" or "along" or "slits", true) => $"A mesh has no element lines, so \"{key}\" cannot stand here: it goes with \"loft\".",
        ("meshUnits", false) => "\"meshUnits\" goes with \"mesh\".",
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
            if (!curves.Contains(name)) Absent(name, place, list.Items[i]);
            else if (names.Contains(name)) _faults.Add("loft-same-curve", place, list.Items[i].Place, $"The loft names \"{name}\" twice.", "A sheet spans different curves: name the other one.");
            names.Add(name);
        }
        return names.ToImmutable();
    }

    private void Absent(string name, string path, JsonTree at)
    {
        string mend = NearestWord.To(name, curves) is { } near ? $"Did you mean \"{near}\"?"
            : curves.IsEmpty ? "Measure it and give it under \"curves\"."
            : $"The curves of the job are: {string.Join(", ", curves)}.";
        _faults.Add("curve-absent", path, at.Place, $"There is no curve called \"{name}\".", mend);
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Reads what is cut away from a panel.</summary>
/// <param name="measures">Reads single values.</param>
/// <param name="panels">Names of the job's panels.</param>
internal sealed class TrimReader(Measures measures, ImmutableArray<string> panels)
{
    private const string Example = "{ \"name\": \"seat\", \"plane\": { \"origin\": [120, 0, 0], \"lean\": 30 }, \"keep\": \"aft\" }";

    private readonly FaultList _faults = measures.Faults;

    /// <summary>The trims of a panel.</summary>
    /// <param name="panel">Its block.</param>
    /// <param name="self">Its name.</param>
    public ImmutableArray<TrimSpec> Read(JobBlock panel, string self)
    {
        if (panel.Find("trims") is not { } tree || measures.List(tree, panel.PathOf("trims"), $"[ {Example} ]") is not { } list) return [];
        var trims = ImmutableArray.CreateBuilder<TrimSpec>();
        for (int i = 0; i < list.Items.Length; i++)
        {
            if (JobBlock.Of(list.Items[i], $"{panel.PathOf("trims")}[{Measures.Count(i)}]", _faults, Example) is { } block) trims.Add(Trim(block, self, i));
        }
        return trims.ToImmutable();
    }

    private TrimSpec Trim(JobBlock block, string self, int index)
    {
        int before = _faults.Count;
        block.CheckKeys(["name", "plane", "by", "clearance", "keep"]);
        bool mistyped = _faults.Count > before;
        string name = measures.Name(block, "trim") ?? $"trim {Measures.Count(index + 1)}";
        Placement? plane = block.Has("plane") ? new PlacementReader(measures).Read(block, "plane") : null;
        string? by = block.Find("by") is { } other ? measures.Text(other, block.PathOf("by")) : null;
        if (block.Has("plane") == block.Has("by") && !mistyped)
        {
            _faults.Add(block.Has("by") ? "trim-two-ways" : "trim-no-way", block.Path, block.Tree.Place,
                block.Has("by") ? "This trim is by a plane and by a panel at once." : "This trim does not say what cuts.", $"Give \"plane\" or \"by\", the name of a panel, like {Example}.");
        }
        if (by is not null && by == self) _faults.Add("trim-by-itself", block.PathOf("by"), block.Find("by")!.Place, "A panel cannot trim itself.", "Name another panel, or give a plane.");
        else if (by is not null) PanelNames.Has(by, panels, block.PathOf("by"), block.Find("by")!, _faults);
        double clearance = block.Find("clearance") is { } gap ? measures.Length(gap, block.PathOf("clearance")) : 0;
        Way keep = block.Need("keep", "Say which side stays: \"forward\", \"aft\", \"left\", \"right\", \"up\" or \"down\".") is { } side ? measures.Way(side, block.PathOf("keep")) : Way.Up;
        return new TrimSpec(name, plane, by, clearance, keep);
    }
}

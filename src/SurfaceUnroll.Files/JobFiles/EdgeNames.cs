using System.Collections.Immutable;
using SurfaceUnroll.Files.Json;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Checks that openings and trims of one panel, whose edges are called by their names, are called differently from each other and from its other edges.</summary>
internal static class EdgeNames
{
    /// <summary>Looks through the panels of a job and its own openings.</summary>
    public static void Check(JobBlock job, ImmutableArray<PanelSpec> panels, ImmutableArray<OpeningSpec> openings)
    {
        foreach (PanelSpec panel in panels.Where(p => p.Name.Length > 0))
        {
            string[] names = [.. Edges(panel).Distinct(), .. panel.Openings.Select(o => o.Name), .. panel.Trims.Select(t => t.Name), .. openings.Where(o => o.Through.Contains(panel.Name)).Select(o => o.Name)];
            foreach (string twice in names.GroupBy(n => n).Where(g => g.Count() > 1).Select(g => g.Key))
            {
                (string path, JsonTree at) = Find(job, panel.Name);
                job.Faults.Add("opening-name-twice", path, at.Place, $"Two edges of \"{panel.Name}\" would be called \"{twice}\".", "Give each opening and trim a name of its own, that none of the panel's edges has: their edges are called by it.");
            }
        }
    }

    private static IEnumerable<string> Edges(PanelSpec panel) => panel switch
    {
        { Mesh: not null } => ["rim"],
        { Flat: { } flat } => [.. flat.Curves, "chord"],
        { Bent: { Width: null } bent } => [.. bent.Plan.Select(p => p.Name), "chord"],
        _ => ["front", "right", "rear", "left"],
    };

    private static (string Path, JsonTree At) Find(JobBlock job, string panel)
    {
        var list = (JsonList)job.Find("panels")!;
        int i = Enumerable.Range(0, list.Items.Length).First(k => list.Items[k] is JsonObject block && block.Find("name") is JsonText name && name.Value == panel);
        return ($"panels[{Measures.Count(i)}]", list.Items[i]);
    }
}

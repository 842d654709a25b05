using System.Collections.Immutable;
using SurfaceUnroll.Files.Json;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Names of the edges of panels: of the curves that they follow, and of their openings and trims.</summary>
/// <param name="job">The job.</param>
/// <param name="panels">The panels that could be read.</param>
/// <param name="shared">Openings of the whole job.</param>
internal sealed class EdgeNames(JobBlock job, ImmutableArray<PanelSpec> panels, ImmutableArray<OpeningSpec> shared)
{
    // So many names are listed where none is near to one that is not known.
    private const int MostListed = 12;

    /// <summary>Checks that openings and trims of one panel, whose edges are called by their names, are called differently from each other and from its other edges.</summary>
    public void Check()
    {
        foreach (PanelSpec panel in panels.Where(p => p.Name.Length > 0))
        {
            // An opening that is repeated keeps its own name too.
            (string Owner, string Name)[] names =
            [
                .. Sides(panel).Distinct().Select(n => (n, n)),
                .. Openings(panel).SelectMany(o => Numbered(o).Prepend(o.Name).Distinct().Select(n => (o.Name, n))),
                .. panel.Trims.Select(t => (t.Name, t.Name)),
            ];
            // Of two patterns of one name that is told once.
            foreach (string twice in names.GroupBy(n => n.Name).Where(g => g.Count() > 1).DistinctBy(g => string.Join('/', g.Select(n => n.Owner))).Select(g => g.Key))
            {
                (string path, JsonTree at) = Find(panel.Name);
                job.Faults.Add("opening-name-twice", path, at.Place, $"Two edges of \"{panel.Name}\" would be called \"{twice}\".", "Give each opening and trim a name of its own, that none of the panel's edges has: their edges are called by it, and those of a pattern have a number behind it.");
            }
        }
    }

    /// <summary>True if there may be an edge of this name; a fault if not. Of a panel with faults of its own it may be any.</summary>
    /// <param name="edge">On a panel of the job, or a piece of one.</param>
    /// <param name="path">Path of the name.</param>
    /// <param name="at">Where it stands.</param>
    public bool Has(EdgeName edge, string path, JsonTree at)
    {
        PanelSpec? panel = panels.FirstOrDefault(p => p.Name == edge.Panel) ?? panels.FirstOrDefault(p => PanelNames.Pieces(p.Name, p.Pieces).Contains(edge.Panel));
        if (panel is null || job.Faults.HasUnder(Find(panel.Name).Path) || job.Faults.HasUnder("openings")) return true;
        string[] known = [.. Sides(panel).Concat(Openings(panel).SelectMany(Numbered)).Concat(panel.Trims.Select(t => t.Name)).Distinct()];
        if (known.Contains(edge.Edge)) return true;
        string mend = NearestWord.To(edge.Edge, known) is { } near
            ? $"Did you mean \"{edge.Panel}/{near}\"?"
            : $"Its edges are: {string.Join(", ", known.Take(MostListed))}{(known.Length > MostListed ? " …" : "")}.";
        job.Faults.Add("edge-absent", path, at.Place, $"\"{edge.Panel}\" has no edge called \"{edge.Edge}\".", mend);
        return false;
    }

    private IEnumerable<OpeningSpec> Openings(PanelSpec panel) => [.. panel.Openings, .. shared.Where(o => o.Through.Contains(panel.Name))];

    // Each of a pattern has its number behind the name.
    private static IEnumerable<string> Numbered(OpeningSpec opening) => opening.Pattern switch
    {
        GridPattern grid => Enumerable.Range(1, grid.Across * grid.Up).Select(k => $"{opening.Name} {Measures.Count(k)}"),
        RingPattern ring => Enumerable.Range(1, ring.Count).Select(k => $"{opening.Name} {Measures.Count(k)}"),
        _ => [opening.Name],
    };

    private static IEnumerable<string> Sides(PanelSpec panel) => panel switch
    {
        { Mesh: not null } => ["rim"],
        { Flat: { } flat } => Closed(flat.Curves),
        { Bent: { Width: null } bent } => Closed([.. bent.Plan.Select(p => p.Name)]),
        _ => ["front", "right", "rear", "left"],
    };

    // Curves, and straight lines that close what they leave open: one after each, at most.
    private static IEnumerable<string> Closed(ImmutableArray<string> curves) =>
        [.. curves, .. Enumerable.Range(1, 2 * curves.Length).Select(k => k == 1 ? "chord" : $"chord {Measures.Count(k)}").Where(n => !curves.Contains(n)).Take(curves.Length)];

    private (string Path, JsonTree At) Find(string panel)
    {
        var list = (JsonList)job.Find("panels")!;
        int i = Enumerable.Range(0, list.Items.Length).First(k => list.Items[k] is JsonObject block && block.Find("name") is JsonText name && name.Value == panel);
        return ($"panels[{Measures.Count(i)}]", list.Items[i]);
    }
}

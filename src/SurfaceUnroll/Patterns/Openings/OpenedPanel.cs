using System.Collections.Immutable;
using NetTopologySuite.Geometries;
using NetTopologySuite.Index.Strtree;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Openings;

/// <summary>A panel with its openings.</summary>
internal static class OpenedPanel
{
    /// <summary>An opening that could be laid on a panel.</summary>
    /// <param name="Outline">As asked for.</param>
    /// <param name="Placed">Where it came to lie.</param>
    /// <param name="Where">Path of the opening in the job file.</param>
    public sealed record Laid(OpeningOutline Outline, SheetPiercing.Result Placed, string Where)
    {
        /// <summary>Closed edge on the blank.</summary>
        public ImmutableArray<Vec2> Edge { get; } = [.. Placed.Edge.Select(p => p.Flat)];
    }

    /// <summary>The panel with openings cut out of its mesh and areas; its outer cut line stays.</summary>
    /// <param name="panel">Before, its cut line still the net outline.</param>
    /// <param name="openings">Inside the outline and apart from each other.</param>
    public static PanelDevelopment Of(PanelDevelopment panel, IReadOnlyList<Laid> openings)
    {
        if (openings.Count == 0) return panel;
        MeshHole cut = MeshHole.Cut(panel.Mesh, [.. openings.Select(o => (o.Outline.Name, o.Edge))]);
        // The area of the whole is known better than by its triangles; an opening's is that of its own triangles.
        ImmutableArray<BlankOpening> added = [.. openings.Select((o, i) => Opening(o, cut.Areas[i]))];
        return panel with
        {
            Mesh = cut.Mesh,
            Map = panel.Map?.At(cut.From),
            DrawnMap = panel.DrawnMap?.At(cut.From),
            FormedArea = panel.FormedArea - added.Sum(o => o.FormedArea),
            FlatArea = panel.FlatArea - added.Sum(o => o.FlatArea),
            Openings = [.. panel.Openings, .. added],
        };
    }

    /// <summary>The pairs of openings of one piece that meet each other.</summary>
    public static IEnumerable<(Laid First, Laid Second)> Meeting(IReadOnlyList<Laid> openings)
    {
        var tree = new STRtree<int>();
        Polygon[] regions = [.. openings.Select(o => Polygons.Of(o.Edge))];
        for (int i = 0; i < regions.Length; i++) tree.Insert(regions[i].EnvelopeInternal, i);
        for (int i = 0; i < regions.Length; i++)
        {
            foreach (int j in tree.Query(regions[i].EnvelopeInternal).Where(j => j > i && regions[i].Intersects(regions[j])).Order()) yield return (openings[i], openings[j]);
        }
    }

    private static BlankOpening Opening(Laid laid, double formedArea)
    {
        bool clockwise = Polygons.SignedArea(laid.Edge) < 0;
        ImmutableArray<SheetPlace> edge = clockwise ? laid.Placed.Edge : [.. laid.Placed.Edge.Reverse()];
        ImmutableArray<Vec2> flat = [.. edge.Select(p => p.Flat)];
        SheetPlace centre = laid.Placed.Centre ?? edge[0];
        return new BlankOpening(laid.Outline.Name, laid.Outline.Size, centre.Formed, centre.Flat, [.. edge.Select(p => p.Formed)], flat, formedArea, -Polygons.SignedArea(flat), flat);
    }
}

using System.Collections.Immutable;
using NetTopologySuite.Geometries;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Openings;

/// <summary>A panel with its openings.</summary>
internal static class OpenedPanel
{
    /// <summary>An opening that could be laid on a panel.</summary>
    /// <param name="Outline">As asked for.</param>
    /// <param name="Placed">Where it came to lie.</param>
    public sealed record Laid(OpeningOutline Outline, SheetPiercing.Result Placed)
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

    /// <summary>The first two openings, of those of a panel and some more, that meet each other.</summary>
    public static (string First, string Second)? Meeting(PanelDevelopment panel, IReadOnlyList<Laid> openings)
    {
        (string Name, Polygon Region)[] all = [.. panel.Openings.Select(o => (o.Name, Polygons.Of(o.Flat))), .. openings.Select(o => (o.Outline.Name, Polygons.Of(o.Edge)))];
        for (int i = 0; i < all.Length; i++)
        {
            for (int j = i + 1; j < all.Length; j++)
            {
                if (all[i].Region.EnvelopeInternal.Intersects(all[j].Region.EnvelopeInternal) && all[i].Region.Intersects(all[j].Region)) return (all[i].Name, all[j].Name);
            }
        }
        return null;
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

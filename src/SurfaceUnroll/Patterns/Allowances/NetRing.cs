using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Allowances;

/// <summary>A run of a net outline along one edge.</summary>
/// <param name="Edge">Name of the edge; null along a relief cut.</param>
/// <param name="Path">From its first place to its last, the metal on the left.</param>
internal sealed record NetRun(string? Edge, ImmutableArray<Vec2> Path);

/// <summary>Splits a net outline into its edges.</summary>
internal static class NetRing
{
    // Places nearer than this, mm, are one.
    private const double Nearness = 1e-6;

    // Places of an edge that may lie between two neighbours of the outline: an edge is drawn through more places than a mesh has vertices.
    private const int Between = 17;

    /// <summary>The runs of the outline of a panel in order, the metal on the left.</summary>
    public static ImmutableArray<NetRun> Of(PanelDevelopment panel)
    {
        var pool = new PlacePool(Nearness);
        var spots = new Dictionary<int, List<(BlankEdge Edge, int At)>>();
        foreach (BlankEdge edge in panel.Edges)
        {
            for (int i = 0; i < edge.Flat.Length; i++)
            {
                int place = pool.Of(edge.Flat[i]);
                if (!spots.TryGetValue(place, out List<(BlankEdge, int)>? here)) spots[place] = here = [];
                here.Add((edge, i));
            }
        }
        ImmutableArray<Vec2> ring = panel.Net;
        int[] numbers = [.. ring.Select(pool.Of)];
        string?[] names = [.. Enumerable.Range(0, ring.Length).Select(i => NameOf(numbers[i], numbers[(i + 1) % ring.Length]))];
        // Begin where one edge ends and another starts; a ring of one edge begins at its first place.
        int start = Enumerable.Range(0, ring.Length).FirstOrDefault(i => names[i] != names[(i + ring.Length - 1) % ring.Length]);
        var runs = ImmutableArray.CreateBuilder<NetRun>();
        for (int k = 0; k < ring.Length;)
        {
            int from = (start + k) % ring.Length;
            var path = ImmutableArray.CreateBuilder<Vec2>();
            path.Add(ring[from]);
            string? name = names[from];
            do path.Add(ring[(start + ++k) % ring.Length]);
            while (k < ring.Length && names[(start + k) % ring.Length] == name);
            runs.Add(new NetRun(name, path.ToImmutable()));
        }
        return runs.ToImmutable();

        // The edge of which both places are near neighbours.
        string? NameOf(int a, int b)
        {
            if (!spots.TryGetValue(a, out List<(BlankEdge Edge, int At)>? before) || !spots.TryGetValue(b, out List<(BlankEdge Edge, int At)>? after)) return null;
            return before.SelectMany(p => after.Where(q => q.Edge == p.Edge && q.At != p.At).Select(q => (p.Edge, Steps: Steps(p.Edge, Math.Abs(q.At - p.At)))))
                .Where(s => s.Steps is >= 1 and <= Between).OrderBy(s => s.Steps).Select(s => s.Edge.Name).FirstOrDefault();
        }

        // Round a closed edge the shorter way.
        static int Steps(BlankEdge edge, int steps) =>
            (edge.Flat[0] - edge.Flat[^1]).Length <= Nearness ? Math.Min(steps, edge.Flat.Length - 1 - steps) : steps;
    }
}

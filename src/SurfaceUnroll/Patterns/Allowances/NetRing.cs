using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Allowances;

/// <summary>A run of a net outline along one edge, from corner to corner.</summary>
/// <param name="Edge">Name of the edge; null along a relief cut.</param>
/// <param name="Path">From its first place to its last, the metal on the left.</param>
internal sealed record NetRun(string? Edge, ImmutableArray<Vec2> Path);

/// <summary>Splits a net outline into its edges.</summary>
internal static class NetRing
{
    // Places nearer than this, mm, are one.
    private const double Nearness = 1e-6;

    // What an edge on the blank is drawn to, mm.
    private const double Jag = 0.01;

    /// <summary>The runs of a closed edge of an opening, the metal on the left.</summary>
    /// <param name="name">Of the edge.</param>
    /// <param name="edge">The first place not repeated.</param>
    public static ImmutableArray<NetRun> OfOpening(string name, ImmutableArray<Vec2> edge)
    {
        // Begin at a corner, so that none of its straights is parted elsewhere.
        int start = Enumerable.Range(0, edge.Length).MaxBy(i => Math.Abs(TurnAt(edge[(i + edge.Length - 1) % edge.Length], edge[i], edge[(i + 1) % edge.Length])));
        return [.. Parted(new NetRun(name, [.. edge[start..], .. edge[..(start + 1)]]))];
    }

    // An edge may have corners of its own, at which allowances meet as they do between two edges.
    private static IEnumerable<NetRun> Parted(NetRun run)
    {
        int from = 0;
        for (int i = 1; i + 1 < run.Path.Length; i++)
        {
            if (Math.Abs(TurnOver(run.Path, i)) <= AllowanceCorner.Parting) continue;
            yield return run with { Path = run.Path[from..(i + 1)] };
            from = i;
        }
        yield return run with { Path = run.Path[from..] };
    }

    // Places nearer than what an edge is drawn to may stand in any order: a corner shows over more than that.
    private static double TurnOver(ImmutableArray<Vec2> path, int at)
    {
        (int before, int after) = (at - 1, at + 1);
        while (before > 0 && (path[at] - path[before]).Length < Jag) before--;
        while (after < path.Length - 1 && (path[after] - path[at]).Length < Jag) after++;
        return TurnAt(path[before], path[at], path[after]);
    }

    private static double TurnAt(Vec2 before, Vec2 at, Vec2 after) => AllowanceBands.Turn(at - before, after - at);

    private sealed record EdgePath(string Name, ImmutableArray<Vec2> Flat);

    // The outline goes by the places of an edge, or where a trim cut it by those of the mesh, of which an edge that was left whole need not have all.
    private static IEnumerable<EdgePath> Paths(PanelDevelopment panel) =>
        [.. panel.Edges.Select(e => new EdgePath(e.Name, e.Flat)), .. panel.Mesh.Chains.Select(c => new EdgePath(c.Name, [.. c.Vertices.Select(v => panel.Mesh.Flat[v])]))];

    /// <summary>The runs of the outline of a panel in order, the metal on the left.</summary>
    public static ImmutableArray<NetRun> Of(PanelDevelopment panel)
    {
        var pool = new PlacePool(Nearness);
        var spots = new Dictionary<int, List<(EdgePath Edge, int At)>>();
        foreach (EdgePath edge in Paths(panel))
        {
            for (int i = 0; i < edge.Flat.Length; i++)
            {
                int place = pool.Of(edge.Flat[i]);
                if (!spots.TryGetValue(place, out List<(EdgePath, int)>? here)) spots[place] = here = [];
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
        return [.. runs.SelectMany(Parted)];

        // The edge of which both places are near neighbours.
        string? NameOf(int a, int b)
        {
            if (!spots.TryGetValue(a, out List<(EdgePath Edge, int At)>? before) || !spots.TryGetValue(b, out List<(EdgePath Edge, int At)>? after)) return null;
            return before.SelectMany(p => after.Where(q => q.Edge == p.Edge && q.At != p.At).Select(q => (p.Edge, Steps: Steps(p.Edge, Math.Abs(q.At - p.At)))))
                .Where(s => s.Steps >= 1).OrderBy(s => s.Steps).Select(s => s.Edge.Name).FirstOrDefault();
        }

        // Round a closed edge the shorter way.
        static int Steps(EdgePath edge, int steps) =>
            (edge.Flat[0] - edge.Flat[^1]).Length <= Nearness ? Math.Min(steps, edge.Flat.Length - 1 - steps) : steps;
    }
}

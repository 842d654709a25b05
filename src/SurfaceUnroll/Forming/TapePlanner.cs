using System.Collections.Immutable;
using NetTopologySuite.Geometries;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Forming;

/// <summary>Chooses places at the rim of a piece and the distances between them that a tape checks on the blank and on the formed part.</summary>
internal static class TapePlanner
{
    // Without l and o, which look like figures.
    private const string Letters = "abcdefghijkmnpqrstuvwxyz";

    // So many places at most, of so many distances taut and along the sheet.
    private const int MostMarks = 8, Taut = 7, OnSheet = 4;

    // Places nearer than this share of the blank's size are not worth two letters.
    private const double Nearness = 0.06;

    // On a slender blank the corners of an end are worth two letters all the same, if they are no nearer than this share of its width; nothing shorter is taped taut, mm.
    private const double Slender = 0.5, LeastTaped = 10;

    // A distance along the sheet tells something new where it is longer than the taut one by this share.
    private const double Telling = 0.01;

    /// <summary>Lettered places and distances.</summary>
    /// <param name="panel">Net outline, mesh and verdict.</param>
    /// <param name="rim">Vertices of the mesh round its outline, the metal on the left.</param>
    public static (ImmutableArray<TapeMark> Marks, ImmutableArray<TapeCheck> Checks) Of(PanelDevelopment panel, ImmutableArray<int> rim)
    {
        int[] places = [.. Places(panel.Mesh, rim)];
        ImmutableArray<TapeMark> marks = [.. places.Select((v, i) => new TapeMark(Letters[i].ToString(), panel.Mesh.Flat[v], panel.Mesh.Formed[v]))];
        (TapeMark From, TapeMark To)[] pairs = [.. marks.SelectMany((a, i) => marks.Skip(i + 1).Select(b => (a, b))).OrderByDescending(p => Math.Round((p.b.Flat - p.a.Flat).Length, 6))];
        // First across the mouth of each edge, which proves the roll.
        (TapeMark, TapeMark)[] mouths = [.. pairs.Where(p => panel.Mesh.Chains.Any(c => Ends(panel.Mesh, c, p) && Flat(p) > (1 + Telling) * Formed(p)))];
        TapeCheck[] taut = [.. Spread([.. mouths, .. pairs.Except(mouths)], Taut, p => Formed(p) > LeastTaped).Select(p => new TapeCheck(p.From.Letter, p.To.Letter, Flat(p), Formed(p), TapeRun.Taut))];
        return (marks, [.. taut, .. Along(panel, pairs)]);
    }

    private static double Formed((TapeMark From, TapeMark To) pair) => (pair.To.Formed - pair.From.Formed).Length;

    private static bool Ends(SheetMesh mesh, EdgeChain chain, (TapeMark From, TapeMark To) pair)
    {
        (Vec2 a, Vec2 b) = (mesh.Flat[chain.Vertices[0]], mesh.Flat[chain.Vertices[^1]]);
        return (pair.From.Flat == a && pair.To.Flat == b) || (pair.From.Flat == b && pair.To.Flat == a);
    }

    private static double Flat((TapeMark From, TapeMark To) pair) => (pair.To.Flat - pair.From.Flat).Length;

    // On a sheet that only bends the shortest way is the straight line on the blank, if that runs over metal and over no sharp bend.
    private static IEnumerable<TapeCheck> Along(PanelDevelopment panel, (TapeMark From, TapeMark To)[] pairs)
    {
        if (panel.Verdict != Verdict.BendsOnly || panel.Map is not null) return [];
        var metal = Polygons.Of(panel.Net, panel.Openings.Select(o => o.Flat));
        LineString[] bends = [.. panel.Bends.Where(b => b.Lip is null && b.Centre.Length > 1).Select(b => Line(b.Centre))];
        return Spread(pairs, OnSheet, p => Flat(p) > (1 + Telling) * Formed(p) && Line([p.From.Flat, p.To.Flat]) is var line && Runs(metal, line) && !bends.Any(line.Intersects))
            .Select(p => new TapeCheck(p.From.Letter, p.To.Letter, Flat(p), Flat(p), TapeRun.OnSheet));
    }

    // All but a trace of rounding at its ends lies on metal.
    private static bool Runs(Polygon metal, LineString line) => Polygons.Shared(line, metal).Length > line.Length - 1e-3;

    private static LineString Line(ImmutableArray<Vec2> path) => new([.. path.Select(p => new Coordinate(p.X, p.Y))]);

    // Of those that serve: each place once with the farthest other that is left to it, then the longest of the rest. No more are asked than are needed: to ask takes a while.
    private static IEnumerable<(TapeMark From, TapeMark To)> Spread((TapeMark From, TapeMark To)[] pairs, int most, Func<(TapeMark From, TapeMark To), bool> serves)
    {
        var chosen = new List<(TapeMark From, TapeMark To)>();
        var passed = new List<(TapeMark, TapeMark)>();
        HashSet<string> covered = [];
        foreach ((TapeMark From, TapeMark To) pair in pairs)
        {
            if (chosen.Count == most) break;
            if (covered.Contains(pair.From.Letter) && covered.Contains(pair.To.Letter)) passed.Add(pair);
            else if (serves(pair))
            {
                chosen.Add(pair);
                covered.UnionWith([pair.From.Letter, pair.To.Letter]);
            }
        }
        chosen.AddRange(passed.Where(serves).Take(most - chosen.Count));
        return chosen.OrderBy(p => p.From.Letter, StringComparer.Ordinal).ThenBy(p => p.To.Letter, StringComparer.Ordinal);
    }

    // Ends of edges first, then their middles and quarters, round the rim from the upper left, until there are enough.
    private static IEnumerable<int> Places(SheetMesh mesh, ImmutableArray<int> rim)
    {
        Box box = Box.Around(rim.Select(v => mesh.Flat[v]));
        double near = Math.Min(Nearness * Math.Max(box.Width, box.Height), Slender * Math.Min(box.Width, box.Height));
        HashSet<int> outer = [.. rim];
        var taken = new List<int>();
        foreach (double share in new[] { 0, 1, 0.5, 0.25, 0.75 })
        {
            foreach (EdgeChain chain in mesh.Chains.Where(c => c.Vertices.Length > 1 && outer.Contains(c.Vertices[0])))
            {
                int v = At(mesh, chain, share);
                if (taken.Count < MostMarks && taken.TrueForAll(t => (mesh.Flat[t] - mesh.Flat[v]).Length > near)) taken.Add(v);
            }
        }
        // Clockwise from the upper left.
        Vec2 corner = new(box.Min.X, box.Max.Y);
        int[] order = [.. rim.Reverse().Where(taken.Contains)];
        int start = Array.IndexOf(order, order.MinBy(v => (mesh.Flat[v] - corner).Length));
        return [.. order[start..], .. order[..start]];
    }

    private static int At(SheetMesh mesh, EdgeChain chain, double share)
    {
        double[] running = PathLength.Running(chain.Vertices.Select(v => mesh.Formed[v]));
        return chain.Vertices[Enumerable.Range(0, running.Length).MinBy(i => Math.Abs(running[i] - share * running[^1]))];
    }
}

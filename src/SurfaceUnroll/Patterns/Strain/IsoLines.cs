using System.Collections.Immutable;
using System.Runtime.InteropServices;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Strain;

/// <summary>A line on the blank along which a field has one value.</summary>
/// <param name="Points">At least two, mm, the larger values on the left; a closed line does not repeat its first point.</param>
/// <param name="Closed">The last point joins the first; an open line ends on the rim.</param>
public sealed record IsoLine(ImmutableArray<Vec2> Points, bool Closed);

/// <summary>Lines of one value of a field that is given at the vertices of a sheet and linear in each triangle.</summary>
public static class IsoLines
{
    // Points closer than this (mm) are one point.
    private const double SamePlace = 1e-9;

    /// <summary>Every line of a level.</summary>
    /// <param name="mesh">Its flat places are used.</param>
    /// <param name="field">One value a vertex.</param>
    /// <param name="level">The value sought.</param>
    /// <remarks>
    /// A value equal to the level counts as above it. So each triangle has one piece of line or none, and pieces meet in nodes: an edge that
    /// is crossed, or a vertex that has just the level. A ridge or a rim that has just the level is touched, not crossed, and has no line.
    /// </remarks>
    public static ImmutableArray<IsoLine> Of(SheetMesh mesh, ImmutableArray<double> field, double level) => Of(mesh, new MeshLinks(mesh), field, level);

    internal static ImmutableArray<IsoLine> Of(SheetMesh mesh, MeshLinks links, ImmutableArray<double> field, double level)
    {
        var lines = ImmutableArray.CreateBuilder<IsoLine>();
        foreach (List<Node> chain in Chains(Pieces(mesh, links, field, level)))
        {
            bool closed = chain[0] == chain[^1];
            List<Vec2> points = [];
            foreach (Vec2 p in chain.Select(node => Place(mesh, field, level, node)))
                if (points.Count == 0 || (p - points[^1]).Length > SamePlace) points.Add(p);
            if (closed && points.Count > 1 && (points[0] - points[^1]).Length <= SamePlace) points.RemoveAt(points.Count - 1);
            if (points.Count >= (closed ? 3 : 2)) lines.Add(new IsoLine([.. points], closed));
        }
        return lines.ToImmutable();
    }

    // An edge by its two vertices, the smaller number first, or a vertex twice.
    private readonly record struct Node(int Low, int High)
    {
        public bool IsVertex => Low == High;
    }

    private static List<(Node From, Node To)> Pieces(SheetMesh mesh, MeshLinks links, ImmutableArray<double> field, double level)
    {
        List<(Node From, Node To)> pieces = [];
        // Pieces that run along an edge of the mesh come once from each side if the line only touches the level there, and cancel.
        Dictionary<(Node, Node), (Node From, Node To)> alongEdges = [];
        foreach ((int a, int b, int c) in mesh.Faces)
        {
            (bool highA, bool highB, bool highC) = (field[a] >= level, field[b] >= level, field[c] >= level);
            if (highA == highB && highB == highC) continue;
            // The vertex that differs from the two others, and those in turn.
            (int lone, int next, int last) = highB == highC ? (a, b, c) : highA == highC ? (b, c, a) : (c, a, b);
            Node first = Crossing(lone, next), second = Crossing(lone, last);
            if (first == second) continue;
            // Counter-clockwise round the lone vertex if that is the high one.
            (Node from, Node to) = field[lone] >= level ? (first, second) : (second, first);
            if (!from.IsVertex || !to.IsVertex) pieces.Add((from, to));
            else if (!links.OnRim(from.Low, to.Low) && !alongEdges.Remove((to, from))) alongEdges.Add((from, to), (from, to));
        }
        pieces.AddRange(alongEdges.Values);
        return pieces;

        Node Crossing(int p, int q)
        {
            if (field[p] == level) return new Node(p, p);
            return field[q] == level ? new Node(q, q) : new Node(Math.Min(p, q), Math.Max(p, q));
        }
    }

    // Lines that end on the rim first, then the closed ones. Where several meet in one vertex the line goes on along any that is left.
    private static IEnumerable<List<Node>> Chains(List<(Node From, Node To)> pieces)
    {
        Dictionary<Node, List<int>> leaving = [];
        Dictionary<Node, int> surplus = [];
        for (int i = 0; i < pieces.Count; i++)
        {
            (CollectionsMarshal.GetValueRefOrAddDefault(leaving, pieces[i].From, out _) ??= []).Add(i);
            surplus[pieces[i].From] = surplus.GetValueOrDefault(pieces[i].From) + 1;
            surplus[pieces[i].To] = surplus.GetValueOrDefault(pieces[i].To) - 1;
        }
        bool[] used = new bool[pieces.Count];
        foreach (bool ends in new[] { true, false })
        {
            for (int i = 0; i < pieces.Count; i++)
            {
                bool starts = surplus[pieces[i].From] > 0;
                if (used[i] || (ends && !starts)) continue;
                if (ends) surplus[pieces[i].From]--;
                List<Node> chain = [pieces[i].From];
                for (int? at = i; at is { } piece; at = Next(chain[^1]))
                {
                    used[piece] = true;
                    chain.Add(pieces[piece].To);
                }
                yield return chain;
            }
        }

        int? Next(Node node)
        {
            if (!leaving.TryGetValue(node, out List<int>? on)) return null;
            foreach (int piece in on)
                if (!used[piece]) return piece;
            return null;
        }
    }

    // From the smaller vertex number to the larger, so that both triangles at an edge find the same place to the last bit.
    private static Vec2 Place(SheetMesh mesh, ImmutableArray<double> field, double level, Node node)
    {
        if (node.IsVertex) return mesh.Flat[node.Low];
        double t = (level - field[node.Low]) / (field[node.High] - field[node.Low]);
        return Vec2.Lerp(mesh.Flat[node.Low], mesh.Flat[node.High], t);
    }
}

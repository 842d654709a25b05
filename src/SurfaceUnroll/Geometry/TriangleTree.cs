using System.Collections.Immutable;

namespace SurfaceUnroll.Geometry;

/// <summary>A place on a mesh.</summary>
/// <param name="Face">Number of the triangle.</param>
/// <param name="U">Weight of its second corner.</param>
/// <param name="V">Weight of its third corner.</param>
/// <param name="Distance">To what was asked about: of the nearest place the distance, of a hit its signed parameter along the line.</param>
internal readonly record struct MeshPlace(int Face, double U, double V, double Distance)
{
    /// <summary>The same in terms of the mesh's vertices.</summary>
    public VertexBlend On(ImmutableArray<(int A, int B, int C)> faces) => new(faces[Face].A, faces[Face].B, faces[Face].C, U, V);
}

/// <summary>Boxes in boxes round the triangles of a mesh, so that few of them need to be looked at.</summary>
internal sealed class TriangleTree
{
    private const int LeafSize = 4;

    private readonly ImmutableArray<Vec3> _places;
    private readonly ImmutableArray<(int A, int B, int C)> _faces;
    private readonly int[] _order;
    private readonly List<Node> _nodes = [];

    // Leaves hold faces from First to Last of the order; others have their left child next to them and the right one at Right.
    private readonly record struct Node(Vec3 Min, Vec3 Max, int First, int Last, int Right);

    /// <summary>The tree of at least one triangle.</summary>
    public TriangleTree(ImmutableArray<Vec3> places, ImmutableArray<(int A, int B, int C)> faces)
    {
        (_places, _faces) = (places, faces);
        _order = [.. Enumerable.Range(0, faces.Length)];
        Build(0, faces.Length);
    }

    /// <summary>The place of the mesh nearest to a point.</summary>
    public MeshPlace Nearest(Vec3 point)
    {
        var best = new MeshPlace(-1, 0, 0, double.PositiveInfinity);
        Search(0);
        return best;

        void Search(int at)
        {
            Node node = _nodes[at];
            if (ToBox(node, point) >= best.Distance) return;
            if (node.Right < 0)
            {
                for (int k = node.First; k < node.Last; k++)
                {
                    MeshPlace place = Nearest(_order[k], point);
                    if (place.Distance < best.Distance) best = place;
                }
                return;
            }
            bool leftFirst = ToBox(_nodes[at + 1], point) <= ToBox(_nodes[node.Right], point);
            Search(leftFirst ? at + 1 : node.Right);
            Search(leftFirst ? node.Right : at + 1);
        }
    }

    /// <summary>Every place at which a line through a point pierces the mesh; its distance is in lengths of the direction, negative behind the point. Where it meets an edge, both faces may count.</summary>
    public IReadOnlyList<MeshPlace> Hits(Vec3 point, Vec3 direction)
    {
        var hits = new List<MeshPlace>();
        Search(0);
        return hits;

        void Search(int at)
        {
            Node node = _nodes[at];
            if (!Meets(node, point, direction)) return;
            if (node.Right >= 0)
            {
                Search(at + 1);
                Search(node.Right);
                return;
            }
            for (int k = node.First; k < node.Last; k++)
                if (Hit(_order[k], point, direction) is { } hit) hits.Add(hit);
        }
    }

    private void Build(int first, int last)
    {
        (Vec3 min, Vec3 max) = Bounds(first, last);
        int at = _nodes.Count;
        _nodes.Add(new Node(min, max, first, last, -1));
        if (last - first <= LeafSize) return;
        Vec3 size = max - min;
        Func<Vec3, double> axis = size.X >= size.Y && size.X >= size.Z ? p => p.X : size.Y >= size.Z ? p => p.Y : p => p.Z;
        Array.Sort(_order, first, last - first, Comparer<int>.Create((i, j) => (Middle(i), i).CompareTo((Middle(j), j))));
        int middle = (first + last) / 2;
        Build(first, middle);
        _nodes[at] = _nodes[at] with { Right = _nodes.Count };
        Build(middle, last);

        double Middle(int face) => axis(_places[_faces[face].A]) + axis(_places[_faces[face].B]) + axis(_places[_faces[face].C]);
    }

    private (Vec3 Min, Vec3 Max) Bounds(int first, int last)
    {
        const double far = double.PositiveInfinity;
        (Vec3 min, Vec3 max) = (new(far, far, far), new(-far, -far, -far));
        for (int k = first; k < last; k++)
        {
            (int a, int b, int c) = _faces[_order[k]];
            foreach (int v in (ReadOnlySpan<int>)[a, b, c])
            {
                Vec3 p = _places[v];
                min = new Vec3(Math.Min(min.X, p.X), Math.Min(min.Y, p.Y), Math.Min(min.Z, p.Z));
                max = new Vec3(Math.Max(max.X, p.X), Math.Max(max.Y, p.Y), Math.Max(max.Z, p.Z));
            }
        }
        return (min, max);
    }

    private static double ToBox(Node node, Vec3 p)
    {
        double Outside(double x, double low, double high) => Math.Max(0, Math.Max(low - x, x - high));
        return new Vec3(Outside(p.X, node.Min.X, node.Max.X), Outside(p.Y, node.Min.Y, node.Max.Y), Outside(p.Z, node.Min.Z, node.Max.Z)).Length;
    }

    // Slabs; a little room, since the box of a flat part has no depth.
    private static bool Meets(Node node, Vec3 p, Vec3 d)
    {
        const double room = 1e-9;
        (double from, double to) = (double.NegativeInfinity, double.PositiveInfinity);
        return Slab(p.X, d.X, node.Min.X, node.Max.X) && Slab(p.Y, d.Y, node.Min.Y, node.Max.Y) && Slab(p.Z, d.Z, node.Min.Z, node.Max.Z);

        bool Slab(double start, double step, double low, double high)
        {
            low -= room * (1 + Math.Abs(low));
            high += room * (1 + Math.Abs(high));
            if (step == 0) return start >= low && start <= high;
            (double t0, double t1) = ((low - start) / step, (high - start) / step);
            (from, to) = (Math.Max(from, Math.Min(t0, t1)), Math.Min(to, Math.Max(t0, t1)));
            return from <= to;
        }
    }

    // Möller and Trumbore, "Fast, minimum storage ray/triangle intersection", 1997; the borders belong to the triangle, with a little room for rounding.
    private MeshPlace? Hit(int face, Vec3 p, Vec3 d)
    {
        const double room = 1e-9;
        (int a, int b, int c) = _faces[face];
        Vec3 e1 = _places[b] - _places[a], e2 = _places[c] - _places[a], h = d.Cross(e2);
        double det = e1.Dot(h);
        if (Math.Abs(det) <= 1e-12 * e1.Length * e2.Length * d.Length) return null;
        Vec3 s = p - _places[a], q = s.Cross(e1);
        double u = s.Dot(h) / det, v = d.Dot(q) / det;
        return u < -room || v < -room || u + v > 1 + room ? null : new MeshPlace(face, u, v, e2.Dot(q) / det);
    }

    // Ericson, Real-Time Collision Detection, section 5.1.5.
    private MeshPlace Nearest(int face, Vec3 p)
    {
        (int ia, int ib, int ic) = _faces[face];
        Vec3 a = _places[ia], ab = _places[ib] - a, ac = _places[ic] - a, ap = p - a;
        double d1 = ab.Dot(ap), d2 = ac.Dot(ap);
        if (d1 <= 0 && d2 <= 0) return At(0, 0);
        Vec3 bp = p - _places[ib];
        double d3 = ab.Dot(bp), d4 = ac.Dot(bp);
        if (d3 >= 0 && d4 <= d3) return At(1, 0);
        double vc = d1 * d4 - d3 * d2;
        if (vc <= 0 && d1 >= 0 && d3 <= 0) return At(d1 / (d1 - d3), 0);
        Vec3 cp = p - _places[ic];
        double d5 = ab.Dot(cp), d6 = ac.Dot(cp);
        if (d6 >= 0 && d5 <= d6) return At(0, 1);
        double vb = d5 * d2 - d1 * d6;
        if (vb <= 0 && d2 >= 0 && d6 <= 0) return At(0, d2 / (d2 - d6));
        double va = d3 * d6 - d5 * d4;
        if (va <= 0 && d4 - d3 >= 0 && d5 - d6 >= 0)
        {
            double w = (d4 - d3) / (d4 - d3 + (d5 - d6));
            return At(1 - w, w);
        }
        double sum = va + vb + vc;
        return At(vb / sum, vc / sum);

        MeshPlace At(double u, double v) => new(face, u, v, (a + u * ab + v * ac - p).Length);
    }
}

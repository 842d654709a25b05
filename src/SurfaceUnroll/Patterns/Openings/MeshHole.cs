using System.Collections.Immutable;
using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Prepared;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Openings;

/// <summary>A mesh with openings cut out of it.</summary>
/// <param name="Mesh">What stays; each opening is the last of its chains in turn, closed.</param>
/// <param name="From">For each vertex of it where it lies on the mesh before.</param>
/// <param name="Areas">Formed area that each opening took, mm².</param>
internal sealed record MeshHole(SheetMesh Mesh, ImmutableArray<VertexBlend> From, ImmutableArray<double> Areas)
{
    // Corners nearer than this, mm, are one.
    private const double Nearness = 1e-7;

    /// <summary>Cuts openings that lie inside the sheet and apart from each other.</summary>
    /// <param name="mesh">Before.</param>
    /// <param name="openings">Name and closed edge on the blank, the first place not repeated.</param>
    public static MeshHole Cut(SheetMesh mesh, IReadOnlyList<(string Name, ImmutableArray<Vec2> Edge)> openings) => new Cutter(mesh).Run(openings);

    private sealed class Cutter(SheetMesh mesh)
    {
        private readonly PlacePool _pool = new(Nearness);
        private readonly List<VertexBlend> _from = [.. Enumerable.Range(0, mesh.Formed.Length).Select(VertexBlend.Same)];
        private readonly Dictionary<int, int> _numbers = [];
        private List<(int A, int B, int C)> _faces = [.. mesh.Faces];

        public MeshHole Run(IReadOnlyList<(string Name, ImmutableArray<Vec2> Edge)> openings)
        {
            ImmutableArray<double> areas = [.. openings.Select(o => Take(o.Edge))];
            CutMesh left = CutMesh.Of(mesh, _from, _faces, mesh.Chains);
            return new MeshHole(left.Mesh with { Chains = [.. left.Mesh.Chains, .. Chains(left.Mesh, openings)] }, left.From, areas);
        }

        private Vec2 Flat(int v) => _from[v].Of(mesh.Flat);

        private Vec3 Formed(int v) => _from[v].Of(mesh.Formed);

        private double Area((int A, int B, int C) f) => 0.5 * (Formed(f.B) - Formed(f.A)).Cross(Formed(f.C) - Formed(f.A)).Length;

        private double Take(ImmutableArray<Vec2> edge)
        {
            Polygon hole = Polygons.Of(edge);
            var prepared = PreparedGeometryFactory.Prepare(hole);
            Box box = Box.Around(edge).Grow(Nearness);
            var faces = new List<(int, int, int)>(_faces.Count);
            double taken = 0;
            foreach ((int A, int B, int C) face in _faces)
            {
                (Vec2 a, Vec2 b, Vec2 c) = (Flat(face.A), Flat(face.B), Flat(face.C));
                if (!Meets(box, a, b, c))
                {
                    faces.Add(face);
                    continue;
                }
                Polygon triangle = Polygons.Of([a, b, c]);
                if (!prepared.Intersects(triangle))
                {
                    faces.Add(face);
                    continue;
                }
                taken += Area(face);
                if (prepared.ContainsProperly(triangle)) continue;
                foreach (Polygon part in Polygons.Parts(Polygons.Without(triangle, hole)))
                {
                    foreach ((Vec2 p, Vec2 q, Vec2 r) in Polygons.Triangles(part))
                    {
                        (int i, int j, int k) = (Vertex(p, face), Vertex(q, face), Vertex(r, face));
                        if (i == j || j == k || k == i) continue;
                        faces.Add((i, j, k));
                        taken -= Area((i, j, k));
                    }
                }
            }
            _faces = faces;
            return taken;
        }

        private static bool Meets(Box box, Vec2 a, Vec2 b, Vec2 c) =>
            Math.Min(a.X, Math.Min(b.X, c.X)) <= box.Max.X && Math.Max(a.X, Math.Max(b.X, c.X)) >= box.Min.X
            && Math.Min(a.Y, Math.Min(b.Y, c.Y)) <= box.Max.Y && Math.Max(a.Y, Math.Max(b.Y, c.Y)) >= box.Min.Y;

        // A corner of the face, one that a neighbour has made, or a new vertex on the face.
        private int Vertex(Vec2 p, (int A, int B, int C) face)
        {
            foreach (int corner in (ReadOnlySpan<int>)[face.A, face.B, face.C])
                if ((Flat(corner) - p).Length <= Nearness) return corner;
            int place = _pool.Of(p);
            if (_numbers.TryGetValue(place, out int known)) return known;
            _from.Add(Blend(p, face));
            return _numbers[place] = _from.Count - 1;
        }

        // Of a face that an opening before has cut already, in terms of the whole mesh.
        private VertexBlend Blend(Vec2 p, (int A, int B, int C) face)
        {
            (Vec2 a, Vec2 b, Vec2 c) = (Flat(face.A), Flat(face.B), Flat(face.C));
            double det = (b - a).Cross(c - a), u = (p - a).Cross(c - a) / det, v = (b - a).Cross(p - a) / det;
            var weights = new Dictionary<int, double>();
            foreach ((int corner, double w) in (ReadOnlySpan<(int, double)>)[(face.A, 1 - u - v), (face.B, u), (face.C, v)])
            {
                VertexBlend blend = _from[corner];
                foreach ((int vertex, double share) in (ReadOnlySpan<(int, double)>)[(blend.A, 1 - blend.U - blend.V), (blend.B, blend.U), (blend.C, blend.V)])
                    weights[vertex] = weights.GetValueOrDefault(vertex) + w * share;
            }
            // All corners lie on one face of the mesh before, so there are three vertices at most.
            int[] three = [.. weights.OrderByDescending(w => Math.Abs(w.Value)).Select(w => w.Key).Take(3)];
            (int x, int y, int z) = (three[0], three[Math.Min(1, three.Length - 1)], three[^1]);
            return new VertexBlend(x, y, z, y == x ? 0 : weights[y], z == x || z == y ? 0 : weights[z]);
        }

        // Of each opening the border that runs through its first corner.
        private static IEnumerable<EdgeChain> Chains(SheetMesh cut, IReadOnlyList<(string Name, ImmutableArray<Vec2> Edge)> openings)
        {
            ImmutableArray<int>[] borders = [.. MeshBorders.Of(cut).Skip(1)];
            foreach ((string name, ImmutableArray<Vec2> edge) in openings)
            {
                ImmutableArray<int> border = borders.MinBy(loop => loop.Min(v => (cut.Flat[v] - edge[0]).Length));
                yield return new EdgeChain(name, [.. border, border[0]]);
            }
        }
    }
}

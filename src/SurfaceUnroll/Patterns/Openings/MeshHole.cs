using System.Collections.Immutable;
using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Prepared;
using NetTopologySuite.Index.Strtree;
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
        private readonly List<(int A, int B, int C)> _faces = [];

        public MeshHole Run(IReadOnlyList<(string Name, ImmutableArray<Vec2> Edge)> openings)
        {
            IPreparedGeometry[] holes = [.. openings.Select(o => PreparedGeometryFactory.Prepare(Polygons.Of(o.Edge)))];
            var tree = new STRtree<int>();
            for (int i = 0; i < holes.Length; i++) tree.Insert(holes[i].Geometry.EnvelopeInternal, i);
            double[] areas = new double[holes.Length];
            foreach ((int A, int B, int C) face in mesh.Faces)
            {
                Polygon triangle = Polygons.Of([mesh.Flat[face.A], mesh.Flat[face.B], mesh.Flat[face.C]]);
                int[] met = [.. tree.Query(triangle.EnvelopeInternal).Where(i => holes[i].Intersects(triangle)).Order()];
                // On one triangle formed and flat areas go together.
                double formed = FormedArea(face) / triangle.Area;
                if (met.Length == 0) _faces.Add(face);
                else if (holes[met[0]].ContainsProperly(triangle)) areas[met[0]] += formed * triangle.Area;
                else
                {
                    foreach (int i in met) areas[i] += formed * Polygons.Shared(triangle, holes[i].Geometry).Area;
                    Replace(face, Polygons.Without(triangle, new MultiPolygon([.. met.Select(i => (Polygon)holes[i].Geometry)])));
                }
            }
            CutMesh left = CutMesh.Of(mesh, _from, _faces, mesh.Chains);
            return new MeshHole(left.Mesh with { Chains = [.. left.Mesh.Chains, .. Chains(left.Mesh, openings)] }, left.From, [.. areas]);
        }

        private double FormedArea((int A, int B, int C) f) => 0.5 * (mesh.Formed[f.B] - mesh.Formed[f.A]).Cross(mesh.Formed[f.C] - mesh.Formed[f.A]).Length;

        private void Replace((int A, int B, int C) face, NetTopologySuite.Geometries.Geometry rest)
        {
            foreach ((Vec2 p, Vec2 q, Vec2 r) in Polygons.Parts(rest).SelectMany(Polygons.Triangles))
            {
                (int i, int j, int k) = (Vertex(p, face), Vertex(q, face), Vertex(r, face));
                if (i != j && j != k && k != i) _faces.Add((i, j, k));
            }
        }

        // A corner of the face, one that a neighbour has made, or a new vertex on the face.
        private int Vertex(Vec2 p, (int A, int B, int C) face)
        {
            foreach (int corner in (ReadOnlySpan<int>)[face.A, face.B, face.C])
                if ((mesh.Flat[corner] - p).Length <= Nearness) return corner;
            int place = _pool.Of(p);
            if (_numbers.TryGetValue(place, out int known)) return known;
            (Vec2 a, Vec2 b, Vec2 c) = (mesh.Flat[face.A], mesh.Flat[face.B], mesh.Flat[face.C]);
            double det = (b - a).Cross(c - a);
            _from.Add(new VertexBlend(face.A, face.B, face.C, (p - a).Cross(c - a) / det, (b - a).Cross(p - a) / det));
            return _numbers[place] = _from.Count - 1;
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

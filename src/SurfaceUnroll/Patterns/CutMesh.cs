using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns;

/// <summary>What is left of a mesh that was cut.</summary>
/// <param name="Mesh">Without the vertices that no face needs any more.</param>
/// <param name="From">For each vertex of it where it lies on the mesh before.</param>
internal sealed record CutMesh(SheetMesh Mesh, ImmutableArray<VertexBlend> From)
{
    /// <summary>Numbers the vertices that are left anew.</summary>
    /// <param name="before">The mesh before.</param>
    /// <param name="vertices">All its vertices and those that were made, as they lie on it.</param>
    /// <param name="faces">The faces that are left.</param>
    /// <param name="chains">Edges; of those of which nothing is left none stays.</param>
    public static CutMesh Of(SheetMesh before, IReadOnlyList<VertexBlend> vertices, IEnumerable<(int A, int B, int C)> faces, IEnumerable<EdgeChain> chains)
    {
        int[] kept = [.. faces.SelectMany(f => new[] { f.A, f.B, f.C }).Distinct().Order()];
        Dictionary<int, int> number = kept.Select((v, i) => (v, i)).ToDictionary(p => p.v, p => p.i);
        ImmutableArray<VertexBlend> from = [.. kept.Select(v => vertices[v])];
        var mesh = new SheetMesh(
            [.. from.Select(f => f.Of(before.Formed))], [.. from.Select(f => f.Of(before.Flat))], [.. faces.Select(f => (number[f.A], number[f.B], number[f.C]))])
        {
            Face = [.. from.Select(f => f.Of(before.Face))],
            Chains = [.. chains.Select(c => c with { Vertices = [.. c.Vertices.Where(number.ContainsKey).Select(v => number[v])] }).Where(c => c.Vertices.Length > 0)],
        };
        return new CutMesh(mesh, from);
    }
}

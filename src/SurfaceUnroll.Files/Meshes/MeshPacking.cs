using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Files.Meshes;

/// <summary>Leaves out the vertices that no face uses.</summary>
internal static class MeshPacking
{
    /// <summary>The mesh of the used vertices in their old order, and which those are.</summary>
    public static (TriangleMesh Mesh, ImmutableArray<int> Kept) Pack(List<Vec3> places, IReadOnlyCollection<(int A, int B, int C)> faces)
    {
        int[] place = new int[places.Count];
        foreach ((int a, int b, int c) in faces) place[a] = place[b] = place[c] = 1;
        var used = ImmutableArray.CreateBuilder<Vec3>(places.Count);
        var kept = ImmutableArray.CreateBuilder<int>(places.Count);
        for (int v = 0; v < place.Length; v++)
        {
            if (place[v] == 0) continue;
            place[v] = used.Count;
            used.Add(places[v]);
            kept.Add(v);
        }
        return (new TriangleMesh(used.ToImmutable(), [.. faces.Select(f => (place[f.A], place[f.B], place[f.C]))]), kept.ToImmutable());
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Files.Meshes;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Files.Stl;

/// <summary>Makes one mesh of loose triangles.</summary>
internal static class StlWeld
{
    /// <summary>The mesh of triangles given by three corners each.</summary>
    public static MeshReading Join(List<Vec3> corners)
    {
        int[] vertex = new int[corners.Count];
        var places = new List<Vec3>(corners.Count / 5);
        var known = new Dictionary<Vec3, int>(corners.Count / 5);
        for (int c = 0; c < vertex.Length; c++)
        {
            if (!known.TryGetValue(corners[c], out vertex[c]))
            {
                known.Add(corners[c], vertex[c] = places.Count);
                places.Add(corners[c]);
            }
        }
        (ImmutableArray<(int, int, int)> faces, ImmutableArray<int> numbers) = Whole(vertex);
        if (MeshWeld.Borders(places.ToArray(), MeshEdges.Of(places.Count, faces.AsSpan())) is { } becomes)
        {
            for (int c = 0; c < vertex.Length; c++) vertex[c] = becomes[vertex[c]];
            (faces, numbers) = Whole(vertex);
        }
        return faces.IsEmpty ? MeshFaults.NoFaces()
            : new MeshReading(MeshPacking.Pack(places, faces).Mesh, []) { Numbers = new MeshNumbers([], numbers) };
    }

    // Triangles of three different corners, and their numbers in the file.
    private static (ImmutableArray<(int, int, int)> Faces, ImmutableArray<int> Numbers) Whole(int[] vertex)
    {
        var faces = ImmutableArray.CreateBuilder<(int, int, int)>(vertex.Length / 3);
        var numbers = ImmutableArray.CreateBuilder<int>(vertex.Length / 3);
        for (int c = 0; c < vertex.Length; c += 3)
        {
            (int a, int b, int d) = (vertex[c], vertex[c + 1], vertex[c + 2]);
            if (a == b || b == d || d == a) continue;
            faces.Add((a, b, d));
            numbers.Add(c / 3 + 1);
        }
        return (faces.ToImmutable(), numbers.ToImmutable());
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Flattening;

/// <summary>The border of a disc of triangles.</summary>
internal static class MeshBorder
{
    /// <summary>Border vertices in order, the sheet on the left, from the smallest on.</summary>
    public static ImmutableArray<int> Of(TriangleMesh mesh)
    {
        // An inner edge is run once each way, so the directed edges whose reverse is missing are the border.
        var next = new Dictionary<int, int>();
        var runs = new HashSet<long>();
        foreach ((int a, int b, int c) in mesh.Faces)
        {
            runs.Add(Key(a, b));
            runs.Add(Key(b, c));
            runs.Add(Key(c, a));
        }
        foreach ((int a, int b, int c) in mesh.Faces)
        {
            if (!runs.Contains(Key(b, a))) next[a] = b;
            if (!runs.Contains(Key(c, b))) next[b] = c;
            if (!runs.Contains(Key(a, c))) next[c] = a;
        }
        int first = next.Keys.Min();
        var loop = ImmutableArray.CreateBuilder<int>(next.Count);
        for (int v = first; loop.Count == 0 || v != first; v = next[v]) loop.Add(v);
        return loop.ToImmutable();

        static long Key(int from, int to) => ((long)from << 32) | (uint)to;
    }
}

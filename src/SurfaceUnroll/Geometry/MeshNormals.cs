using System.Collections.Immutable;

namespace SurfaceUnroll.Geometry;

/// <summary>Normals of a mesh at its vertices.</summary>
internal static class MeshNormals
{
    /// <summary>Unit normal on the outside at every vertex: the mean of its faces, each weighed by its angle there (Thürmer and Wüthrich, "Computing vertex normals from polygonal facets", 1998).</summary>
    public static Vec3[] Of(ImmutableArray<Vec3> places, ImmutableArray<(int A, int B, int C)> faces)
    {
        var normals = new Vec3[places.Length];
        foreach ((int a, int b, int c) in faces)
        {
            Vec3 normal = (places[b] - places[a]).Cross(places[c] - places[a]).Unit;
            Add(a, b, c);
            Add(b, c, a);
            Add(c, a, b);

            void Add(int at, int next, int last) => normals[at] += (places[next] - places[at]).AngleTo(places[last] - places[at]) * normal;
        }
        for (int i = 0; i < normals.Length; i++) normals[i] = normals[i].Unit;
        return normals;
    }

    /// <summary>Every place moved along its outside normal, mm.</summary>
    public static ImmutableArray<Vec3> Shifted(ImmutableArray<Vec3> places, ImmutableArray<(int A, int B, int C)> faces, double distance)
    {
        if (distance == 0) return places;
        Vec3[] normals = Of(places, faces);
        return [.. places.Select((p, i) => p + distance * normals[i])];
    }
}

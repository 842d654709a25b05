using System.Collections.Immutable;

namespace SurfaceUnroll.Geometry;

/// <summary>A surface of triangles in job space.</summary>
/// <param name="Places">Vertices, mm.</param>
/// <param name="Faces">Zero-based vertex indices, counter-clockwise seen from outside.</param>
public sealed record TriangleMesh(ImmutableArray<Vec3> Places, ImmutableArray<(int A, int B, int C)> Faces);

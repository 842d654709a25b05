using System.Collections.Immutable;

namespace SurfaceUnroll.Geometry;

/// <summary>How the vertices and faces of a mesh are numbered in the file it was read from, for messages.</summary>
/// <param name="Vertices">Number from 1 of each vertex; empty if the file does not number them.</param>
/// <param name="Faces">Number from 1 of each face; several triangles have one number where the file has a polygon.</param>
public sealed record MeshNumbers(ImmutableArray<int> Vertices, ImmutableArray<int> Faces);

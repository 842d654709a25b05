using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Files.Meshes;

/// <summary>What came of reading a mesh file.</summary>
/// <param name="Mesh">The triangles, in the units of the file; null if there is any fault.</param>
/// <param name="Faults">What keeps the file from being used, in its order; empty if <paramref name="Mesh"/> is set.</param>
public sealed record MeshReading(TriangleMesh? Mesh, ImmutableArray<MeshFault> Faults)
{
    /// <summary>How the file numbers the vertices and faces of <see cref="Mesh"/>; null without one.</summary>
    public MeshNumbers? Numbers { get; init; }
}

/// <summary>One thing that keeps a mesh file from being used.</summary>
/// <param name="Code">Stable id in kebab-case, for example <c>mesh-index</c>.</param>
/// <param name="Line">From 1; 0 where it has no line.</param>
/// <param name="Message">What is wrong.</param>
/// <param name="Mend">How to mend it.</param>
public sealed record MeshFault(string Code, int Line, string Message, string Mend);

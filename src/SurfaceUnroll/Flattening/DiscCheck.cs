using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Flattening;

/// <summary>Tells whether a mesh is one disc of triangles: one piece with one border and no handles, every face turned the same way.</summary>
/// <remarks>A disc may have a slit with vertices of its own on both sides, as a tube has that was cut open. Only where a mesh is no disc are
/// vertices that lie at one place taken for a seam that was not joined.</remarks>
public static class DiscCheck
{
    /// <summary>Checks a mesh.</summary>
    /// <param name="mesh">Finite places in mm; every index is that of a vertex.</param>
    /// <param name="numbers">How the file of the mesh numbers it, for the messages; null: in order, from 1.</param>
    /// <returns>Empty if the mesh is a disc; else every kind of fault that can be told.</returns>
    public static ImmutableArray<DiscFault> Check(TriangleMesh mesh, MeshNumbers? numbers = null)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        if (mesh.Faces.IsEmpty) return [new DiscFault("mesh-no-faces", "The mesh has no faces.", "Give a surface of triangles.")];
        var words = new DiscWords(mesh, numbers);
        var faults = ImmutableArray.CreateBuilder<DiscFault>();
        faults.AddRange(FaceCheck.Check(mesh, words));
        int[] kept = FaceCheck.Whole(mesh.Faces);
        if (kept.Length == 0) return faults.ToImmutable();
        ImmutableArray<(int A, int B, int C)> faces = kept.Length == mesh.Faces.Length ? mesh.Faces : [.. kept.Select(f => mesh.Faces[f])];
        var shape = new MeshShape(mesh.Places, faces.AsSpan());
        if (Seam(mesh.Places, faces, shape, words) is { } seam)
        {
            faults.Add(seam.Fault);
            shape = seam.Welded;
            kept = [.. seam.Kept.Select(f => kept[f])];
        }
        faults.AddRange(new ShapeCheck(mesh, shape, kept, words).Check());
        return faults.ToImmutable();
    }

    /// <summary>The border of a disc.</summary>
    /// <param name="mesh">A mesh for which <see cref="Check"/> finds nothing.</param>
    /// <returns>Its vertices in order with the sheet to the left, seen from outside, from the one with the lowest index.</returns>
    public static ImmutableArray<int> Border(TriangleMesh mesh)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        MeshEdges edges = MeshEdges.Of(mesh.Places.Length, mesh.Faces.AsSpan());
        int[] next = new int[mesh.Places.Length];
        Array.Fill(next, -1);
        for (int s = 0; s < edges.Sides; s++)
        {
            if (edges.Twin(s) == MeshEdges.None) next[edges.From(s)] = edges.To(s);
        }
        int start = Array.FindIndex(next, v => v >= 0);
        var border = ImmutableArray.CreateBuilder<int>();
        for (int v = start; v >= 0 && (v != start || border.Count == 0); v = next[v]) border.Add(v);
        return border.ToImmutable();
    }

    // Welds the borders of a mesh that is no disc. It was a seam if that makes fewer pieces, or fewer borders.
    private static (DiscFault Fault, MeshShape Welded, int[] Kept)? Seam(ImmutableArray<Vec3> places, ImmutableArray<(int A, int B, int C)> faces, MeshShape shape, DiscWords words)
    {
        if (shape is { Pieces: 1, Borders.Length: <= 1, AnyEntangled: false }) return null;
        if (MeshWeld.Borders(places.AsSpan(), shape.Edges) is not { } becomes) return null;
        ImmutableArray<(int A, int B, int C)> welded = MeshWeld.Apply(faces, becomes);
        int[] kept = FaceCheck.Whole(welded);
        if (kept.Length == 0) return null;
        var joined = new MeshShape(places, [.. kept.Select(f => welded[f])]);
        bool fewerBorders = !shape.AnyEntangled && !joined.AnyEntangled && joined.Borders.Length < shape.Borders.Length;
        if (joined.Pieces > shape.Pieces || joined.Pieces == shape.Pieces && !fewerBorders) return null;
        int[] merged = [.. Enumerable.Range(0, becomes.Length).Where(v => becomes[v] != v)];
        var fault = new DiscFault("mesh-seam",
            $"The mesh is not joined along a seam: {DiscWords.Count(merged.Length, "vertex lies", "vertices lie")} at the place of another, first {words.Vertex(merged[0])}.",
            "Merge vertices that lie at one place. What is listed besides this would be left after it.");
        return (fault, joined, kept);
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Curves;

namespace SurfaceUnroll.Jobs;

/// <summary>A profile that was drawn: lines, arcs and splines of a drawing file, kept exact.</summary>
/// <param name="File">As written in the job, for messages.</param>
/// <param name="Pieces">In its own plane as (0, across, up), mm, left to right, each starting where the one before it ends; with <paramref name="Mirror"/> from the centreline out to the right.</param>
/// <param name="Mirror">The left half is the mirror image of the pieces.</param>
/// <param name="At">Placement.</param>
public sealed record DrawnSpec(string File, ImmutableArray<CurvePiece> Pieces, bool Mirror, Placement At) : CurveSpec(At);

/// <summary>The line in which a plane cuts a scan. It stands where the scan has it.</summary>
/// <param name="Scan">Triangles in job space, mm; they need not be one disc.</param>
/// <param name="Plane">The plane: that of across and up of a curve placed so.</param>
public sealed record SectionSpec(MeshSource Scan, Placement Plane) : CurveSpec(Plane)
{
    /// <summary>How far points of the scan lie off the part, root of the mean square, mm, &gt; 0.</summary>
    public double Noise { get; init; } = 0.1;

    /// <summary>Pieces of the section whose ends are no farther apart than this are one, mm.</summary>
    public double Join { get; init; } = 1;

    /// <summary>Which piece, from 1 for the longest.</summary>
    public int Pick { get; init; } = 1;

    /// <summary>It is turned round: from right to left, or a closed one the other way.</summary>
    public bool Reverse { get; init; }
}

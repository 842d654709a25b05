using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Flattening;

/// <summary>How the first blank was found.</summary>
public enum FlatteningStart
{
    /// <summary>Given by the caller, for example a sheet laid out strip by strip.</summary>
    Given,

    /// <summary>Least-squares conformal map.</summary>
    Conformal,

    /// <summary>Every vertex in the middle of its neighbours, the border on a circle: never turns a triangle over.</summary>
    Barycentric,
}

/// <summary>A mesh and its blank of least forming energy.</summary>
/// <param name="Flat">Place of each vertex on the blank, mm; counter-clockwise faces stay counter-clockwise.</param>
/// <param name="Start">How the first blank was found.</param>
/// <param name="Iterations">Newton steps on the finest mesh.</param>
/// <param name="Energy">mm².</param>
/// <param name="MaxStretch">Largest engineering stretch of a triangle from blank to part, ≥ 0, as a fraction.</param>
/// <param name="MaxShrink">Largest engineering shrink, ≥ 0, as a fraction.</param>
public sealed record FlattenedMesh(
    ImmutableArray<Vec2> Flat, FlatteningStart Start, int Iterations, double Energy, double MaxStretch, double MaxShrink);

using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Flattening;

/// <summary>How a mesh is to be flattened.</summary>
public sealed record FlatteningOptions
{
    /// <summary>Stretching and shrinking cost the same, no edge is held, and nothing is told.</summary>
    public static FlatteningOptions Default { get; } = new();

    /// <summary>What shrinking costs against stretching by as much, ≥ 1.</summary>
    public double ShrinkCost { get; init; } = 1;

    /// <summary>Vertices along each part of the border that keeps its formed length on the blank, neighbour by neighbour; no edge twice.</summary>
    public ImmutableArray<ImmutableArray<int>> Held { get; init; } = [];

    /// <summary>First blanks to try in turn, one place a vertex; the first that turns no triangle over is used.</summary>
    public ImmutableArray<ImmutableArray<Vec2>> Starts { get; init; } = [];

    /// <summary>Told the number of steps taken and the energy reached.</summary>
    public Action<int, double>? Progress { get; init; }
}

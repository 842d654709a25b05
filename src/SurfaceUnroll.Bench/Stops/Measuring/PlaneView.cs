using System.Collections.Immutable;
using SurfaceUnroll.Files.JobTexts;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Bench.Stops.Measuring;

/// <summary>A point of a drawing that can be dragged.</summary>
/// <param name="Path">Of what it changes; names the step to undo.</param>
/// <param name="At">Where it stands, mm.</param>
/// <param name="Name">What it is called.</param>
/// <param name="Move">The change that puts it at another place.</param>
public sealed record Handle(string Path, Vec2 At, string Name, Func<Vec2, JobEdit> Move)
{
    /// <summary>The change that takes it out; null where it must stay.</summary>
    public JobEdit? Remove { get; init; }

    /// <summary>A smooth curve is broken here.</summary>
    public bool Corner { get; init; }
}

/// <summary>A curve drawn in a plane: to the right and up the page, mm.</summary>
/// <param name="Title">What is seen.</param>
/// <param name="Right">What lies to the right.</param>
/// <param name="Up">What lies up the page.</param>
/// <param name="Strokes">The curve.</param>
/// <param name="Handles">Points to drag.</param>
/// <param name="Step">What places are rounded to, mm.</param>
public sealed record PlaneView(string Title, string Right, string Up, ImmutableArray<ImmutableArray<Vec2>> Strokes, ImmutableArray<Handle> Handles, double Step)
{
    /// <summary>The left half is the mirror image of the right.</summary>
    public bool Mirror { get; init; }

    /// <summary>Words beside places of the curve.</summary>
    public ImmutableArray<(Vec2 At, string Text)> Marks { get; init; } = [];

    /// <summary>The change that adds a point near a place of the curve; null where points cannot be added.</summary>
    public Func<Vec2, JobEdit?>? Add { get; init; }

    /// <summary>Below the drawing.</summary>
    public string? Says { get; init; }
}

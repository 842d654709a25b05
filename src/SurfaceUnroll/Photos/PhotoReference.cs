using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Photos;

/// <summary>What in a photo has a known size and lies in the plane of the edge.</summary>
public abstract record PhotoReference
{
    /// <summary>Where it was tapped, pixels.</summary>
    public abstract ImmutableArray<Vec2> Taps { get; }
}

/// <summary>A sheet of paper, or anything else with four straight sides at right angles.</summary>
/// <param name="Width">Bottom side as the photo shows it, mm.</param>
/// <param name="Height">Left side, mm.</param>
/// <param name="Corners">Four taps: lower left, lower right, upper right, upper left.</param>
/// <param name="Spread">Standard error of both sizes, mm.</param>
public sealed record SheetReference(double Width, double Height, ImmutableArray<Vec2> Corners, double Spread) : PhotoReference
{
    /// <inheritdoc/>
    public override ImmutableArray<Vec2> Taps => Corners;
}

/// <summary>One mark of a reference.</summary>
/// <param name="Name">As the user calls it.</param>
/// <param name="Tap">Pixels.</param>
/// <param name="Place">(across, up) on the flat, mm; null where the distances tell it.</param>
public sealed record PhotoMark(string Name, Vec2 Tap, Vec2? Place);

/// <summary>A distance between two marks.</summary>
/// <param name="From">Index of a mark.</param>
/// <param name="To">Index of another.</param>
/// <param name="Length">mm.</param>
public readonly record struct TapedDistance(int From, int To, double Length);

/// <summary>Marks with measured places, or with measured distances from each other.</summary>
/// <param name="Marks">Four or more.</param>
/// <param name="Distances">Where no mark has a place: enough to settle their shape.</param>
/// <param name="Spread">Standard error of a coordinate or of a distance, mm.</param>
public sealed record MarkReference(ImmutableArray<PhotoMark> Marks, ImmutableArray<TapedDistance> Distances, double Spread) : PhotoReference
{
    /// <inheritdoc/>
    public override ImmutableArray<Vec2> Taps => [.. Marks.Select(m => m.Tap)];

    /// <summary>Distances say where the marks are.</summary>
    public bool IsTaped => Marks.Any(m => m.Place is null);
}

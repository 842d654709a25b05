using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Photos;

/// <summary>A tap on the edge.</summary>
/// <param name="At">Pixels.</param>
/// <param name="Corner">The edge has a corner here.</param>
public readonly record struct EdgeTap(Vec2 At, bool Corner);

/// <summary>What is to be traced.</summary>
/// <param name="Taps">Two or more, from one end to the other.</param>
/// <param name="Kind">What is followed between them; null: nothing, the taps themselves are the curve.</param>
public sealed record PhotoEdge(ImmutableArray<EdgeTap> Taps, EdgeKind? Kind);

/// <summary>Where a traced curve has its across 0, up 0, and which way is up.</summary>
/// <param name="Level">Both ends stand at one height; otherwise across is that of the reference.</param>
/// <param name="Centred">Across 0 is the middle between both ends and up 0 the height of the first; otherwise those of the reference.</param>
public readonly record struct TraceFrame(bool Level, bool Centred);

/// <summary>Places of an edge in a photo, before any millimetre is known of it.</summary>
/// <param name="Stretches">From corner to corner, pixels; each with at least two places.</param>
/// <param name="Corners">The taps between them.</param>
/// <param name="Followed">Picked by the light; otherwise tapped.</param>
public sealed record PickedEdge(ImmutableArray<ImmutableArray<Vec2>> Stretches, ImmutableArray<Vec2> Corners, bool Followed)
{
    /// <summary>All places in order.</summary>
    public IEnumerable<Vec2> Picks => Stretches.SelectMany(s => s);
}

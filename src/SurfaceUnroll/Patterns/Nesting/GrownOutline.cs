using System.Collections.Immutable;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Buffer;
using NetTopologySuite.Simplify;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Patterns.Nesting;

/// <summary>An outline of few points that surrounds a piece at half the gap at least: where two of them do not overlap, the pieces are the gap apart.</summary>
internal static class GrownOutline
{
    // A cut line of thousands of points is thinned by so much, mm; pieces then lie up to twice that farther apart than the gap.
    private const double Thinning = 0.05;

    private const int QuadrantSegments = 8;

    // The buffer's round corners are polygons within the circle; this much larger, the polygon is around it.
    private static readonly double Around = 1 / Math.Cos(Math.PI / (4 * QuadrantSegments));

    /// <summary>How much wider than half the gap an outline is grown at most, mm.</summary>
    public static double Excess(double gap) => Margin(gap) - 0.5 * gap;

    /// <summary>The grown outline, counter-clockwise. Bays that close when it is grown are filled.</summary>
    /// <param name="outline">Closed cut line.</param>
    /// <param name="gap">mm.</param>
    public static ImmutableArray<Vec2> Of(ImmutableArray<Vec2> outline, double gap)
    {
        Polygon whole = Polygons.Of(outline);
        // Each point of an outline that is thinned lies within the tolerance of what is left (Douglas and Peucker 1973), so that growing by it covers the piece again.
        NetTopologySuite.Geometries.Geometry thin = TopologyPreservingSimplifier.Simplify(whole, Thinning);
        var way = new BufferParameters(QuadrantSegments);
        NetTopologySuite.Geometries.Geometry grown = BufferOp.Buffer(thin, Margin(gap), way);
        // An outline that crosses itself can lose a loop on the way; then its hull stands for it.
        if (Polygons.Parts(grown) is not [var single] || !single.Covers(whole.ExteriorRing)) single = (Polygon)BufferOp.Buffer(whole.ConvexHull(), Margin(gap), way);
        return Polygons.Outline(single);
    }

    private static double Margin(double gap) => (0.5 * gap + Thinning) * Around;
}

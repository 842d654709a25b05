using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Curves.Readings;

/// <summary>Where a reading should lie: the curves across the gap that it leaves.</summary>
/// <param name="Ways">Places along each.</param>
/// <param name="Width">Between the neighbours, mm.</param>
internal sealed record Gap(Vec2[][] Ways, double Width)
{
    /// <summary>Distance of a place from the nearer of the curves, mm.</summary>
    public double From(Vec2 place) => Ways.Min(way => Enumerable.Range(1, way.Length - 1).Min(i => Segment.Distance(place, way[i - 1], way[i])));
}

using System.Collections.Immutable;
using NetTopologySuite.Algorithm.Construct;
using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Prepared;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Patterns.Nesting;

/// <summary>Where words stand on a piece in a picture.</summary>
/// <param name="Centre">Middle of the words; where they have no room, of the largest circle inside the outline and outside its holes. mm.</param>
/// <param name="Fits">The words have room.</param>
public sealed record LabelPlace(Vec2 Centre, bool Fits)
{
    // As a share of the size of the piece: words need no more.
    private const double Tolerance = 0.005;

    // Places tried across the box and up it.
    private const int Grid = 12;

    /// <summary>The widest place of a piece, or if words have no room there the one nearest to the middle that has.</summary>
    /// <param name="outline">Closed, mm.</param>
    /// <param name="holes">Closed, mm.</param>
    /// <param name="width">Of the words, mm.</param>
    /// <param name="height">Of the words, mm.</param>
    public static LabelPlace Of(ImmutableArray<Vec2> outline, IEnumerable<ImmutableArray<Vec2>> holes, double width, double height)
    {
        Box box = Box.Around(outline);
        if (Polygons.Simple(outline) is not { } whole) return new LabelPlace(box.Centre, false);
        NetTopologySuite.Geometries.Geometry metal = Polygons.Without(whole, Polygons.Union([.. holes.Select(h => Polygons.Simple(h)).OfType<Polygon>()]));
        Point centre = new MaximumInscribedCircle(metal.IsEmpty ? whole : metal, Tolerance * Math.Max(box.Width, box.Height)).GetCenter();
        var widest = new Vec2(centre.X, centre.Y);
        IPreparedGeometry prepared = PreparedGeometryFactory.Prepare(metal);
        var half = new Vec2(0.5 * width, 0.5 * height);
        IEnumerable<Vec2> grid =
            from i in Enumerable.Range(1, Grid - 1)
            from k in Enumerable.Range(1, Grid - 1)
            let place = box.Min + new Vec2(i * box.Width / Grid, k * box.Height / Grid)
            orderby (place - box.Centre).Length
            select place;
        foreach (Vec2 place in grid.Prepend(widest))
            if (prepared.Covers(metal.Factory.ToGeometry(new Envelope(place.X - half.X, place.X + half.X, place.Y - half.Y, place.Y + half.Y)))) return new LabelPlace(place, true);
        return new LabelPlace(widest, false);
    }
}

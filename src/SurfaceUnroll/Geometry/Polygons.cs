using System.Collections.Immutable;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.OverlayNG;
using NetTopologySuite.Operation.Valid;
using NetTopologySuite.Triangulate.Polygon;

namespace SurfaceUnroll.Geometry;

/// <summary>Regions of the plane, mm: between our closed outlines, whose first point is not repeated, and the polygons of NetTopologySuite.</summary>
internal static class Polygons
{
    /// <summary>Nothing.</summary>
    public static NetTopologySuite.Geometries.Geometry Empty { get; } = new Polygon(null);

    /// <summary>The region inside an outline and outside its holes.</summary>
    public static Polygon Of(IEnumerable<Vec2> outline, IEnumerable<ImmutableArray<Vec2>>? holes = null) =>
        new(Ring(outline), [.. (holes ?? []).Select(h => Ring(h))]);

    /// <summary>The region inside an outline; null if that is no simple polygon of nonzero area.</summary>
    public static Polygon? Simple(IReadOnlyCollection<Vec2> outline) => outline.Count >= 3 && Of(outline) is var polygon && new IsValidOp(polygon).IsValid ? polygon : null;

    /// <summary>True if a closed outline is a simple polygon of nonzero area.</summary>
    public static bool IsSimple(IReadOnlyCollection<Vec2> outline) => Simple(outline) is not null;

    /// <summary>Signed area of a closed outline, mm²; positive if it runs counter-clockwise.</summary>
    public static double SignedArea(IReadOnlyList<Vec2> outline)
    {
        double sum = 0;
        for (int i = 0; i < outline.Count; i++) sum += outline[i].Cross(outline[(i + 1) % outline.Count]);
        return 0.5 * sum;
    }

    /// <summary>What is in one region or the other.</summary>
    public static NetTopologySuite.Geometries.Geometry Union(IReadOnlyCollection<NetTopologySuite.Geometries.Geometry> regions) =>
        regions.Count == 0 ? Empty : OverlayNGRobust.Union([.. regions]);

    /// <summary>What is in the first region and not in the second.</summary>
    public static NetTopologySuite.Geometries.Geometry Without(NetTopologySuite.Geometries.Geometry region, NetTopologySuite.Geometries.Geometry taken) =>
        OverlayNGRobust.Overlay(region, taken, NetTopologySuite.Operation.Overlay.SpatialFunction.Difference);

    /// <summary>What is in both regions.</summary>
    public static NetTopologySuite.Geometries.Geometry Shared(NetTopologySuite.Geometries.Geometry a, NetTopologySuite.Geometries.Geometry b) =>
        OverlayNGRobust.Overlay(a, b, NetTopologySuite.Operation.Overlay.SpatialFunction.Intersection);

    /// <summary>The polygons of a region, largest first; slivers below an area, mm², are left out.</summary>
    public static IReadOnlyList<Polygon> Parts(NetTopologySuite.Geometries.Geometry region, double least = 1e-9)
    {
        var parts = new List<Polygon>();
        for (int i = 0; i < region.NumGeometries; i++)
            if (region.GetGeometryN(i) is Polygon { IsEmpty: false } polygon && polygon.Area > least) parts.Add(polygon);
        return [.. parts.OrderByDescending(p => p.Area)];
    }

    /// <summary>Outer ring, counter-clockwise.</summary>
    public static ImmutableArray<Vec2> Outline(Polygon polygon) => Turned(Places(polygon.ExteriorRing), counterClockwise: true);

    /// <summary>Inner rings, clockwise.</summary>
    public static IEnumerable<ImmutableArray<Vec2>> Holes(Polygon polygon) => polygon.InteriorRings.Select(ring => Turned(Places(ring), counterClockwise: false));

    /// <summary>Triangles of a polygon, counter-clockwise, through its own corners only.</summary>
    public static IEnumerable<(Vec2 A, Vec2 B, Vec2 C)> Triangles(Polygon polygon)
    {
        if (polygon.NumInteriorRings == 0 && polygon.NumPoints <= 5)
        {
            ImmutableArray<Vec2> few = Outline(polygon);
            if (few.Length == 3)
            {
                yield return (few[0], few[1], few[2]);
                yield break;
            }
            // The better of both diagonals that lie inside.
            int from = Enumerable.Range(0, 2).MaxBy(k => Math.Min(Doubled(few[k], few[k + 1], few[(k + 2) % 4]), Doubled(few[k], few[(k + 2) % 4], few[(k + 3) % 4])));
            yield return (few[from], few[from + 1], few[(from + 2) % 4]);
            yield return (few[from], few[(from + 2) % 4], few[(from + 3) % 4]);
            yield break;
        }
        NetTopologySuite.Geometries.Geometry triangles = ConstrainedDelaunayTriangulator.Triangulate(polygon);
        for (int i = 0; i < triangles.NumGeometries; i++)
        {
            Coordinate[] c = triangles.GetGeometryN(i).Coordinates;
            (Vec2 a, Vec2 b, Vec2 d) = (Place(c[0]), Place(c[1]), Place(c[2]));
            yield return (b - a).Cross(d - a) >= 0 ? (a, b, d) : (a, d, b);
        }
    }

    private static double Doubled(Vec2 a, Vec2 b, Vec2 c) => (b - a).Cross(c - a);

    /// <summary>A closed outline run the way round that is asked for.</summary>
    public static ImmutableArray<Vec2> Turned(ImmutableArray<Vec2> outline, bool counterClockwise) =>
        SignedArea(outline) >= 0 == counterClockwise ? outline : [.. outline.Reverse()];

    private static LinearRing Ring(IEnumerable<Vec2> outline)
    {
        List<Coordinate> ring = [.. outline.Select(p => new Coordinate(p.X, p.Y))];
        ring.Add(ring[0].Copy());
        return new LinearRing([.. ring]);
    }

    private static ImmutableArray<Vec2> Places(LineString ring) => [.. ring.Coordinates.SkipLast(1).Select(Place)];

    private static Vec2 Place(Coordinate c) => new(c.X, c.Y);
}

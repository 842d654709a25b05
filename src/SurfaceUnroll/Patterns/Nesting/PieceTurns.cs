using System.Collections.Immutable;
using NetTopologySuite.Geometries;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Nesting;

/// <summary>The angles at which a piece may lie.</summary>
internal static class PieceTurns
{
    private const int Steps = 24;

    // Shorter edges of the hull hardly decide how a piece lies; share of the longest. And no more than so many edges, the longest first.
    private const double ShortEdge = 0.2;
    private const int MostEdges = 8;

    // Angles nearer than this are one.
    private const double Same = 1e-6;

    /// <summary>The piece at all its angles.</summary>
    /// <param name="number">Of the piece.</param>
    /// <param name="piece">Outline and grain.</param>
    /// <param name="nest">Gap and turns.</param>
    /// <param name="cell">Of the raster, mm.</param>
    public static TurnablePiece Of(int number, NestPiece piece, NestSpec nest, double cell)
    {
        ImmutableArray<Vec2> outline = Polygons.Turned(piece.Outline, counterClockwise: true), grown = GrownOutline.Of(outline, nest.Gap);
        ImmutableArray<TurnedPiece> along = All(Angles(outline, piece.Grain, nest.Turns, 0));
        ImmutableArray<TurnedPiece> across = piece.Grain is null ? along : All(Angles(outline, piece.Grain, nest.Turns, 0.5 * Math.PI));
        return new TurnablePiece(number, Polygons.SignedArea(outline), Math.Max(along[0].Width, along[0].Height), along, across);

        ImmutableArray<TurnedPiece> All(IEnumerable<double> angles) => [.. angles.Select(angle => At(angle, outline, grown, cell))];
    }

    private static TurnedPiece At(double angle, ImmutableArray<Vec2> outline, ImmutableArray<Vec2> grown, double cell)
    {
        Box box = Box.Around(outline.Select(p => p.Rotate(angle)));
        ImmutableArray<Vec2> turned = [.. grown.Select(p => p.Rotate(angle) - box.Min)];
        return new TurnedPiece(angle, -box.Min, box.Width, box.Height, turned, OutlineRaster.Of(turned, cell));
    }

    private static IEnumerable<double> Angles(ImmutableArray<Vec2> outline, Vec2? grain, NestTurns turns, double grainOfSheet)
    {
        if (grain is { } along)
        {
            double turn = grainOfSheet - Math.Atan2(along.Y, along.X);
            return [Principal(turn), Principal(turn + Math.PI)];
        }
        return turns switch
        {
            NestTurns.None => [0],
            NestTurns.Quarter => Enumerable.Range(0, 4).Select(k => k * 0.5 * Math.PI),
            _ => Distinct([.. Enumerable.Range(0, Steps).Select(k => k * 2 * Math.PI / Steps), .. HullAngles(outline)]),
        };
    }

    // The least box around a piece lies along an edge of its hull (Freeman and Shapira 1975).
    private static IEnumerable<double> HullAngles(ImmutableArray<Vec2> outline)
    {
        Coordinate[] hull = Polygons.Of(outline).ConvexHull().Coordinates;
        Vec2[] edges = [.. hull.Zip(hull.Skip(1), (a, b) => new Vec2(b.X - a.X, b.Y - a.Y)).OrderByDescending(e => e.Length)];
        return edges.Take(MostEdges).Where(e => e.Length > ShortEdge * edges[0].Length)
            .SelectMany(e => Enumerable.Range(0, 4).Select(k => Principal(k * 0.5 * Math.PI - Math.Atan2(e.Y, e.X))));
    }

    private static List<double> Distinct(IEnumerable<double> angles)
    {
        var kept = new List<double>();
        foreach (double angle in angles)
            if (!kept.Exists(k => Math.Abs(Principal(k - angle + Math.PI) - Math.PI) < Same)) kept.Add(angle);
        return kept;
    }

    // From 0 to less than a whole turn.
    private static double Principal(double angle)
    {
        double rest = angle - 2 * Math.PI * Math.Floor(angle / (2 * Math.PI));
        return rest < 2 * Math.PI ? rest : 0;
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Drawings;

/// <summary>A small picture of all tiles with the piece on them.</summary>
internal static class TileMap
{
    /// <summary>The map in a box on the page.</summary>
    /// <param name="plan">Tiles.</param>
    /// <param name="outline">Cut line, in the drawing.</param>
    /// <param name="room">Where it may stand; it is drawn as large as fits, centred.</param>
    /// <param name="filled">Tile to fill, or null.</param>
    /// <param name="labelled">Write each tile's label in it.</param>
    public static IEnumerable<PagePart> Draw(TilePlan plan, ImmutableArray<Vec2> outline, Box room, Tile? filled, bool labelled)
    {
        Box all = Box.Around(plan.Tiles.SelectMany(t => new[] { t.Window.Min, t.Window.Max }));
        double scale = Math.Min(room.Width / all.Width, room.Height / all.Height);
        Vec2 Place(Vec2 p) => room.Centre + scale * (p - all.Centre);
        // Neighbours are drawn without their overlap, edge to edge.
        double inset = 0.5 * plan.Paper.Overlap;
        foreach (Tile tile in plan.Tiles)
        {
            Box cell = new(Place(Inner(tile.Window.Min, all.Min, inset)), Place(Inner(tile.Window.Max, all.Max, -inset)));
            if (tile == filled) yield return new PageFill(Corners(cell), 0.7);
            yield return new PageLine(Pen.Fine, Corners(cell), Closed: true);
            if (tile.IsEmpty)
            {
                // Left out: crossed through.
                yield return new PageLine(Pen.Fine, [cell.Min, cell.Max]);
                yield return new PageLine(Pen.Fine, [new Vec2(cell.Min.X, cell.Max.Y), new Vec2(cell.Max.X, cell.Min.Y)]);
            }
            else if (labelled)
            {
                double height = Math.Clamp(0.16 * Math.Min(cell.Width, cell.Height), 1.2, 5);
                yield return new PageText(tile.Label, new Vec2(cell.Min.X + 0.6 * height, cell.Max.Y - 1.6 * height), height);
            }
        }
        yield return new PageLine(labelled ? Pen.Narrow : Pen.Fine, Thinned([.. outline.Select(Place)]), Closed: true);
    }

    private static Vec2 Inner(Vec2 corner, Vec2 outer, double inset) => new(
        corner.X == outer.X ? corner.X : corner.X + inset,
        corner.Y == outer.Y ? corner.Y : corner.Y + inset);

    private static ImmutableArray<Vec2> Corners(Box box) => [box.Min, new Vec2(box.Max.X, box.Min.Y), box.Max, new Vec2(box.Min.X, box.Max.Y)];

    // A twentieth of a millimetre is all that a small picture shows.
    private static ImmutableArray<Vec2> Thinned(ImmutableArray<Vec2> points)
    {
        var kept = ImmutableArray.CreateBuilder<Vec2>();
        foreach (Vec2 p in points)
            if (kept.Count == 0 || (p - kept[^1]).Length > 0.3) kept.Add(p);
        return kept.Count > 2 ? kept.ToImmutable() : points;
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Drawings;

/// <summary>A picture of all tiles with the piece on them. Neighbours are drawn without their overlap, edge to edge.</summary>
internal sealed class TileMap
{
    // Closer than this, grid lines run into one grey, and are left out, mm.
    private const double FinestGrid = 1;

    // Points of the outline closer than this are one point on a small picture, mm.
    private const double FinestStep = 0.3;

    private readonly TilePlan plan;
    private readonly Box all, room;
    private readonly double scale;

    private TileMap(TilePlan plan, Box room)
    {
        (this.plan, this.room) = (plan, room);
        all = new Box(plan.Tiles[^plan.Columns].Window.Min, plan.Tiles[plan.Columns - 1].Window.Max);
        scale = Math.Min(room.Width / all.Width, room.Height / all.Height);
    }

    /// <summary>The map in the corner of a tile's page, with that tile filled. What it draws is bounded, however many tiles there are.</summary>
    /// <param name="plan">Tiles.</param>
    /// <param name="outline">Cut line, in the drawing.</param>
    /// <param name="room">Where it may stand, on the page; it is drawn as large as fits, centred.</param>
    /// <param name="here">The tile to fill.</param>
    public static IEnumerable<PagePart> Small(TilePlan plan, ImmutableArray<Vec2> outline, Box room, Tile here)
    {
        var map = new TileMap(plan, room);
        return [new PageFill(Corners(map.Cell(here.Row, here.Column, here.Column)), 0.7), .. map.Grid(), map.Outline(outline, Pen.Fine)];
    }

    /// <summary>The large map of the first page, each tile with its label.</summary>
    /// <param name="plan">Tiles.</param>
    /// <param name="outline">Cut line, in the drawing.</param>
    /// <param name="room">Where it may stand, on the page.</param>
    public static IEnumerable<PagePart> Labelled(TilePlan plan, ImmutableArray<Vec2> outline, Box room)
    {
        var map = new TileMap(plan, room);
        return [.. map.Grid(), map.Outline(outline, Pen.Narrow), .. map.Labels()];
    }

    /// <summary>Openings and bends on the large map.</summary>
    public static IEnumerable<PagePart> Inner(TilePlan plan, Box room)
    {
        var map = new TileMap(plan, room);
        return
        [
            .. plan.Drawing.Strokes.Where(s => s.Role == Role.Cut && s.Closed).Skip(1).Select(s => map.Outline(s.Points, Pen.Fine)),
            .. plan.Drawing.Strokes.Where(s => s.Role == Role.Bend && !s.Dashed).Select(s => new PageLine(Pen.FineDashed, [.. s.Points.Select(map.Place)])),
        ];
    }

    /// <summary>Where a place of the drawing lies on the labelled map, on the page.</summary>
    public static Vec2 PlaceOf(TilePlan plan, Box room, Vec2 p) => new TileMap(plan, room).Place(p);

    private Vec2 Place(Vec2 p) => room.Centre + scale * (p - all.Centre);

    // The tiles of a row from one column to another, without the overlap to their neighbours.
    private Box Cell(int row, int first, int last)
    {
        double half = 0.5 * plan.Paper.Overlap;
        Box from = plan.Tiles[row * plan.Columns + first].Window, to = plan.Tiles[row * plan.Columns + last].Window;
        double left = from.Min.X + (first == 0 ? 0 : half), right = to.Max.X - (last == plan.Columns - 1 ? 0 : half);
        double foot = from.Min.Y + (row == plan.Rows - 1 ? 0 : half), top = from.Max.Y - (row == 0 ? 0 : half);
        return new Box(Place(new Vec2(left, foot)), Place(new Vec2(right, top)));
    }

    private IEnumerable<PagePart> Grid()
    {
        Box frame = new(Place(all.Min), Place(all.Max));
        yield return new PageLine(Pen.Fine, Corners(frame), Closed: true);
        bool fine = frame.Height < FinestGrid * plan.Rows || frame.Width < FinestGrid * plan.Columns;
        for (int column = 1; column < plan.Columns && !fine; column++)
        {
            double x = Cell(0, column, column).Min.X;
            yield return new PageLine(Pen.Fine, [new Vec2(x, frame.Min.Y), new Vec2(x, frame.Max.Y)]);
        }
        for (int row = 1; row < plan.Rows && !fine; row++)
        {
            double y = Cell(row, 0, 0).Max.Y;
            yield return new PageLine(Pen.Fine, [new Vec2(frame.Min.X, y), new Vec2(frame.Max.X, y)]);
        }
        for (int row = 0; row < plan.Rows && !fine; row++)
            foreach (PagePart cross in CrossedOut(row)) yield return cross;
    }

    // Tiles that are left out: each run of them in a row is crossed through as one.
    private IEnumerable<PagePart> CrossedOut(int row)
    {
        for (int column = 0; column < plan.Columns; column++)
        {
            int first = column;
            while (column < plan.Columns && plan.Tiles[row * plan.Columns + column].IsEmpty) column++;
            if (column == first) continue;
            Box run = Cell(row, first, column - 1);
            yield return new PageLine(Pen.Fine, [run.Min, run.Max]);
            yield return new PageLine(Pen.Fine, [new Vec2(run.Min.X, run.Max.Y), new Vec2(run.Max.X, run.Min.Y)]);
        }
    }

    // Where the cells are too small for every label, only every second, third … row and column has its own.
    private IEnumerable<PagePart> Labels()
    {
        Box cell = Cell(0, 0, 0);
        double height = Math.Clamp(0.16 * Math.Min(cell.Width, cell.Height), 1.5, 5);
        int everyColumn = (int)Math.Ceiling(PageTextWidth.Of(plan.Tiles[^1].Label + " ", height) / cell.Width), everyRow = (int)Math.Ceiling(1.6 * height / cell.Height);
        foreach (Tile tile in plan.Printed.Where(t => t.Column % everyColumn == 0 && t.Row % everyRow == 0))
        {
            Box own = Cell(tile.Row, tile.Column, tile.Column);
            double gap = Math.Clamp(0.08 * Math.Min(own.Width, own.Height), 0.3, 2);
            if (own.Min.X + gap + PageTextWidth.Of(tile.Label, height) > room.Max.X || own.Max.Y - gap - 1.3 * height < room.Min.Y) continue;
            yield return new PageText(tile.Label, new Vec2(own.Min.X + gap, own.Max.Y - gap - height), height, Halo: true);
        }
    }

    private PageLine Outline(ImmutableArray<Vec2> outline, Pen pen)
    {
        var kept = ImmutableArray.CreateBuilder<Vec2>();
        foreach (Vec2 p in outline.Select(Place))
            if (kept.Count == 0 || (p - kept[^1]).Length > FinestStep) kept.Add(p);
        return new PageLine(pen, kept.Count > 2 ? kept.ToImmutable() : [.. outline.Select(Place)], Closed: true);
    }

    private static ImmutableArray<Vec2> Corners(Box box) => [box.Min, new Vec2(box.Max.X, box.Min.Y), box.Max, new Vec2(box.Min.X, box.Max.Y)];
}

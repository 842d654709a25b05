using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Drawings;

/// <summary>One sheet of a tiled drawing.</summary>
/// <param name="Row">From the top, zero-based.</param>
/// <param name="Column">From the left, zero-based.</param>
/// <param name="Window">Part of the drawing shown, overlap included, mm in the drawing.</param>
/// <param name="IsEmpty">Nothing of the drawing falls in the window; the sheet is not printed.</param>
public sealed record Tile(int Row, int Column, Box Window, bool IsEmpty)
{
    /// <summary>Numbers of row and column: 1.1 is at the top left. Match marks begin with a letter, and have no point.</summary>
    public string Label => string.Create(CultureInfo.InvariantCulture, $"{Row + 1}.{Column + 1}");
}

/// <summary>A mark that two neighbouring tiles both carry at the same place of the drawing.</summary>
/// <param name="At">mm in the drawing.</param>
/// <param name="Letter">The same on both tiles.</param>
public readonly record struct OverlapMark(Vec2 At, string Letter);

/// <summary>How a drawing is laid over sheets of paper.</summary>
/// <param name="Paper">The paper asked for.</param>
/// <param name="Width">Width of a sheet as used, mm.</param>
/// <param name="Height">Height of a sheet as used, mm.</param>
/// <param name="Rows">Rows of sheets.</param>
/// <param name="Columns">Columns of sheets.</param>
/// <param name="Tiles">All tiles row by row, the empty ones too.</param>
/// <param name="Marks">Overlap marks.</param>
public sealed record TilePlan(
    PaperSpec Paper, double Width, double Height, int Rows, int Columns, ImmutableArray<Tile> Tiles, ImmutableArray<OverlapMark> Marks)
{
    /// <summary>Tiles that are printed.</summary>
    public IEnumerable<Tile> Printed => Tiles.Where(t => !t.IsEmpty);

    /// <summary>True if the sheet lies on its long side.</summary>
    public bool IsLandscape => Width > Height;
}

/// <summary>Lays a drawing over sheets of paper at true scale.</summary>
public static class TileLayout
{
    /// <summary>Strip along the left side of a tile for the upright check bars, mm.</summary>
    public const double SideStrip = 14;

    /// <summary>Strip along the foot of a tile for the level check bars, the map and the words, mm.</summary>
    public const double FootStrip = 30;

    // White around the drawing, so that the widest line is never cut by a window, mm.
    private const double Border = 1;

    /// <summary>The plan with the fewest printed sheets that the paper's orientation allows; portrait if equal.</summary>
    /// <param name="drawing">What is tiled.</param>
    /// <param name="paper">Paper, margin and overlap.</param>
    public static TilePlan Plan(Drawing drawing, PaperSpec paper)
    {
        TilePlan portrait = Lay(drawing, paper, paper.Size.Width, paper.Size.Height);
        if (paper.Orientation == PaperOrientation.Portrait) return portrait;
        TilePlan landscape = Lay(drawing, paper, paper.Size.Height, paper.Size.Width);
        if (paper.Orientation == PaperOrientation.Landscape) return landscape;
        return landscape.Printed.Count() < portrait.Printed.Count() ? landscape : portrait;
    }

    /// <summary>Where a tile's window lies on its sheet, mm from the lower left corner.</summary>
    public static Box WindowOnPaper(TilePlan plan)
    {
        double margin = plan.Paper.Margin;
        return new Box(new Vec2(margin + SideStrip, margin + FootStrip), new Vec2(plan.Width - margin, plan.Height - margin));
    }

    private static TilePlan Lay(Drawing drawing, PaperSpec paper, double width, double height)
    {
        TileGrid grid = TileGrid.Over(
            drawing.Bounds.Grow(Border), width - 2 * paper.Margin - SideStrip, height - 2 * paper.Margin - FootStrip, paper.Overlap);
        bool[] inked = Inked(drawing, grid);
        ImmutableArray<Tile> tiles =
        [
            .. from row in Enumerable.Range(0, grid.Rows)
               from column in Enumerable.Range(0, grid.Columns)
               select new Tile(row, column, grid.Window(row, column), !inked[row * grid.Columns + column]),
        ];
        return new TilePlan(paper, width, height, grid.Rows, grid.Columns, tiles, [.. Marks(drawing, tiles, grid.Rows, grid.Columns, paper.Overlap)]);
    }

    // Marks each tile that a stroke enters. Every segment visits only the tiles around its own box, so the cost grows with the drawing and not with
    // strokes times tiles.
    private static bool[] Inked(Drawing drawing, TileGrid grid)
    {
        var inked = new bool[grid.Rows * grid.Columns];
        foreach (Stroke stroke in drawing.Strokes)
        {
            int segments = stroke.Closed ? stroke.Points.Length : stroke.Points.Length - 1;
            for (int i = 0; i < segments; i++)
            {
                ImmutableArray<Vec2> segment = [stroke.Points[i], stroke.Points[(i + 1) % stroke.Points.Length]];
                foreach ((int row, int column) in grid.Around(Box.Around(segment)))
                {
                    int tile = row * grid.Columns + column;
                    inked[tile] = inked[tile] || !Clip.Line(segment, false, grid.Window(row, column)).IsEmpty;
                }
            }
        }
        return inked;
    }

    // Two marks in the middle of each overlap between printed neighbours, clear of the corners where four tiles meet and of the drawing's words.
    private static IEnumerable<OverlapMark> Marks(Drawing drawing, ImmutableArray<Tile> tiles, int rows, int columns, double overlap)
    {
        int count = 0;
        Box[] words = [.. drawing.Letterings.Select(text => TextOutline.Of(text).Bounds.Grow(0.5 * overlap))];
        bool Clear(Vec2 p) => !words.Any(w => w.Surrounds(p));
        foreach (Tile tile in tiles.Where(t => !t.IsEmpty))
        {
            Box w = tile.Window;
            if (tile.Column + 1 < columns && !tiles[tile.Row * columns + tile.Column + 1].IsEmpty)
            {
                double x = w.Max.X - 0.5 * overlap;
                foreach (double end in new[] { 1.0, 0.0 })
                    yield return new OverlapMark(Place(share => new Vec2(x, w.Min.Y + Math.Abs(end - share) * w.Height), Clear), Letter(count++));
            }
            if (tile.Row + 1 < rows && !tiles[(tile.Row + 1) * columns + tile.Column].IsEmpty)
            {
                double y = w.Min.Y + 0.5 * overlap;
                foreach (double end in new[] { 0.0, 1.0 })
                    yield return new OverlapMark(Place(share => new Vec2(w.Min.X + Math.Abs(end - share) * w.Width, y), Clear), Letter(count++));
            }
        }
    }

    // A quarter in from an end of the overlap, or the next best place that is clear.
    private static Vec2 Place(Func<double, Vec2> at, Func<Vec2, bool> clear)
    {
        double share = 0.25;
        foreach (double other in new[] { 0.25, 0.29, 0.21, 0.33, 0.17, 0.37 })
        {
            if (!clear(at(other))) continue;
            share = other;
            break;
        }
        return at(share);
    }

    // a … z, aa … : small letters, so that they are not taken for match marks.
    private static string Letter(int n) => (n >= 26 ? Letter(n / 26 - 1) : "") + (char)('a' + n % 26);
}

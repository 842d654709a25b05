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
    /// <summary>Row letter and column number: A1 is at the top left.</summary>
    public string Label => RowName(Row) + (Column + 1).ToString(CultureInfo.InvariantCulture);

    private static string RowName(int row) => (row >= 26 ? RowName(row / 26 - 1) : "") + (char)('A' + row % 26);
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
        double windowWidth = width - 2 * paper.Margin - SideStrip, windowHeight = height - 2 * paper.Margin - FootStrip;
        double stepX = windowWidth - paper.Overlap, stepY = windowHeight - paper.Overlap;
        Box all = drawing.Bounds.Grow(Border);
        int columns = Count(all.Width, windowWidth, stepX), rows = Count(all.Height, windowHeight, stepY);
        // The drawing stands in the middle of the sheets.
        double left = all.Centre.X - 0.5 * (windowWidth + (columns - 1) * stepX), top = all.Centre.Y + 0.5 * (windowHeight + (rows - 1) * stepY);
        bool[] inked = Inked(drawing, left, top, windowWidth, windowHeight, stepX, stepY, rows, columns);
        var tiles = ImmutableArray.CreateBuilder<Tile>(rows * columns);
        for (int row = 0; row < rows; row++)
        {
            for (int column = 0; column < columns; column++)
            {
                var corner = new Vec2(left + column * stepX, top - row * stepY - windowHeight);
                tiles.Add(new Tile(row, column, new Box(corner, corner + new Vec2(windowWidth, windowHeight)), !inked[row * columns + column]));
            }
        }
        ImmutableArray<Tile> laid = tiles.MoveToImmutable();
        return new TilePlan(paper, width, height, rows, columns, laid, [.. Marks(drawing, laid, rows, columns, paper.Overlap)]);
    }

    private static int Count(double size, double window, double step) => size <= window ? 1 : 1 + (int)Math.Ceiling((size - window) / step - 1e-9);

    // Marks each tile that a stroke enters. Every segment visits only the tiles around its own box, so the cost grows with the drawing and not with
    // strokes times tiles.
    private static bool[] Inked(Drawing drawing, double left, double top, double width, double height, double stepX, double stepY, int rows, int columns)
    {
        var inked = new bool[rows * columns];
        foreach (Stroke stroke in drawing.Strokes)
        {
            int segments = stroke.Closed ? stroke.Points.Length : stroke.Points.Length - 1;
            for (int i = 0; i < segments; i++)
            {
                ImmutableArray<Vec2> segment = [stroke.Points[i], stroke.Points[(i + 1) % stroke.Points.Length]];
                Box box = Box.Around(segment);
                int c0 = Math.Max(0, (int)Math.Floor((box.Min.X - left - width) / stepX)), c1 = Math.Min(columns - 1, (int)Math.Floor((box.Max.X - left) / stepX));
                int r0 = Math.Max(0, (int)Math.Floor((top - height - box.Max.Y) / stepY)), r1 = Math.Min(rows - 1, (int)Math.Floor((top - box.Min.Y) / stepY));
                for (int r = r0; r <= r1; r++)
                {
                    for (int c = c0; c <= c1; c++)
                    {
                        if (inked[r * columns + c]) continue;
                        var corner = new Vec2(left + c * stepX, top - r * stepY - height);
                        inked[r * columns + c] = !Clip.Line(segment, false, new Box(corner, corner + new Vec2(width, height))).IsEmpty;
                    }
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
        bool Clear(Vec2 p) => !words.Any(w => Holds(w, p));
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

    private static bool Holds(Box box, Vec2 p) => p.X > box.Min.X && p.X < box.Max.X && p.Y > box.Min.Y && p.Y < box.Max.Y;

    // a … z, aa … : small letters, so that they are not taken for tile labels.
    private static string Letter(int n) => (n >= 26 ? Letter(n / 26 - 1) : "") + (char)('a' + n % 26);
}

using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Drawings;

/// <summary>Lays a drawing over sheets of paper at true scale.</summary>
public static class TileLayout
{
    /// <summary>Strip along the left side of a tile for the upright check bars, mm.</summary>
    public const double SideStrip = 14;

    /// <summary>Strip along the foot of a tile for the level check bars, the map and the words, mm.</summary>
    public const double FootStrip = 30;

    // White around the drawing, so that the widest line is never cut by a window, mm.
    private const double Border = 1;

    // Longest piece that is cut off a roll, mm: a PDF page has no more than 14 400 points.
    private const double LongestCut = 5000;

    // So much of a roll must be spared before a pattern is turned for it, mm.
    private const double LeastSpared = 20;

    /// <summary>The plan with the fewest printed sheets that orientation and turn of the paper allow; portrait, and not turned, if equal. From a roll the one that takes the least paper.</summary>
    /// <param name="drawing">What is tiled.</param>
    /// <param name="paper">Paper, margins, overlap, turn and printer.</param>
    public static TilePlan Plan(Drawing drawing, PaperSpec paper)
    {
        bool[] ways = paper.Size.IsRoll ? [false] : paper.Orientation switch
        {
            PaperOrientation.Portrait => [false],
            PaperOrientation.Landscape => [true],
            _ => [false, true],
        };
        var search = new TileSearch(drawing, paper);
        TilePlan Laid(TileSearch.Choice choice) => Lay(drawing, paper, choice);
        if (paper.Turn is { } turn) return Laid(search.Best(ways, [turn]));
        TilePlan straight = Laid(search.Best(ways, [0]));
        if (straight.Printed.Count() == 1 && !paper.Size.IsRoll) return straight;
        // The search goes by thinned lines: what it finds is laid out whole before it is believed.
        TilePlan turned = Laid(search.Best(ways, TileSearch.WholeDegrees));
        return (turned.Cost < straight.Cost - (paper.Size.IsRoll ? LeastSpared : 0) ? turned : straight) with { CostUnturned = straight.Cost };
    }

    /// <summary>Where a tile's window lies on its sheet, mm from the lower left corner.</summary>
    public static Box WindowOnPaper(TilePlan plan) => Window(plan.Sheet.Area);

    /// <summary>The widest drawing that so many upright sheets beside each other hold, mm.</summary>
    internal static double WidthOf(PaperSpec paper, int columns)
    {
        double window = Window(PrintSheet.Of(paper, level: paper.Orientation == PaperOrientation.Landscape, LongestCut).Area).Width;
        return window + (columns - 1) * (window - paper.Overlap) - 2 * Border;
    }

    /// <summary>The sheet to lay on and the grid of its windows over a box of the drawing.</summary>
    /// <param name="box">Around the turned drawing.</param>
    /// <param name="paper">Paper.</param>
    /// <param name="level">The sheets lie on their long side.</param>
    /// <param name="shift">Where the box lies in the room that the windows leave it, from 0 at the left and the top to 1.</param>
    internal static (PrintSheet Sheet, TileGrid Grid) Over(Box box, PaperSpec paper, bool level, Vec2 shift)
    {
        box = box.Grow(Border);
        PrintSheet sheet = PrintSheet.Of(paper, level, LongestCut);
        if (paper.Size.IsRoll)
        {
            // As long as the drawing and no shorter than the upright bars need; what is fed is in proportion to what comes out.
            Box area = sheet.Area;
            double bars = (area.Width < CheckBars.RoomForLong ? CheckBars.RoomForShort : CheckBars.RoomForLong) - FootStrip, longest = area.Height - FootStrip;
            sheet = PrintSheet.Of(paper, level, LongestCut * (sheet.Height - longest + Math.Clamp(box.Height, bars, longest)) / sheet.Height);
        }
        Box window = Window(sheet.Area);
        return (sheet, TileGrid.Over(box, window.Width, window.Height, paper.Overlap, shift));
    }

    private static Box Window(Box area) => new(area.Min + new Vec2(SideStrip, FootStrip), area.Max);

    private static TilePlan Lay(Drawing drawing, PaperSpec paper, TileSearch.Choice choice)
    {
        Drawing turned = choice.Turn == 0 ? drawing : drawing.Turned(choice.Turn);
        (PrintSheet sheet, TileGrid grid) = Over(turned.Bounds, paper, choice.Level, choice.Shift);
        var inked = new bool[grid.Rows * grid.Columns];
        foreach (Stroke stroke in turned.Strokes)
            for (int i = stroke.Closed ? 0 : 1; i < stroke.Points.Length; i++) grid.Ink(stroke.Points[i == 0 ? ^1 : i - 1], stroke.Points[i], inked);
        ImmutableArray<Tile> tiles =
        [
            .. from row in Enumerable.Range(0, grid.Rows)
               from column in Enumerable.Range(0, grid.Columns)
               select new Tile(row, column, grid.Window(row, column), !inked[row * grid.Columns + column]),
        ];
        return new TilePlan(paper, sheet, grid.Rows, grid.Columns, tiles, [.. SeamMarks.Of(turned, tiles, grid.Columns, paper.Overlap)], turned, choice.Turn);
    }
}

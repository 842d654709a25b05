using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Drawings;

/// <summary>Overlapping windows in rows and columns that together cover a box, with the box in the middle.</summary>
/// <param name="Corner">Upper left corner of the whole, mm in the drawing.</param>
/// <param name="Width">Width of a window, mm.</param>
/// <param name="Height">Height of a window, mm.</param>
/// <param name="StepX">From a window to the next in its row, mm.</param>
/// <param name="StepY">From a window to the next in its column, mm.</param>
/// <param name="Rows">From the top.</param>
/// <param name="Columns">From the left.</param>
internal readonly record struct TileGrid(Vec2 Corner, double Width, double Height, double StepX, double StepY, int Rows, int Columns)
{
    /// <summary>The fewest windows that cover a box.</summary>
    public static TileGrid Over(Box box, double width, double height, double overlap)
    {
        double stepX = width - overlap, stepY = height - overlap;
        int columns = Count(box.Width, width, stepX), rows = Count(box.Height, height, stepY);
        var corner = new Vec2(box.Centre.X - 0.5 * (width + (columns - 1) * stepX), box.Centre.Y + 0.5 * (height + (rows - 1) * stepY));
        return new TileGrid(corner, width, height, stepX, stepY, rows, columns);
    }

    /// <summary>One window, mm in the drawing.</summary>
    public Box Window(int row, int column)
    {
        var min = new Vec2(Corner.X + column * StepX, Corner.Y - row * StepY - Height);
        return new Box(min, min + new Vec2(Width, Height));
    }

    /// <summary>Every window that a box may reach into.</summary>
    public IEnumerable<(int Row, int Column)> Around(Box box)
    {
        int left = Math.Max(0, (int)Math.Floor((box.Min.X - Corner.X - Width) / StepX)), right = Math.Min(Columns - 1, (int)Math.Floor((box.Max.X - Corner.X) / StepX));
        int top = Math.Max(0, (int)Math.Floor((Corner.Y - Height - box.Max.Y) / StepY)), foot = Math.Min(Rows - 1, (int)Math.Floor((Corner.Y - box.Min.Y) / StepY));
        for (int row = top; row <= foot; row++)
            for (int column = left; column <= right; column++)
                yield return (row, column);
    }

    private static int Count(double size, double window, double step) => size <= window ? 1 : 1 + (int)Math.Ceiling((size - window) / step - 1e-9);
}

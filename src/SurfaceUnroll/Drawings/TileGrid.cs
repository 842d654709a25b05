using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Drawings;

/// <summary>Overlapping windows in rows and columns that together cover a box.</summary>
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
    /// <param name="box">mm.</param>
    /// <param name="width">Of a window, mm.</param>
    /// <param name="height">Of a window, mm.</param>
    /// <param name="overlap">Of neighbours, mm.</param>
    /// <param name="shift">Where the box lies in the room that the windows leave it, from 0 at the left and the top to 1.</param>
    public static TileGrid Over(Box box, double width, double height, double overlap, Vec2 shift)
    {
        double stepX = width - overlap, stepY = height - overlap;
        int columns = Count(box.Width, width, stepX), rows = Count(box.Height, height, stepY);
        double spareX = width + (columns - 1) * stepX - box.Width, spareY = height + (rows - 1) * stepY - box.Height;
        var corner = new Vec2(box.Min.X - shift.X * spareX, box.Max.Y + shift.Y * spareY);
        return new TileGrid(corner, width, height, stepX, stepY, rows, columns);
    }

    /// <summary>One window, mm in the drawing.</summary>
    public Box Window(int row, int column)
    {
        var min = new Vec2(Corner.X + column * StepX, Corner.Y - row * StepY - Height);
        return new Box(min, min + new Vec2(Width, Height));
    }

    /// <summary>Marks every window that a segment enters, row by row. It visits the windows around its own box alone, so the cost grows with the drawing and not with strokes times tiles.</summary>
    public void Ink(Vec2 a, Vec2 b, bool[] inked)
    {
        double minX = Math.Min(a.X, b.X), maxX = Math.Max(a.X, b.X), minY = Math.Min(a.Y, b.Y), maxY = Math.Max(a.Y, b.Y);
        int left = Math.Max(0, (int)Math.Floor((minX - Corner.X - Width) / StepX)), right = Math.Min(Columns - 1, (int)Math.Floor((maxX - Corner.X) / StepX));
        int top = Math.Max(0, (int)Math.Floor((Corner.Y - Height - maxY) / StepY)), foot = Math.Min(Rows - 1, (int)Math.Floor((Corner.Y - minY) / StepY));
        for (int row = top; row <= foot; row++)
            for (int column = left; column <= right; column++)
            {
                int window = row * Columns + column;
                inked[window] = inked[window] || Clip.Meets(a, b, Window(row, column));
            }
    }

    /// <summary>True if a window holds the whole of a box.</summary>
    public bool HoldsWhole(Box box) => Holds(box.Min.X - Corner.X, box.Max.X - Corner.X, Width, StepX) && Holds(Corner.Y - box.Max.Y, Corner.Y - box.Min.Y, Height, StepY);

    private static bool Holds(double from, double to, double window, double step) => to <= Math.Max(0, Math.Floor(from / step)) * step + window;

    private static int Count(double size, double window, double step) => size <= window ? 1 : 1 + (int)Math.Ceiling((size - window) / step - 1e-9);
}

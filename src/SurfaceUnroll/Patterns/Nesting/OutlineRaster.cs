using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Patterns.Nesting;

/// <summary>Cells of one column that an outline touches.</summary>
/// <param name="Column">From the column of x = 0; may be negative.</param>
/// <param name="From">First row.</param>
/// <param name="To">Row after the last.</param>
internal readonly record struct CellSpan(int Column, int From, int To);

/// <summary>The cells of a square raster that an outline touches, no matter how little.</summary>
internal static class OutlineRaster
{
    // Cells that are reached into by less than this share of a cell are not touched: rounding of a side along a line of the raster.
    private const double Rounding = 1e-9;

    /// <summary>Spans column by column, from the bottom; the origin is a corner of four cells.</summary>
    /// <param name="outline">Closed, mm.</param>
    /// <param name="cell">Side of a cell, mm.</param>
    public static ImmutableArray<CellSpan> Of(ImmutableArray<Vec2> outline, double cell)
    {
        Box box = Box.Around(outline);
        int first = Floor(box.Min.X / cell), count = Ceiling(box.Max.X / cell) - first;
        var columns = new List<(double From, double To)>[count];
        for (int i = 0; i < count; i++) columns[i] = Inside(outline, (first + i) * cell);
        for (int i = 0; i < outline.Length; i++)
        {
            (Vec2 a, Vec2 b) = (outline[i], outline[(i + 1) % outline.Length]);
            if (a.X > b.X) (a, b) = (b, a);
            int from = Math.Max(0, (int)Math.Floor(a.X / cell) - first), to = Math.Min(count - 1, (int)Math.Floor(b.X / cell) - first);
            for (int k = from; k <= to; k++)
            {
                double left = At(a, b, (first + k) * cell), right = At(a, b, (first + k + 1) * cell);
                columns[k].Add((Math.Min(left, right), Math.Max(left, right)));
            }
        }
        return [.. columns.SelectMany((spans, i) => Merged(first + i, spans, cell))];
    }

    // What is inside at the left side of a column. Whatever else of it is inside is between there and an edge that runs through the column at the same height.
    private static List<(double From, double To)> Inside(ImmutableArray<Vec2> outline, double x)
    {
        var crossings = new List<double>();
        for (int i = 0; i < outline.Length; i++)
        {
            (Vec2 a, Vec2 b) = (outline[i], outline[(i + 1) % outline.Length]);
            if (a.X <= x != b.X <= x) crossings.Add(a.Y + (b.Y - a.Y) * (x - a.X) / (b.X - a.X));
        }
        crossings.Sort();
        var spans = new List<(double, double)>();
        for (int i = 0; i + 1 < crossings.Count; i += 2) spans.Add((crossings[i], crossings[i + 1]));
        return spans;
    }

    // Height of an edge at x, held within its ends.
    private static double At(Vec2 a, Vec2 b, double x) => x <= a.X ? a.Y : x >= b.X ? b.Y : a.Y + (b.Y - a.Y) * (x - a.X) / (b.X - a.X);

    private static IEnumerable<CellSpan> Merged(int column, List<(double From, double To)> spans, double cell)
    {
        int from = 0, to = 0;
        bool any = false;
        foreach ((int low, int high) in spans.Select(s => (Floor(s.From / cell), Math.Max(Floor(s.From / cell) + 1, Ceiling(s.To / cell)))).Order())
        {
            if (any && low <= to)
            {
                to = Math.Max(to, high);
                continue;
            }
            if (any) yield return new CellSpan(column, from, to);
            (from, to, any) = (low, high, true);
        }
        if (any) yield return new CellSpan(column, from, to);
    }

    private static int Floor(double cells) => (int)Math.Floor(cells + Rounding);

    private static int Ceiling(double cells) => (int)Math.Ceiling(cells - Rounding);
}

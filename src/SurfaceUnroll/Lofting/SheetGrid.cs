using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Lofting;

/// <summary>A formed sheet as a grid: rows run from left to right, the first along the front edge and the last along the rear one; columns run from front to
/// rear along element lines. Where curves meet or a fan has its tip, neighbouring places coincide.</summary>
/// <param name="Rows">At least two.</param>
/// <param name="Columns">At least two.</param>
/// <param name="Places">Row by row, mm.</param>
/// <param name="IsMirrored">The right half is the mirror image of the left half.</param>
public sealed record SheetGrid(int Rows, int Columns, ImmutableArray<Vec3> Places, bool IsMirrored)
{
    /// <summary>Names of the four edges, clockwise on the blank.</summary>
    public static ImmutableArray<string> EdgeNames { get; } = ["front", "right", "rear", "left"];

    /// <summary>Place at a row and a column.</summary>
    public Vec3 At(int row, int column) => Places[row * Columns + column];

    /// <summary>One row, left to right.</summary>
    public IEnumerable<Vec3> Row(int row) => Enumerable.Range(0, Columns).Select(c => At(row, c));

    /// <summary>One column, front to rear.</summary>
    public IEnumerable<Vec3> Column(int column) => Enumerable.Range(0, Rows).Select(r => At(r, column));

    /// <summary>The sheet between two columns.</summary>
    public SheetGrid BetweenColumns(int first, int last) =>
        Thinned([.. Enumerable.Range(0, Rows)], [.. Enumerable.Range(first, last - first + 1)], IsMirrored && first + last == Columns - 1);

    /// <summary>The sheet between two rows.</summary>
    public SheetGrid BetweenRows(int first, int last) =>
        Thinned([.. Enumerable.Range(first, last - first + 1)], [.. Enumerable.Range(0, Columns)], IsMirrored);

    /// <summary>So many of the lines 0 … count − 1, evenly, both ends among them; all if there are no more.</summary>
    internal static int[] Spread(int count, int most)
    {
        int kept = Math.Min(count, most);
        return [.. Enumerable.Range(0, kept).Select(i => (int)Math.Round((double)i * (count - 1) / (kept - 1)))];
    }

    /// <summary>The same sheet through some of its rows and columns.</summary>
    /// <param name="rows">Rows kept, increasing.</param>
    /// <param name="columns">Columns kept, increasing.</param>
    /// <param name="isMirrored">Whether the columns kept mirror each other too.</param>
    public SheetGrid Thinned(int[] rows, int[] columns, bool isMirrored) =>
        new(rows.Length, columns.Length, [.. rows.SelectMany(r => columns.Select(c => At(r, c)))], isMirrored);
}

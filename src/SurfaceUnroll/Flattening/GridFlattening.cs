using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Lofting;

namespace SurfaceUnroll.Flattening;

/// <summary>A grid and its blank of least forming energy.</summary>
/// <param name="Mesh">The grid's triangles.</param>
/// <param name="Blank">The blank.</param>
public sealed record FlattenedGrid(GridMesh Mesh, FlattenedMesh Blank)
{
    /// <summary>Place on the blank at a row and a column, mm.</summary>
    public Vec2 At(int row, int column) => Blank.Flat[Mesh.At(row, column)];
}

/// <summary>Flattens grids coarse to fine: the blank of every second row and column is the start for all of them.</summary>
public static class GridFlattening
{
    // A grid with at most so many cells either way is solved from scratch.
    private const int Coarsest = 8;

    /// <summary>Flattens a grid.</summary>
    /// <param name="grid">The formed sheet.</param>
    /// <param name="shrinkCost">What shrinking costs against stretching by as much, ≥ 1.</param>
    /// <param name="held">Names of the edges that keep their length: front, right, rear, left.</param>
    /// <param name="cancellation">Stops between steps.</param>
    public static FlattenedGrid Flatten(SheetGrid grid, double shrinkCost, ImmutableArray<string> held, CancellationToken cancellation = default) =>
        Flatten(GridMesh.Of(grid), new FlatteningOptions { ShrinkCost = shrinkCost }, held, cancellation);

    /// <summary>Flattens a grid that has triangles of its own.</summary>
    /// <param name="mesh">The formed sheet.</param>
    /// <param name="options">How; first blanks and held edges are not looked at.</param>
    /// <param name="cancellation">Stops between steps.</param>
    public static FlattenedGrid Flatten(GridMesh mesh, FlatteningOptions options, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        ArgumentNullException.ThrowIfNull(options);
        return Flatten(mesh, options, [], cancellation);
    }

    private static FlattenedGrid Flatten(GridMesh mesh, FlatteningOptions options, ImmutableArray<string> held, CancellationToken cancellation)
    {
        SheetGrid grid = mesh.Grid;
        options = options with { Held = Held(mesh, held), Starts = [] };
        if (grid.Rows - 1 > Coarsest || grid.Columns - 1 > Coarsest)
        {
            int[] rows = Kept(grid.Rows), columns = Kept(grid.Columns);
            bool mirrored = grid.IsMirrored && (grid.Columns - 1) % 2 == 0;
            var thinned = GridMesh.Of(grid.Thinned(rows, columns, mirrored));
            // Where a sheet lies double, every second place may fall on another; what is left is no sheet then.
            if (!IsWhole(mesh) || IsWhole(thinned))
            {
                FlattenedGrid coarse = Flatten(thinned, options with { Progress = null }, held, cancellation);
                options = options with { Starts = [Start(coarse, rows, columns, mesh, cubic: true), Start(coarse, rows, columns, mesh, cubic: false)] };
            }
        }
        return new FlattenedGrid(mesh, Flattener.Flatten(mesh.Mesh, options, cancellation));
    }

    // Every place is a vertex of its own and every cell has both its triangles.
    private static bool IsWhole(GridMesh mesh) =>
        mesh.Mesh.Places.Length == mesh.Grid.Places.Length && mesh.Mesh.Faces.Length == 2 * (mesh.Grid.Rows - 1) * (mesh.Grid.Columns - 1);

    /// <summary>The vertices along named edges of a grid, from left to right and from front to rear.</summary>
    internal static ImmutableArray<ImmutableArray<int>> Held(GridMesh mesh, ImmutableArray<string> names) =>
        [.. names.Select(mesh.Edge).Where(chain => chain.Length > 1)];

    // Every second one, and the last; all where there are few.
    private static int[] Kept(int count) =>
        count - 1 <= Coarsest ? [.. Enumerable.Range(0, count)] : [.. Enumerable.Range(0, count).Where(i => i % 2 == 0 || i == count - 1)];

    // The coarse blank at every place of the finer grid: first along each kept row, then along each column.
    private static ImmutableArray<Vec2> Start(FlattenedGrid coarse, int[] rows, int[] columns, GridMesh mesh, bool cubic)
    {
        (int fineRows, int fineColumns) = (mesh.Grid.Rows, mesh.Grid.Columns);
        var across = new Vec2[rows.Length, fineColumns];
        for (int r = 0; r < rows.Length; r++)
            for (int c = 0; c < fineColumns; c++)
                across[r, c] = Between(columns, c, k => coarse.At(r, k), cubic);
        var start = new Vec2[mesh.Mesh.Places.Length];
        for (int r = 0; r < fineRows; r++)
            for (int c = 0; c < fineColumns; c++)
                if (mesh.IsAt(r, c)) start[mesh.At(r, c)] = Between(rows, r, k => across[k, c], cubic);
        return ImmutableArray.Create(start);
    }

    // Value at a place between kept places, by the cubic through the four around it (Lagrange), or by the straight line through two.
    private static Vec2 Between(int[] kept, int at, Func<int, Vec2> value, bool cubic)
    {
        int k = Array.BinarySearch(kept, at);
        if (k >= 0) return value(k);
        k = ~k;
        int from = cubic ? Math.Clamp(k - 2, 0, Math.Max(0, kept.Length - 4)) : k - 1, to = cubic ? Math.Min(kept.Length, from + 4) : k + 1;
        Vec2 sum = Vec2.Zero;
        for (int i = from; i < to; i++)
        {
            double weight = 1;
            for (int j = from; j < to; j++)
                if (j != i) weight *= (double)(at - kept[j]) / (kept[i] - kept[j]);
            sum += weight * value(i);
        }
        return sum;
    }
}

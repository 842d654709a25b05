using SurfaceUnroll.Flattening;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Lofting;

namespace SurfaceUnroll.Fitness;

/// <summary>Lines of a grid that relief cuts run or end on.</summary>
/// <param name="Rows">Rows.</param>
/// <param name="Columns">Columns.</param>
public sealed record FixedLines(HashSet<int> Rows, HashSet<int> Columns);

/// <summary>Where a relief cut is.</summary>
/// <param name="Edge">Edge that it starts from.</param>
/// <param name="At">Distance along the formed edge from its left or front end, mm.</param>
/// <param name="Depth">Along the formed sheet, mm.</param>
public readonly record struct SlitPlace(string Edge, double At, double Depth);

/// <summary>Places relief cuts on a grid: where the job says, or where they relieve the most.</summary>
public static class SlitSearch
{
    // A cut of its own choosing is the shallowest that saves this share of the energy that the best one saves. Energy and not the largest strain: at its tip a cut always
    // leaves a small place of large strain.
    private const double Enough = 0.7;

    // Depths tried, as shares of the way to the far edge, and places tried along an edge.
    private static readonly double[] Depths = [0.15, 0.3, 0.45, 0.6];
    private const int Places = 7;

    // A line this near to where it should be, mm, is there.
    private const double Exact = 1e-6;

    // Rows and columns of the grid that choices are judged on.
    private const int Coarse = 25;

    /// <summary>Moves lines of a grid so that a cut starts and ends exactly where it should, and says which cells it passes.</summary>
    /// <param name="grid">The sheet.</param>
    /// <param name="edge">Edge that it starts from.</param>
    /// <param name="at">Distance along the edge, mm.</param>
    /// <param name="depth">mm.</param>
    /// <param name="fixedLines">Rows and columns that must stay, because other cuts run or end on them; those of this cut are added.</param>
    /// <returns>The grid with one row and one column moved, and the cut.</returns>
    public static (SheetGrid Grid, GridSlit Slit) Place(SheetGrid grid, string edge, double at, double depth, FixedLines? fixedLines = null)
    {
        bool column = edge is "front" or "rear";
        fixedLines ??= new FixedLines([], []);
        HashSet<int> sideways = column ? fixedLines.Columns : fixedLines.Rows, inward = column ? fixedLines.Rows : fixedLines.Columns;
        int lines = column ? grid.Columns : grid.Rows, steps = column ? grid.Rows : grid.Columns;
        // The line nearest to the place, moved sideways onto it.
        double[] along = PathLength.Running(Enumerable.Range(0, lines).Select(i => Cell(grid, edge, i, 0)));
        int line = Nearest(along, at, sideways);
        sideways.Add(line);
        grid = Slide(grid, column, line, along, at);
        double[] deep = PathLength.Running(Enumerable.Range(0, steps).Select(k => Cell(grid, edge, line, k)));
        bool backward = edge is "rear" or "right";
        int end = Nearest(deep, depth, backward ? [.. inward.Select(i => steps - 1 - i)] : inward);
        int cross = backward ? steps - 1 - end : end;
        inward.Add(cross);
        double[] fromStart = backward ? [.. deep.Reverse().Select(d => deep[^1] - d)] : deep;
        grid = Slide(grid, !column, cross, fromStart, backward ? deep[^1] - depth : depth);
        return (grid, new GridSlit(edge, line, end));
    }

    /// <summary>Edge, place and depth of a cut of which the job leaves some open.</summary>
    /// <param name="grid">The sheet.</param>
    /// <param name="spec">As in the job; the edge may be empty.</param>
    /// <param name="shrinkCost">What shrinking costs against stretching by as much, ≥ 1.</param>
    /// <param name="cancellation">Stops between flattenings.</param>
    public static SlitPlace Choose(SheetGrid grid, SlitSpec spec, double shrinkCost, CancellationToken cancellation = default)
    {
        if (spec is { Edge.Length: > 0, At: { } given, Depth: { } deep }) return new SlitPlace(spec.Edge, given, deep);
        SheetGrid coarse = grid.Thinned(SheetGrid.Spread(grid.Rows, Coarse), SheetGrid.Spread(grid.Columns, Coarse), false);
        FlattenedGrid uncut = GridFlattening.Flatten(coarse, shrinkCost, [], cancellation);
        var trials = new List<(string Edge, double At, double Depth, double Energy)>();
        foreach (string edge in spec.Edge.Length > 0 ? [spec.Edge] : SheetGrid.EdgeNames)
        {
            (double length, Func<double, double> reach) = Measure(grid, edge);
            double[] places = spec.At is { } at ? [at] : [.. Enumerable.Range(1, Places).Select(i => length * i / (Places + 1))];
            foreach (double place in places)
            {
                double[] depths = spec.Depth is { } depth ? [depth] : [.. Depths.Select(share => share * reach(place))];
                foreach (double d in depths)
                {
                    (SheetGrid moved, GridSlit slit) = Place(coarse, edge, place, d);
                    FlattenedGrid start = uncut with { Mesh = GridMesh.Of(moved) };
                    FlattenedMesh cut = SlitGrid.Of(start, [slit], shrinkCost, [], cancellation).Blank;
                    trials.Add((edge, place, d, cut.Energy));
                }
            }
        }
        // Of all that relieve nearly as much as the best, the shallowest; of equals the one nearest to the middle of its edge.
        double before = uncut.Blank.Energy, best = trials.Min(t => t.Energy);
        var chosen = trials.Where(t => before - t.Energy >= Enough * (before - best) - 1e-12)
            .OrderBy(t => Math.Round(t.Depth, 3)).ThenBy(t => Math.Round(Math.Abs(t.At / Measure(grid, t.Edge).Length - 0.5), 6)).First();
        return new SlitPlace(chosen.Edge, chosen.At, chosen.Depth);
    }

    /// <summary>True if a cut starts between the ends of its edge and ends short of the far one.</summary>
    public static bool Fits(SheetGrid grid, SlitPlace slit)
    {
        (double length, Func<double, double> reach) = Measure(grid, slit.Edge);
        return slit.At > 0 && slit.At < length && slit.Depth < reach(slit.At);
    }

    /// <summary>Length of an edge, and how deep a cut from a place on it may go: to the far edge.</summary>
    public static (double Length, Func<double, double> Reach) Measure(SheetGrid grid, string edge)
    {
        bool column = edge is "front" or "rear";
        int lines = column ? grid.Columns : grid.Rows, steps = column ? grid.Rows : grid.Columns;
        double[] along = PathLength.Running(Enumerable.Range(0, lines).Select(i => Cell(grid, edge, i, 0)));
        return (along[^1], at => PathLength.Running(Enumerable.Range(0, steps).Select(k => Cell(grid, edge, Nearest(along, at), k)))[^1]);
    }

    private static Vec3 Cell(SheetGrid grid, string edge, int line, int step)
    {
        (int row, int column) = new GridSlit(edge, line, step).Place(grid, step);
        return grid.At(row, column);
    }

    // Moves one column, or row, along the rows that cross it, as far as takes its end to a length.
    private static SheetGrid Slide(SheetGrid grid, bool column, int line, double[] lengths, double target)
    {
        double miss = target - lengths[line];
        int toward = miss > 0 ? line + 1 : line - 1;
        double gap = Math.Abs(lengths[toward] - lengths[line]);
        // Never so far that the cells on that side vanish: what is within a fiftieth of a cell from an edge or from another cut stands that far away.
        double share = gap > 0 ? Math.Min(0.98, Math.Abs(miss) / gap) : 0;
        if (share == 0) return grid;
        var places = grid.Places.ToBuilder();
        for (int k = 0; k < (column ? grid.Rows : grid.Columns); k++)
        {
            int at = column ? k * grid.Columns + line : line * grid.Columns + k;
            places[at] = Vec3.Lerp(grid.Places[at], column ? grid.At(k, toward) : grid.At(toward, k), share);
        }
        return grid with { Places = places.MoveToImmutable(), IsMirrored = false };
    }

    private static int Nearest(double[] lengths, double at)
    {
        int best = 0;
        for (int i = 1; i < lengths.Length; i++)
            if (Math.Abs(lengths[i] - at) < Math.Abs(lengths[best] - at)) best = i;
        return best;
    }

    // Of the inner lines that are free to move; all where none is. A line that stands there already needs no moving.
    private static int Nearest(double[] lengths, double at, HashSet<int> taken)
    {
        IEnumerable<int> inner = Enumerable.Range(1, lengths.Length - 2);
        return inner.Where(i => !taken.Contains(i) || Math.Abs(lengths[i] - at) < Exact).DefaultIfEmpty(1).MinBy(i => Math.Abs(lengths[i] - at));
    }
}

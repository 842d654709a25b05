using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Lofting;

namespace SurfaceUnroll.Patterns;

/// <summary>The columns of a flattened grid as element lines.</summary>
internal static class GridLines
{
    // A bend gentler than this radius, mm, is flat to any shop.
    private const double FlatRadius = 1e6;

    /// <summary>Every column from left to right; the drawn ones are numbered.</summary>
    /// <param name="grid">Formed.</param>
    /// <param name="places">Place on the blank at a row and a column, mm; two where a relief cut runs across the column.</param>
    /// <param name="pitch">Distance of the numbered lines that the job asks for, mm; null where it does not.</param>
    public static ImmutableArray<ElementLine> Of(SheetGrid grid, Func<int, int, ImmutableArray<Vec2>> places, double? pitch)
    {
        int last = grid.Rows - 1;
        double[] front = PathLength.Running(grid.Row(0)), rear = PathLength.Running(grid.Row(last));
        bool[] drawable = [.. Enumerable.Range(0, grid.Columns).Select(c => HasWidth(front, rear, c))];
        int[] numbers = ElementLines.Numbers(front, rear, drawable, pitch);
        return [.. Enumerable.Range(0, grid.Columns).Select(Line)];

        ElementLine Line(int c)
        {
            Vec3 normalFront = Normal(grid, 0, c), normalRear = Normal(grid, last, c);
            (double radiusFront, double signFront) = Bend(grid, 0, c, normalFront);
            (double radiusRear, double signRear) = Bend(grid, last, c, normalRear);
            ImmutableArray<Vec2> path = [.. Enumerable.Range(0, grid.Rows).SelectMany(r => places(r, c))];
            return new ElementLine(
                numbers[c], grid.At(0, c), grid.At(last, c), path[0], path[^1], front[c], rear[c], (normalFront + normalRear).Unit,
                normalFront == Vec3.Zero || normalRear == Vec3.Zero ? 0 : normalFront.AngleTo(normalRear), radiusFront, radiusRear, signFront + signRear >= 0)
            {
                FormedPath = [.. grid.Column(c)],
                Path = path,
            };
        }
    }

    /// <summary>Outside unit normal at a place; zero where neighbours coincide.</summary>
    internal static Vec3 Normal(SheetGrid grid, int row, int column)
    {
        Vec3 along = grid.At(Math.Min(row + 1, grid.Rows - 1), column) - grid.At(Math.Max(row - 1, 0), column);
        Vec3 across = grid.At(row, Math.Min(column + 1, grid.Columns - 1)) - grid.At(row, Math.Max(column - 1, 0));
        Vec3 normal = along.Cross(across);
        if (normal.Length <= 1e-9 * along.Length * Math.Max(across.Length, 1e-9))
        {
            // The tip of a fan: one row further in the sheet has width.
            int inside = row == 0 ? 1 : grid.Rows - 2;
            across = grid.At(inside, Math.Min(column + 1, grid.Columns - 1)) - grid.At(inside, Math.Max(column - 1, 0));
            normal = along.Cross(across);
        }
        return normal.Unit;
    }

    // Radius square to the line from the part of the row's curvature along the normal (Meusnier), and the sine of the angle between row and line; positive where the outside is convex.
    private static (double Radius, double Sign) Bend(SheetGrid grid, int row, int column, Vec3 normal)
    {
        if (grid.Columns < 3) return (double.PositiveInfinity, 0);
        int c = Math.Clamp(column, 1, grid.Columns - 2);
        Vec3 before = grid.At(row, c) - grid.At(row, c - 1), after = grid.At(row, c + 1) - grid.At(row, c);
        if (before.Length <= 1e-9 || after.Length <= 1e-9) return (0, 0);
        Vec3 curvature = 2 / (before.Length + after.Length) * (after.Unit - before.Unit);
        Vec3 line = grid.At(row == 0 ? 1 : row, c) - grid.At(row == 0 ? 0 : row - 1, c);
        double sine = (before + after).Unit.Cross(line.Unit).Length;
        double bend = -curvature.Dot(normal) / (sine * sine);
        return Math.Abs(bend) < 1 / FlatRadius || sine <= 0 ? (double.PositiveInfinity, 0) : (1 / Math.Abs(bend), Math.Sign(bend));
    }

    private static bool HasWidth(double[] front, double[] rear, int c)
    {
        bool Wide(int i) => i < 0 || i + 1 >= front.Length || front[i + 1] - front[i] + rear[i + 1] - rear[i] > 1e-7 * (front[^1] + rear[^1]);
        return Wide(c - 1) && Wide(c);
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Lofting;

/// <summary>A ruled sheet as a grid, with places along its element lines.</summary>
public static class RuledGrid
{
    // A cell is at most so many times as long as it is wide.
    private const double Slenderness = 6;

    // Fewest and most cells along a line. Strain varies slowly along a line that is straight.
    private const int Fewest = 8, Most = 24;

    /// <summary>A column for each element line.</summary>
    public static SheetGrid Of(RuledSheet sheet)
    {
        ImmutableArray<Station> lines = [.. sheet.Strips.Select(s => s.Left), sheet.Strips[^1].Right];
        double length = lines.Average(l => l.Ruling.Length);
        double width = 0.5 * sheet.Strips.Average(s => (s.Right.Front - s.Left.Front).Length + (s.Right.Rear - s.Left.Rear).Length);
        int cells = Math.Clamp((int)Math.Round(length / (Slenderness * width)), Fewest, Most);
        var places = ImmutableArray.CreateBuilder<Vec3>((cells + 1) * lines.Length);
        for (int r = 0; r <= cells; r++)
            foreach (Station line in lines)
                places.Add(Vec3.Lerp(line.Front, line.Rear, (double)r / cells));
        return new SheetGrid(cells + 1, lines.Length, places.MoveToImmutable(), sheet.IsMirrored);
    }
}

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

    // Largest gap between an edge and the chord from column to column, mm.
    private const double Sagitta = 0.008;

    /// <summary>A column for each element line that the edges need to be followed.</summary>
    public static SheetGrid Of(RuledSheet sheet)
    {
        ImmutableArray<Station> lines = Needed([.. sheet.Strips.Select(s => s.Left), sheet.Strips[^1].Right], sheet.IsMirrored);
        double length = lines.Average(l => l.Ruling.Length);
        double width = 0.5 * lines.Zip(lines.Skip(1), (a, b) => (b.Front - a.Front).Length + (b.Rear - a.Rear).Length).Average();
        int cells = Math.Clamp((int)Math.Round(length / (Slenderness * width)), Fewest, Most);
        var places = ImmutableArray.CreateBuilder<Vec3>((cells + 1) * lines.Length);
        for (int r = 0; r <= cells; r++)
            foreach (Station line in lines)
                places.Add(Vec3.Lerp(line.Front, line.Rear, (double)r / cells));
        return new SheetGrid(cells + 1, lines.Length, places.MoveToImmutable(), sheet.IsMirrored);
    }

    // The right half of a mirrored sheet takes the mirror images of what the left half takes.
    private static ImmutableArray<Station> Needed(ImmutableArray<Station> lines, bool mirrored)
    {
        int last = lines.Length - 1, end = mirrored ? last / 2 : last;
        List<int> kept = [0];
        for (int from = 0; from < end; from = kept[^1])
        {
            int to = from + 1;
            while (to < end && IsStraight(lines, from, to + 1)) to++;
            kept.Add(to);
        }
        IEnumerable<int> all = mirrored ? kept.Concat(kept.AsEnumerable().Reverse().Select(i => last - i)).Distinct() : kept;
        return [.. all.Select(i => lines[i])];
    }

    private static bool IsStraight(ImmutableArray<Station> lines, int from, int to)
    {
        for (int i = from + 1; i < to; i++)
        {
            if (Gap(lines[from].Front, lines[to].Front, lines[i].Front) > Sagitta || Gap(lines[from].Rear, lines[to].Rear, lines[i].Rear) > Sagitta) return false;
        }
        return true;
    }

    private static double Gap(Vec3 a, Vec3 b, Vec3 p)
    {
        Vec3 chord = (b - a).Unit;
        return (p - a - (p - a).Dot(chord) * chord).Length;
    }
}

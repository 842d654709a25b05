using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Lofting;

/// <summary>A ruled sheet as a grid, with places along its element lines.</summary>
public static class RuledGrid
{
    // A cell is at most so many times as long as it is wide.
    private const double Slenderness = 6;

    // Most places of a grid, unless its lines alone are more.
    private const int MostPlaces = 8000;

    // Fewest and most cells along a line. Strain varies slowly along a line that is straight.
    private const int Fewest = 8, Most = 24;

    // Largest gap between an edge and the chord from column to column, mm, and largest turn of the lines between columns, radians.
    private const double Sagitta = 0.008, Turn = 0.04;

    // Columns stand no farther apart than this share of both edges together.
    private const double Widest = 1.0 / 32;

    /// <summary>A column for each element line that the edges need to be followed.</summary>
    public static SheetGrid Of(RuledSheet sheet)
    {
        (Vec3 Front, Vec3 Rear)[] every = [.. sheet.Strips.Select(s => (s.Left.Front, s.Left.Rear)), (sheet.Strips[^1].Right.Front, sheet.Strips[^1].Right.Rear)];
        double widest = Widest * every.Zip(every.Skip(1), Advance).Sum();
        (Vec3 Front, Vec3 Rear)[] lines = WithTips([.. Divided(Needed(every, sheet.IsMirrored, widest), widest)]);
        double length = lines.Average(l => (l.Rear - l.Front).Length);
        double width = 0.5 * lines.Zip(lines.Skip(1), Advance).Average();
        int cells = Math.Clamp((int)Math.Round(length / (Slenderness * width)), Fewest, Math.Max(Fewest, Math.Min(Most, MostPlaces / lines.Length)));
        var places = ImmutableArray.CreateBuilder<Vec3>((cells + 1) * lines.Length);
        for (int r = 0; r <= cells; r++)
            foreach ((Vec3 front, Vec3 rear) in lines)
                places.Add(Vec3.Lerp(front, rear, (double)r / cells));
        return new SheetGrid(cells + 1, lines.Length, places.MoveToImmutable(), sheet.IsMirrored);
    }

    private static double Advance((Vec3 Front, Vec3 Rear) a, (Vec3 Front, Vec3 Rear) b) => (b.Front - a.Front).Length + (b.Rear - a.Rear).Length;

    // The right half of a mirrored sheet takes the mirror images of what the left half takes.
    private static (Vec3 Front, Vec3 Rear)[] Needed((Vec3 Front, Vec3 Rear)[] lines, bool mirrored, double widest)
    {
        int last = lines.Length - 1, end = mirrored ? last / 2 : last;
        List<int> kept = [0];
        for (int from = 0; from < end; from = kept[^1])
        {
            int to = from + 1;
            while (to < end && IsStraight(lines, from, to + 1, widest)) to++;
            kept.Add(to);
        }
        IEnumerable<int> all = mirrored ? kept.Concat(kept.AsEnumerable().Reverse().Select(i => last - i)).Distinct() : kept;
        return [.. all.Select(i => lines[i])];
    }

    private static bool IsStraight((Vec3 Front, Vec3 Rear)[] lines, int from, int to, double widest)
    {
        (Vec3 Front, Vec3 Rear) a = lines[from], b = lines[to];
        if (Advance(a, b) > widest || (a.Rear - a.Front).AngleTo(b.Rear - b.Front) > Turn) return false;
        for (int i = from + 1; i < to; i++)
            if (Gap(a.Front, b.Front, lines[i].Front) > Sagitta || Gap(a.Rear, b.Rear, lines[i].Rear) > Sagitta) return false;
        return true;
    }

    // Strips are wide where both edges are straight.
    private static IEnumerable<(Vec3 Front, Vec3 Rear)> Divided((Vec3 Front, Vec3 Rear)[] lines, double widest)
    {
        yield return lines[0];
        for (int i = 1; i < lines.Length; i++)
        {
            int parts = Math.Max(1, (int)Math.Ceiling(Advance(lines[i - 1], lines[i]) / widest - 1e-9));
            for (int k = 1; k < parts; k++)
                yield return (Vec3.Lerp(lines[i - 1].Front, lines[i].Front, (double)k / parts), Vec3.Lerp(lines[i - 1].Rear, lines[i].Rear, (double)k / parts));
            yield return lines[i];
        }
    }

    // Where an edge all but stands still its place does so: cells far narrower than long tell nothing, and on the middle of the sheet some would lie backward. From both ends to the middle, so that a mirrored sheet
    // stays so.
    private static (Vec3 Front, Vec3 Rear)[] WithTips((Vec3 Front, Vec3 Rear)[] lines)
    {
        int middle = lines.Length / 2;
        Vec3[] front = [.. lines.Select(l => l.Front)], rear = [.. lines.Select(l => l.Rear)];
        foreach (Vec3[] edge in (Vec3[][])[front, rear])
        {
            Gather(edge.AsSpan(0, middle + 1));
            Vec3[] back = [.. edge[middle..].Reverse()];
            Gather(back);
            back.AsSpan().Reverse();
            back.CopyTo(edge, middle);
        }
        return [.. front.Zip(rear)];
    }

    // The first and the last place stay where they are.
    private static void Gather(Span<Vec3> places)
    {
        int kept = 0;
        for (int i = 1; i < places.Length - 1; i++)
        {
            if ((places[i] - places[kept]).Length > RuledSheet.Tip) kept = i;
            else places[i] = places[kept];
        }
        if (kept == 0) return;
        for (int i = places.Length - 2; i >= kept && (places[i] - places[^1]).Length <= RuledSheet.Tip; i--) places[i] = places[^1];
    }

    private static double Gap(Vec3 a, Vec3 b, Vec3 p)
    {
        Vec3 chord = (b - a).Unit;
        return (p - a - (p - a).Dot(chord) * chord).Length;
    }
}

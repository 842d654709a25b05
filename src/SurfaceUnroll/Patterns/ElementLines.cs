using System.Collections.Immutable;
using SurfaceUnroll.Flattening;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Lofting;

namespace SurfaceUnroll.Patterns;

/// <summary>The element lines of a blank with lengths, radii and numbers.</summary>
public static class ElementLines
{
    // A bend of less than this (radians per strip) is rounding: the sheet is flat there.
    private const double FlatTurn = 1e-7;

    // Numbered lines stand about this far apart on the longer edge, mm, where the job does not say; then there are never fewer or more than the two counts below.
    private const double Pitch = 25;
    private const int FewestGaps = 8, MostGaps = 32;

    /// <summary>Every element line of the blank from left to right; the drawn ones are numbered.</summary>
    /// <param name="blank">The blank.</param>
    /// <param name="pitch">Distance of the numbered lines that the job asks for, mm; null: about 25 mm.</param>
    public static ImmutableArray<ElementLine> Of(Blank blank, double? pitch = null)
    {
        ImmutableArray<Strip> strips = blank.Sheet.Strips;
        StripBend[] bends = [.. strips.Select(StripBend.Of)];
        Station[] formed = [.. blank.FormedLines];
        FlatLine[] flat = [.. blank.FlatLines];
        (double[] front, double[] rear) = (Running(bends.Select(b => b.FrontLength)), Running(bends.Select(b => b.RearLength)));
        int[] numbers = Numbers(front, rear, [.. formed.Select((_, i) => HasWidth(bends, i - 1) && HasWidth(bends, i))], pitch);
        var lines = ImmutableArray.CreateBuilder<ElementLine>(formed.Length);
        for (int i = 0; i < formed.Length; i++)
        {
            StripBend bend = StripBend.At(i > 0 ? bends[i - 1] : null, i < bends.Length ? bends[i] : null, FlatTurn);
            bool isFlat = Math.Abs(bend.Turn) <= FlatTurn;
            lines.Add(new ElementLine(
                numbers[i], formed[i].Front, formed[i].Rear, flat[i].Front, flat[i].Rear, front[i], rear[i],
                Normal(strips, i), Twist(strips, i),
                isFlat ? double.PositiveInfinity : bend.FrontWidth / Math.Abs(bend.Turn),
                isFlat ? double.PositiveInfinity : bend.RearWidth / Math.Abs(bend.Turn),
                bend.Turn > 0));
        }
        return lines.MoveToImmutable();
    }

    // A strip of no width lies along an edge, and so do its lines: they would be drawn over the cut line.
    private static bool HasWidth(StripBend[] bends, int strip) =>
        strip < 0 || strip >= bends.Length || bends[strip].FrontWidth + bends[strip].RearWidth > 1e-7 * (bends[strip].FrontLength + bends[strip].RearLength);

    private static double Twist(ImmutableArray<Strip> strips, int line) => Math.Max(
        line > 0 ? strips[line - 1].Right.Twist : 0,
        line < strips.Length ? strips[line].Left.Twist : 0);

    private static Vec3 Normal(ImmutableArray<Strip> strips, int line)
    {
        Vec3 left = line > 0 ? strips[line - 1].Right.Normal : Vec3.Zero, right = line < strips.Length ? strips[line].Left.Normal : Vec3.Zero;
        return (left + right).Unit;
    }

    private static double[] Running(IEnumerable<double> lengths)
    {
        var running = new List<double> { 0 };
        foreach (double length in lengths) running.Add(running[^1] + length);
        return [.. running];
    }

    // Numbers go to the lines nearest to equal shares of both edges together, and to both end lines. The right half takes the mirror images
    // of the lines chosen on the left where the lines themselves are mirrored.
    internal static int[] Numbers(double[] front, double[] rear, bool[] drawable, double? pitch)
    {
        int count = front.Length;
        double longest = Math.Max(front[^1], rear[^1]);
        int gaps = 2 * (pitch is { } asked
            ? Math.Clamp((int)Math.Round(longest / asked / 2), 1, Math.Max(1, count / 2))
            : Math.Clamp((int)Math.Round(longest / Pitch / 2), FewestGaps / 2, MostGaps / 2));
        double[] share = [.. front.Select((s, i) => 0.5 * (Part(s, front[^1]) + Part(rear[i], rear[^1])))];
        double total = share[^1];
        double[] fromRight = [.. share.Reverse().Select(s => total - s)];
        var chosen = new SortedSet<int> { 0, count - 1 };
        for (int k = 1; k < gaps; k++)
        {
            double target = total * k / gaps;
            int at = 2 * k <= gaps ? Nearest(share, target) : count - 1 - Nearest(fromRight, total - target);
            if (drawable[at] && Math.Abs(share[at] - target) <= 0.5 * total / gaps) chosen.Add(at);
        }
        var numbers = new int[count];
        int number = 0;
        foreach (int i in chosen) numbers[i] = ++number;
        return numbers;
    }

    private static double Part(double s, double whole) => whole > 0 ? s / whole : 0;

    private static int Nearest(double[] increasing, double target)
    {
        int at = Array.BinarySearch(increasing, target);
        if (at >= 0) return at;
        at = ~at;
        if (at == 0) return 0;
        if (at == increasing.Length) return at - 1;
        return target - increasing[at - 1] <= increasing[at] - target + 1e-12 ? at - 1 : at;
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Strain;

/// <summary>What the colours, lines and ticks of the map mean.</summary>
internal static class StrainLegend
{
    /// <summary>mm.</summary>
    public const double Height = 19;

    private const double Text = 2, Swatch = 4, WidestSwatch = 15, Sample = 9;

    /// <summary>Draws the legend.</summary>
    /// <param name="room">Of <see cref="Height"/>.</param>
    /// <param name="map">For the levels.</param>
    /// <param name="longest">Length of the longest tick that can be on the map, mm; 0 if there is none.</param>
    public static IEnumerable<PagePart> Draw(Box room, StrainMap map, double longest)
    {
        (double stretch, double shrink) = StrainLevels.Largest(map);
        return [.. Scale(room, StrainLevels.Of(map)), .. Samples(room, Math.Max(stretch, shrink), longest)];
    }

    // One swatch a band, the level between two of them written under their common edge.
    private static IEnumerable<PagePart> Scale(Box room, ImmutableArray<double> levels)
    {
        if (levels.IsEmpty) yield break;
        int below = levels.Count(l => l < 0), above = levels.Length - below, highest = Math.Max(below, above);
        double end = PageTextWidth.Of("stretch ", Text), side = Math.Min(WidestSwatch, (room.Width - 2 * end) / (levels.Length + 1));
        double left = room.Min.X + end, foot = room.Max.Y - Swatch;
        for (int k = -below; k <= above; k++)
        {
            double x = left + (k + below) * side;
            ImmutableArray<Vec2> corners = [new(x, foot), new(x + side, foot), new(x + side, foot + Swatch), new(x, foot + Swatch)];
            yield return new PageFill(corners, 1) { Colour = StrainColours.Of(k < 0 ? StrainKind.Shrink : StrainKind.Stretch, Math.Abs(k), highest) };
            yield return new PageLine(Pen.Fine, corners, Closed: true);
            if (k > -below) yield return new PageText(StrainKinds.Percent(levels[k + below - 1]), new Vec2(x, foot - 1.6 * Text), Text, Anchor: Anchor.Middle);
        }
        double middle = foot + 0.5 * (Swatch - Text);
        if (below > 0) yield return new PageText("shrink", new Vec2(left - 1, middle), Text, Anchor: Anchor.Right);
        if (above > 0) yield return new PageText("stretch", new Vec2(left + side * (levels.Length + 1) + 1, middle), Text);
    }

    private static IEnumerable<PagePart> Samples(Box room, double worst, double longest)
    {
        double half = 0.5 * room.Width, upper = room.Min.Y + 5.2, lower = room.Min.Y + 1;
        foreach (PagePart part in Line(new Vec2(room.Min.X, upper), Pen.Fine, "line of equal stretch")) yield return part;
        foreach (PagePart part in Line(new Vec2(room.Min.X, lower), Pen.FineDashed, "line of equal shrink")) yield return part;
        if (longest <= 0) yield break;
        // A tick of a round strain that is not longer than a sample may be.
        double[] round = [0.2, 0.1, 0.05, 0.02, 0.01, 0.005, 0.002, 0.001, 0.0005];
        double size = round.First(s => (s <= worst && s / worst * longest <= Sample) || s == round[^1]), length = size / worst * longest;
        string percent = StrainKinds.Percent(size).TrimStart('+');
        foreach ((StrainKind kind, double y, string text) in new[] { (StrainKind.Stretch, upper, "stretched"), (StrainKind.Shrink, lower, "shrunk") })
        {
            Vec2 from = new(room.Min.X + half, y + 0.5 * Text);
            foreach (ImmutableArray<Vec2> line in StrainTicks.Lines(new StrainTick(from, from + new Vec2(length, 0), kind, size), StrainPicture.TickMark))
                yield return new PageLine(Pen.Fine, line);
            yield return new PageText($"{text} this way, {percent}", new Vec2(from.X + Sample + 2, y), Text);
        }
    }

    private static IEnumerable<PagePart> Line(Vec2 at, Pen pen, string text)
    {
        yield return new PageLine(pen, [at + new Vec2(0, 0.5 * Text), at + new Vec2(Sample, 0.5 * Text)]);
        yield return new PageText(text, at + new Vec2(Sample + 2, 0), Text);
    }
}

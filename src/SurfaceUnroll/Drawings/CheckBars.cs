using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Drawings;

/// <summary>Bars to hold a rule against: 100 mm and 4 in, level and upright.</summary>
internal static class CheckBars
{
    private const double Metric = 100, Inches = 4 * 25.4;

    // Half length of the end ticks, mm: the bar is measured from tick to tick.
    private const double Tick = 1.5;
    private const double TextHeight = 1.9;

    /// <summary>Two level bars, the metric one above, from <paramref name="left"/> to the right.</summary>
    public static IEnumerable<PagePart> Level(Vec2 left) =>
    [
        .. Bar(left, new Vec2(Metric, 0), "100 mm"),
        .. Bar(left - new Vec2(0, 6), new Vec2(Inches, 0), "4 in"),
    ];

    /// <summary>Two upright bars, the metric one on the left, from <paramref name="foot"/> upward.</summary>
    public static IEnumerable<PagePart> Upright(Vec2 foot) =>
    [
        .. Bar(foot, new Vec2(0, Metric), "100 mm"),
        .. Bar(foot + new Vec2(6, 0), new Vec2(0, Inches), "4 in"),
    ];

    private static IEnumerable<PagePart> Bar(Vec2 from, Vec2 span, string label)
    {
        Vec2 tick = Tick * span.Unit.Left;
        yield return new PageLine(Pen.Narrow, [from, from + span]);
        yield return new PageLine(Pen.Narrow, [from - tick, from + tick]);
        yield return new PageLine(Pen.Narrow, [from + span - tick, from + span + tick]);
        yield return new PageText(label, from + 0.5 * span + 0.8 * span.Unit.Left, TextHeight, Math.Atan2(span.Y, span.X), Anchor.Middle);
    }
}

using System.Globalization;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Drawings;

/// <summary>Bars to hold a rule against, level and upright: 100 mm and 4 in, on small paper half of that.</summary>
/// <param name="Metric">Length of the metric bars, mm.</param>
/// <param name="Inches">Length of the other ones, in.</param>
public readonly record struct CheckBars(double Metric, double Inches)
{
    /// <summary>The least of a printable area, both ways, in which bars and words stand clear of each other, mm: long bars need the first, short ones the second.</summary>
    public const double RoomForLong = 135, RoomForShort = 84;

    // Half length of the end ticks, mm: the bar is measured from tick to tick.
    private const double Tick = 1.5;
    private const double TextHeight = 1.9;

    /// <summary>The longest that a printable area has room for.</summary>
    public static CheckBars For(Box area) => Math.Min(area.Width, area.Height) >= RoomForLong - 1e-9 ? new CheckBars(100, 4) : new CheckBars(50, 2);

    /// <summary>What the level bars take of the width, mm.</summary>
    public double Width => Inches * 25.4 + 5.4;

    /// <summary>Two level bars, the metric one above, from <paramref name="left"/> to the right.</summary>
    public IEnumerable<PagePart> Level(Vec2 left) =>
    [
        .. Bar(left, new Vec2(Metric, 0), string.Create(CultureInfo.InvariantCulture, $"{Metric:0} mm")),
        .. Bar(left - new Vec2(0, 6), new Vec2(Inches * 25.4, 0), string.Create(CultureInfo.InvariantCulture, $"{Inches:0} in")),
    ];

    /// <summary>Two upright bars, the metric one on the left, from <paramref name="foot"/> upward.</summary>
    public IEnumerable<PagePart> Upright(Vec2 foot) =>
    [
        .. Bar(foot, new Vec2(0, Metric), string.Create(CultureInfo.InvariantCulture, $"{Metric:0} mm")),
        .. Bar(foot + new Vec2(6, 0), new Vec2(0, Inches * 25.4), string.Create(CultureInfo.InvariantCulture, $"{Inches:0} in")),
    ];

    /// <summary>One bar with its ticks and its label.</summary>
    /// <param name="from">Where it begins, mm.</param>
    /// <param name="span">To its end, mm.</param>
    /// <param name="label">Its length in words.</param>
    public static IEnumerable<PagePart> Bar(Vec2 from, Vec2 span, string label)
    {
        Vec2 tick = Tick * span.Unit.Left;
        yield return new PageLine(Pen.Narrow, [from, from + span]);
        yield return new PageLine(Pen.Narrow, [from - tick, from + tick]);
        yield return new PageLine(Pen.Narrow, [from + span - tick, from + span + tick]);
        yield return new PageText(label, from + 0.5 * span + 0.8 * span.Unit.Left, TextHeight, Math.Atan2(span.Y, span.X), Anchor.Middle);
    }
}

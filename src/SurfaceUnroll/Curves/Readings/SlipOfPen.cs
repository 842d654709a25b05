using System.Globalization;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Curves.Readings;

/// <summary>What a reading may have been before it was written down wrongly.</summary>
/// <param name="Place">(across, up), mm.</param>
/// <param name="Words">How to say it: “1105 looks like 110.5”.</param>
/// <param name="Gross">It takes its point far away: a decimal point, a sign or both values swapped.</param>
/// <param name="Decimals">Figures behind the point that the other value needs.</param>
/// <param name="Figures">Figures of the value as read, without zeros before and after: one alone tells little.</param>
internal sealed record SlipOfPen(Vec2 Place, string Words, bool Gross, int Decimals, int Figures)
{
    private static readonly double[] Factors = [0.1, 10, 0.01, 100];

    /// <summary>Every slip that gives this reading: a decimal point out of place, two digits swapped, a sign, or both values swapped.</summary>
    /// <param name="place">As read, mm.</param>
    /// <param name="unit">mm of the unit that it was written in.</param>
    public static IEnumerable<SlipOfPen> Behind(Vec2 place, double unit)
    {
        foreach ((double value, bool first) in new[] { (place.X / unit, true), (place.Y / unit, false) })
        {
            if (value == 0) continue;
            foreach ((double other, string how) in Slips(value))
                yield return new SlipOfPen(first ? place with { X = unit * other } : place with { Y = unit * other }, $"{Text(value)} looks like {Text(other)}{how}", how.Length == 0, DecimalsOf(other), FiguresOf(value));
        }
        if (place.X != place.Y) yield return new SlipOfPen(new Vec2(place.Y, place.X), $"[{Text(place.X / unit)}, {Text(place.Y / unit)}] looks like [{Text(place.Y / unit)}, {Text(place.X / unit)}], both values swapped", true, 0, 2);
    }

    private static IEnumerable<(double Value, string How)> Slips(double value)
    {
        foreach (double factor in Factors) yield return (value * factor, "");
        yield return (-value, "");
        string text = Text(Math.Abs(value));
        for (int i = 0; i + 1 < text.Length; i++)
        {
            if (!char.IsAsciiDigit(text[i]) || !char.IsAsciiDigit(text[i + 1]) || text[i] == text[i + 1]) continue;
            string swapped = text[..i] + text[i + 1] + text[i] + text[(i + 2)..];
            yield return (Math.Sign(value) * double.Parse(swapped, CultureInfo.InvariantCulture), ", two digits swapped");
        }
    }

    /// <summary>Figures behind the point that it is written with.</summary>
    public static int DecimalsOf(double value) => Text(value) is var text && text.IndexOf('.', StringComparison.Ordinal) is >= 0 and var point ? text.Length - 1 - point : 0;

    private static int FiguresOf(double value) => Text(Math.Abs(value)).Replace(".", "", StringComparison.Ordinal).Trim('0').Length;

    // To what a reading is written with; rounding takes off what the unit brought in.
    private static string Text(double value) => (Math.Round(value, 4) + 0.0).ToString("0.####", CultureInfo.InvariantCulture);
}

using System.Globalization;
using System.Xml;
using System.Xml.Linq;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Files.CurveFiles;

/// <summary>Lengths of an SVG file, and how large its drawing is.</summary>
internal static class SvgLengths
{
    // 96 pixels to the inch (CSS Values and Units, absolute lengths).
    private const double Pixel = ShopLength.MillimetresPerInch / 96;

    private static readonly char[] Between = [' ', ',', '\t', '\n', '\r'];

    // Longest first, as "q" ends nothing else.
    private static readonly (string Name, double Millimetres)[] Units =
    [
        ("px", Pixel), ("mm", 1), ("cm", 10), ("in", ShopLength.MillimetresPerInch), ("pt", ShopLength.MillimetresPerInch / 72), ("pc", ShopLength.MillimetresPerInch / 6), ("q", 0.25),
    ];

    /// <summary>From the units of the drawing to mm, y turned to up; and whether the file says how large they are (or was told).</summary>
    /// <remarks>SVG 1.1, 7.7 and 7.8. Without a width or a height a unit is a pixel, which says nothing.</remarks>
    public static (DrawingMap Map, bool Says) Viewport(XElement root, double? unit, FileFaults faults)
    {
        (double X, double Y, double Width, double Height)? box = null;
        if ((string?)root.Attribute("viewBox") is { } text)
        {
            double[] n = [.. text.Split(Between, StringSplitOptions.RemoveEmptyEntries).Select(w => double.TryParse(w, NumberStyles.Float, CultureInfo.InvariantCulture, out double v) ? v : double.NaN)];
            if (n.Length == 4 && n[2] > 0 && n[3] > 0 && n.All(double.IsFinite)) box = (n[0], n[1], n[2], n[3]);
            else faults.Add("svg-broken", ((IXmlLineInfo)root).LineNumber, $"The view box cannot be read: {FileFaults.Show(text)}.", "Write it as four numbers: left, top, width and height, the last two more than 0.");
        }
        double? width = Absolute((string?)root.Attribute("width"), out bool widthSays), height = Absolute((string?)root.Attribute("height"), out bool heightSays);
        if (unit is { } told) return (DrawingMap.Scale(told, -told).After(DrawingMap.Move(-box?.X ?? 0, -box?.Y ?? 0)), true);
        if (box is not { } b) return (DrawingMap.Scale(Pixel, -Pixel), widthSays || heightSays);
        double? sx = width / b.Width, sy = height / b.Height;
        (double x, double y) = (sx ?? sy ?? Pixel, sy ?? sx ?? Pixel);
        string fit = ((string?)root.Attribute("preserveAspectRatio") ?? "").Trim();
        (double left, double top) = (0, 0);
        if (fit != "none" && x != y)
        {
            double scale = fit.EndsWith("slice", StringComparison.Ordinal) ? Math.Max(x, y) : Math.Min(x, y);
            double Share(string axis) => fit.Contains(axis + "Min", StringComparison.Ordinal) ? 0 : fit.Contains(axis + "Max", StringComparison.Ordinal) ? 1 : 0.5;
            (left, top) = (Share("x") * b.Width * (x - scale), Share("Y") * b.Height * (y - scale));
            (x, y) = (scale, scale);
        }
        return (DrawingMap.Move(left, -top).After(DrawingMap.Scale(x, -y)).After(DrawingMap.Move(-b.X, -b.Y)), widthSays || heightSays);
    }

    /// <summary>A length in units of the drawing; the fallback where it is left out, null where it cannot be read.</summary>
    public static double? User(string? text, double fallback = 0) => string.IsNullOrWhiteSpace(text) ? fallback : Absolute(text, out _) / Pixel;

    // mm; null for shares of what is around, and where there is none. Says: it has a unit that is a true length.
    private static double? Absolute(string? text, out bool says)
    {
        says = false;
        if (text?.Trim() is not { Length: > 0 } word) return null;
        (string name, double size) = Units.FirstOrDefault(u => word.EndsWith(u.Name, StringComparison.OrdinalIgnoreCase));
        if (!double.TryParse(word[..^(name?.Length ?? 0)], NumberStyles.Float, CultureInfo.InvariantCulture, out double value) || !(Math.Abs(value) <= 1e9)) return null;
        says = name is not (null or "px");
        return value * (name is null ? Pixel : size);
    }
}

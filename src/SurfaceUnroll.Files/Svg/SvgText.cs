using System.Text;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Files.Svg;

/// <summary>Small pieces of SVG text. Drawings have y up, SVG has y down: every y is negated here and nowhere else.</summary>
internal static class SvgText
{
    /// <summary>Cap height of common sans-serif faces as a fraction of their size.</summary>
    public const double CapHeight = 0.72;

    /// <summary>Text made safe for element content and attributes; characters that XML forbids are left out.</summary>
    public static string Escape(string text)
    {
        var safe = new StringBuilder(text.Length);
        foreach (Rune rune in text.EnumerateRunes())
        {
            safe.Append(rune.Value switch
            {
                '&' => "&amp;",
                '<' => "&lt;",
                '>' => "&gt;",
                '"' => "&quot;",
                '\t' or '\n' or '\r' => " ",
                < 0x20 or 0xFFFE or 0xFFFF => "",
                _ => rune.ToString(),
            });
        }
        return safe.ToString();
    }

    /// <summary>Path data of a polyline: <c>M x,y L x,y …</c>, closed by <c>Z</c>.</summary>
    /// <param name="points">y up.</param>
    /// <param name="closed">Join the last point to the first.</param>
    /// <param name="number">How a number is written.</param>
    public static string Path(IEnumerable<Vec2> points, bool closed, Func<double, string> number)
    {
        var path = new StringBuilder();
        foreach (Vec2 p in points)
        {
            path.Append(path.Length == 0 ? 'M' : 'L').Append(number(p.X)).Append(',').Append(number(-p.Y));
        }
        if (closed) path.Append('Z');
        return path.ToString();
    }
}

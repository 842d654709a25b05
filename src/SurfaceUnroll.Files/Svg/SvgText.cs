using System.Text;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Patterns.CutPaths;

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

    /// <summary>Path data of a stroke: as that of a polyline, with <c>A r,r 0 large,sweep x,y</c> where it bends.</summary>
    public static string Path(Stroke stroke, Func<double, string> number)
    {
        if (stroke.Bulges.IsEmpty) return Path(stroke.Points, stroke.Closed, number);
        var path = new StringBuilder();
        path.Append('M').Append(number(stroke.Points[0].X)).Append(',').Append(number(-stroke.Points[0].Y));
        for (int i = 0; i < stroke.Bulges.Length; i++)
        {
            var arc = new PathArc(stroke.Points[i], stroke.Points[(i + 1) % stroke.Points.Length], stroke.Bulges[i]);
            // A closed path draws its last straight by itself.
            if (arc.Bulge == 0 && stroke.Closed && i == stroke.Bulges.Length - 1) break;
            if (arc.Bulge == 0) path.Append('L');
            else
            {
                string radius = number(Math.Abs(arc.Radius));
                // Turning left with y up is what SVG, with y down, calls the negative way.
                path.Append('A').Append(radius).Append(',').Append(radius).Append(" 0 ").Append(Math.Abs(arc.Turn) > Math.PI ? '1' : '0').Append(',').Append(arc.Bulge < 0 ? '1' : '0').Append(' ');
            }
            path.Append(number(arc.To.X)).Append(',').Append(number(-arc.To.Y));
        }
        if (stroke.Closed) path.Append('Z');
        return path.ToString();
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

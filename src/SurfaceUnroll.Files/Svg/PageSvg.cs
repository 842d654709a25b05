using System.Text;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Files.Pdf;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Files.Svg;

/// <summary>Writes a page as an SVG picture at true scale: one user unit is one millimetre, the upper left corner of the paper at the origin.</summary>
/// <remarks>Each text is told how wide it is on the printed page, so that it fits its place in whatever face the viewer has.</remarks>
public static class PageSvg
{
    /// <summary>The file.</summary>
    /// <param name="page">The page.</param>
    /// <param name="title">Title of the picture.</param>
    /// <returns>UTF-8, lines ended by a line feed.</returns>
    public static byte[] Write(Page page, string title)
    {
        string width = PlainNumber.Short(page.Width), height = PlainNumber.Short(page.Height);
        var svg = new StringBuilder();
        svg.Append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"").Append(width)
            .Append("mm\" height=\"").Append(height).Append("mm\" viewBox=\"0 0 ").Append(width).Append(' ').Append(height).Append("\">\n  <title>")
            .Append(SvgText.Escape(title)).Append("</title>\n  <rect width=\"").Append(width).Append("\" height=\"").Append(height)
            .Append("\" fill=\"#ffffff\"/>\n  <g id=\"fills\">\n");
        foreach (PageFill fill in page.Fills)
        {
            svg.Append("    <path fill=\"").Append(Colour(fill)).Append("\" d=\"").Append(Path(page, fill.Points, true));
            foreach (var loop in fill.More) svg.Append(Path(page, loop, true));
            svg.Append("\"/>\n");
        }
        svg.Append("  </g>\n  <g id=\"lines\" fill=\"none\" stroke=\"#000000\" stroke-linejoin=\"round\">\n");
        foreach (PageLine line in page.Lines) AppendLine(svg, page, line);
        svg.Append("  </g>\n  <g id=\"texts\" font-family=\"Inter, Arial, Helvetica, sans-serif\" xml:space=\"preserve\">\n");
        // White is laid behind all texts before the first of them, as on paper.
        foreach (PageText text in page.Texts.Where(t => t.Halo))
            svg.Append("    <path fill=\"#ffffff\" d=\"").Append(Path(page, PlacedText.Of(text).Halo, true)).Append("\"/>\n");
        foreach (PageText text in page.Texts.Where(t => !string.IsNullOrWhiteSpace(t.Text))) AppendText(svg, page, PlacedText.Of(text));
        return Encoding.UTF8.GetBytes(svg.Append("  </g>\n</svg>\n").ToString());
    }

    private static string Colour(PageFill fill)
    {
        if (fill.Colour is { } c) return $"#{c.Red:x2}{c.Green:x2}{c.Blue:x2}";
        int grey = (int)Math.Round(255 * Math.Clamp(fill.Grey, 0, 1));
        return $"#{grey:x2}{grey:x2}{grey:x2}";
    }

    private static string Path(Page page, IEnumerable<Vec2> points, bool closed) =>
        SvgText.Path(points.Select(p => new Vec2(p.X, p.Y - page.Height)), closed, PlainNumber.Short);

    private static void AppendLine(StringBuilder svg, Page page, PageLine line)
    {
        PenStyle style = PenStyles.Of(line.Pen);
        svg.Append("    <path stroke-width=\"").Append(PlainNumber.Short(style.Width));
        if (style.Dashes.Length > 0) svg.Append("\" stroke-dasharray=\"").AppendJoin(' ', style.Dashes.Select(PlainNumber.Short));
        else svg.Append("\" stroke-linecap=\"round");
        svg.Append("\" d=\"").Append(Path(page, line.Points, line.Closed)).Append("\"/>\n");
    }

    private static void AppendText(StringBuilder svg, Page page, PlacedText text)
    {
        string x = PlainNumber.Short(text.Start.X), y = PlainNumber.Short(page.Height - text.Start.Y);
        svg.Append("    <text x=\"").Append(x).Append("\" y=\"").Append(y).Append("\" font-size=\"").Append(PlainNumber.Short(text.Size))
            .Append("\" textLength=\"").Append(PlainNumber.Short(text.Width)).Append("\" lengthAdjust=\"spacingAndGlyphs");
        if (text.Angle != 0)
        {
            // Counter-clockwise with y up is clockwise-negative with y down.
            svg.Append("\" transform=\"rotate(").Append(PlainNumber.Short(-text.Angle * 180 / Math.PI)).Append(' ').Append(x).Append(' ').Append(y).Append(')');
        }
        svg.Append("\">").Append(SvgText.Escape(text.Printable)).Append("</text>\n");
    }
}

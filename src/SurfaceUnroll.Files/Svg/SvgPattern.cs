using System.Text;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Files.Svg;

/// <summary>Writes a drawing as SVG at 1:1: one user unit is one millimetre, one group a role.</summary>
/// <remarks>A point (x, y) of the drawing stands at (x, −y); the viewBox is shifted to it, so no transform hides the scale.</remarks>
public static class SvgPattern
{
    // Room around the cut line for its own width, and for words that stand at the edge.
    private const double Margin = 5;

    private static readonly Role[] DrawingOrder = [Role.Contour, Role.Note, Role.Centre, Role.Net, Role.Element, Role.Bend, Role.Mark, Role.Cut];

    /// <summary>The file.</summary>
    /// <returns>UTF-8, lines ended by a line feed.</returns>
    public static byte[] Write(Drawing drawing)
    {
        // Lines with room round them, and words that stand beside them.
        Box lines = drawing.Bounds.Grow(Margin), box = Box.Around([lines.Min, lines.Max, .. drawing.Letterings.SelectMany(t => TextOutline.Of(t).Corners)]);
        string width = PlainNumber.Mm(box.Width), height = PlainNumber.Mm(box.Height);
        var svg = new StringBuilder();
        svg.Append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n")
            .Append("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"").Append(width).Append("mm\" height=\"").Append(height)
            .Append("mm\" viewBox=\"").Append(PlainNumber.Mm(box.Min.X)).Append(' ').Append(PlainNumber.Mm(-box.Max.Y)).Append(' ')
            .Append(width).Append(' ').Append(height).Append("\">\n")
            .Append("  <title>").Append(SvgText.Escape(drawing.Title)).Append("</title>\n")
            .Append("  <desc>1:1, one unit is 1 mm. Cut only the group \"cut\".</desc>\n");
        foreach (Role role in DrawingOrder)
        {
            AppendGroup(svg, drawing, role);
        }
        return Encoding.UTF8.GetBytes(svg.Append("</svg>\n").ToString());
    }

    private static void AppendGroup(StringBuilder svg, Drawing drawing, Role role)
    {
        Stroke[] strokes = [.. drawing.Strokes.Where(s => s.Role == role)];
        Lettering[] letterings = [.. drawing.Letterings.Where(t => t.Role == role)];
        if (strokes.Length + letterings.Length == 0) return;
        (string id, string style) = Style(role);
        svg.Append("  <g id=\"").Append(id).Append("\" class=\"").Append(id).Append("\" fill=\"none\" ").Append(style)
            .Append(" stroke-linejoin=\"round\">\n");
        foreach (Stroke stroke in strokes)
        {
            svg.Append("    <path d=\"").Append(SvgText.Path(stroke, PlainNumber.Mm))
                .Append(stroke.Dashed ? $"\" stroke-dasharray=\"{Dashes(role)}\"/>\n" : "\"/>\n");
        }
        foreach (Lettering lettering in letterings)
        {
            AppendText(svg, lettering);
        }
        svg.Append("  </g>\n");
    }

    // Wide to narrow 2:1 (ISO 128); colours only tell the groups apart on a screen, dashes do it in black and white.
    private static (string Id, string Style) Style(Role role) => role switch
    {
        Role.Cut => ("cut", "stroke=\"#000000\" stroke-width=\"0.7\""),
        Role.Element => ("element", "stroke=\"#1f5fa8\" stroke-width=\"0.35\" stroke-dasharray=\"8 1.5 1 1.5\""),
        Role.Centre => ("centre", "stroke=\"#8a5a00\" stroke-width=\"0.35\" stroke-dasharray=\"16 2 1 2\""),
        Role.Contour => ("contour", "stroke=\"#6a4c93\" stroke-width=\"0.18\""),
        Role.Net => ("net", "stroke=\"#4a6fa5\" stroke-width=\"0.35\" stroke-dasharray=\"8.4 1.05 0.7 1.05 0.7 1.05\""),
        Role.Bend => ("bend", "stroke=\"#1b7a3d\" stroke-width=\"0.35\""),
        Role.Mark => ("mark", "stroke=\"#b3261e\" stroke-width=\"0.35\""),
        _ => ("note", "stroke=\"#555555\" stroke-width=\"0.25\""),
    };

    private static string Dashes(Role role) => role == Role.Bend ? "4.2 1.05" : "2.2 0.6";

    // The words keep the room that was found for them, whatever face they are set in.
    private static void AppendText(StringBuilder svg, Lettering text)
    {
        string x = PlainNumber.Mm(text.At.X), y = PlainNumber.Mm(-text.At.Y);
        string anchor = text.Anchor switch { Anchor.Middle => "middle", Anchor.Right => "end", _ => "start" };
        svg.Append("    <text x=\"").Append(x).Append("\" y=\"").Append(y)
            .Append("\" font-family=\"sans-serif\" font-size=\"").Append(PlainNumber.Short(text.Height / SvgText.CapHeight))
            .Append("\" textLength=\"").Append(PlainNumber.Short(PageTextWidth.Of(text.Text, text.Height))).Append("\" lengthAdjust=\"spacingAndGlyphs")
            .Append("\" text-anchor=\"").Append(anchor).Append("\" fill=\"#333333\" stroke=\"none\"");
        if (text.Angle != 0)
        {
            // Counter-clockwise with y up is clockwise-negative with y down.
            svg.Append(" transform=\"rotate(").Append(PlainNumber.Short(-text.Angle * 180 / Math.PI)).Append(' ').Append(x).Append(' ')
                .Append(y).Append(")\"");
        }
        svg.Append('>').Append(SvgText.Escape(text.Text)).Append("</text>\n");
    }
}

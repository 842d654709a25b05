using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Files.Pdf;

/// <summary>Everything on a page but the letters: fills, lines, and the white behind texts.</summary>
internal static class PageDrawing
{
    /// <summary>Content stream of a page.</summary>
    /// <remarks>
    /// The units are scaled once from points to mm (72/25.4 to eight places: under 1 nm over a metre). Joins are round,
    /// so that a sharp corner does not reach out of the cut; so are the ends of continuous lines, but not those of dashes, or a dot would be a dash.
    /// </remarks>
    public static ContentBuffer Of(Page page)
    {
        var content = new ContentBuffer();
        content.Raw("q\n2.83464567 0 0 2.83464567 0 0 cm\n1 j\n0 G\n"u8);
        foreach (PageFill fill in page.Fills)
        {
            if (fill.Colour is { } colour) content.Number(colour.Red / 255.0).Number(colour.Green / 255.0).Number(colour.Blue / 255.0).Raw("rg\n"u8);
            else content.Number(Math.Clamp(fill.Grey, 0, 1)).Raw("g\n"u8);
            content.Path(fill.Points.AsSpan());
            foreach (ImmutableArray<Vec2> loop in fill.More) content.Path(loop.AsSpan());
            content.Raw("f\n"u8);
        }
        Pen? current = null;
        foreach (PageLine line in page.Lines)
        {
            if (line.Pen != current) Select(content, PenStyles.Of(line.Pen));
            current = line.Pen;
            content.Path(line.Points.AsSpan()).Raw(line.Closed ? "s\n"u8 : "S\n"u8);
        }
        content.Raw("1 g\n"u8);
        foreach (PageText text in page.Texts.Where(t => t.Halo)) content.Path(PlacedText.Of(text).Halo).Raw("f\n"u8);
        return content.Raw("Q\n"u8);
    }

    private static void Select(ContentBuffer content, PenStyle style)
    {
        content.Number(style.Width).Raw("w\n["u8);
        foreach (double length in style.Dashes) content.Number(length);
        content.Raw("] 0 d\n"u8).Raw(style.Dashes.Length == 0 ? "1 J\n"u8 : "0 J\n"u8);
    }
}

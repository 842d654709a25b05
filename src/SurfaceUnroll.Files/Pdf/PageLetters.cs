using PdfSharp.Drawing;
using PdfSharp.Pdf;
using SurfaceUnroll.Drawings;

namespace SurfaceUnroll.Files.Pdf;

/// <summary>The letters of the pages of one document. They are set by PDFsharp, which also embeds what is used of the font.</summary>
internal sealed class PageLetters
{
    private const double PointsPerMillimetre = 72 / 25.4;

    private static readonly XPdfFontOptions Options = new(PdfFontEncoding.Unicode, PdfFontEmbedding.TryComputeSubset);

    private readonly Dictionary<double, XFont> _fonts = [];

    /// <summary>Adds the letters of a page over what is on it.</summary>
    public void Draw(PdfPage target, Page page)
    {
        if (page.Texts.IsEmpty) return;
        using XGraphics graphics = XGraphics.FromPdfPage(target, XGraphicsPdfPageOptions.Append);
        graphics.ScaleTransform(PointsPerMillimetre);
        foreach (PageText text in page.Texts) Draw(graphics, page.Height, PlacedText.Of(text));
    }

    private void Draw(XGraphics graphics, double pageHeight, PlacedText text)
    {
        if (string.IsNullOrWhiteSpace(text.Printable)) return;
        XGraphicsState state = graphics.Save();
        // This surface counts y downwards from the upper edge, and turns clockwise.
        graphics.TranslateTransform(text.Start.X, pageHeight - text.Start.Y);
        if (text.Angle != 0) graphics.RotateTransform(-text.Angle * 180 / Math.PI);
        graphics.DrawString(text.Printable, FontOf(text.Size), XBrushes.Black, 0, 0, XStringFormats.BaseLineLeft);
        graphics.Restore(state);
    }

    private XFont FontOf(double size)
    {
        if (!_fonts.TryGetValue(size, out XFont? font))
            _fonts[size] = font = new XFont(InterFontResolver.Family, size, XFontStyleEx.Regular, Options);
        return font;
    }
}

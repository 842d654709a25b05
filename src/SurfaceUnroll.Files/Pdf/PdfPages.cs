using System.Security.Cryptography;
using System.Text;
using PdfSharp.Drawing;
using PdfSharp.Pdf;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Files.Pdf;

/// <summary>Writes pages as a PDF at true scale. It translates pens to line styles and decides nothing else.</summary>
public static class PdfPages
{
    private const double PointsPerMillimetre = 72 / 25.4;

    // Widths after ISO 128 (wide to narrow 2 : 1), mm; dashes after ISO 128-20 in widths: long dash 24, short dash 6, gap 3, dot 0.5.
    private static readonly Dictionary<Pen, XPen> Pens = new()
    {
        [Pen.Wide] = Line(0.7),
        [Pen.Narrow] = Line(0.35),
        [Pen.Fine] = Line(0.18),
        [Pen.Chain] = Line(0.35, 12, 3, 0.5, 3),
        [Pen.LongChain] = Line(0.35, 24, 3, 0.5, 3),
    };

    /// <summary>The document. The same pages give the same bytes.</summary>
    /// <param name="pages">At least one, mm.</param>
    /// <param name="title">Title of the document.</param>
    /// <returns>PDF with print scaling off (ISO 32000-1, table 150), so that a print dialog offers actual size first.</returns>
    public static byte[] Write(IReadOnlyList<Page> pages, string title)
    {
        using var document = new PdfDocument();
        document.Info.Title = title;
        document.Info.Creator = "SurfaceUnroll";
        document.ViewerPreferences.Elements.SetName("/PrintScaling", "/None");
        foreach (Page page in pages) Draw(document.AddPage(), page);
        var day = new DateTime(2000, 1, 1, 0, 0, 0, DateTimeKind.Utc);
        document.Info.CreationDate = day;
        document.Info.ModificationDate = day;
        using var stream = new MemoryStream();
        document.Save(stream, closeStream: false);
        byte[] file = stream.ToArray();
        FixedIdentity.Write(file, SHA256.HashData(Encoding.UTF8.GetBytes(Words(pages, title))));
        return file;
    }

    // What the identity of the document follows from.
    private static string Words(IReadOnlyList<Page> pages, string title)
    {
        var words = new StringBuilder(title);
        foreach (Page page in pages)
        {
            words.Append(System.Globalization.CultureInfo.InvariantCulture, $"|{page.Width}x{page.Height}");
            foreach (PageLine line in page.Lines) words.Append(System.Globalization.CultureInfo.InvariantCulture, $"|{line.Points.Length}{line.Points[0]}{line.Points[^1]}");
            foreach (PageText text in page.Texts) words.Append(System.Globalization.CultureInfo.InvariantCulture, $"|{text.Text}{text.At}");
        }
        return words.ToString();
    }

    private static void Draw(PdfPage sheet, Page page)
    {
        // A file keeps four decimals of a point. Rounded down, a sheet is never a hair larger than the paper, which would make a renderer add a dot.
        sheet.Width = XUnit.FromPoint(Math.Floor(page.Width * PointsPerMillimetre * 1e4) / 1e4);
        sheet.Height = XUnit.FromPoint(Math.Floor(page.Height * PointsPerMillimetre * 1e4) / 1e4);
        using XGraphics graphics = XGraphics.FromPdfPage(sheet);
        graphics.ScaleTransform(PointsPerMillimetre);
        foreach (PageFill fill in page.Fills)
            graphics.DrawPolygon(new XSolidBrush(XColor.FromGrayScale(fill.Grey)), [.. fill.Points.Select(p => At(page, p))], XFillMode.Winding);
        foreach (PageLine line in page.Lines)
        {
            XPoint[] points = [.. line.Points.Select(p => At(page, p))];
            if (line.Closed) graphics.DrawPolygon(Pens[line.Pen], points); else graphics.DrawLines(Pens[line.Pen], points);
        }
        var fonts = new Dictionary<double, XFont>();
        foreach (PageText text in page.Texts) Draw(graphics, page, text, fonts);
    }

    private static void Draw(XGraphics graphics, Page page, PageText text, Dictionary<double, XFont> fonts)
    {
        if (!fonts.TryGetValue(text.Height, out XFont? font)) fonts[text.Height] = font = PatternFont.At(text.Height);
        double width = text.Anchor == Anchor.Left && !text.Halo ? 0 : graphics.MeasureString(text.Text, font).Width;
        double start = text.Anchor switch { Anchor.Middle => -0.5 * width, Anchor.Right => -width, _ => 0 };
        XGraphicsState state = graphics.Save();
        XPoint at = At(page, text.At);
        graphics.TranslateTransform(at.X, at.Y);
        if (text.Angle != 0) graphics.RotateTransform(-text.Angle * 180 / Math.PI);
        if (text.Halo)
            graphics.DrawRectangle(XBrushes.White, start - 0.2 * text.Height, -1.15 * text.Height, width + 0.4 * text.Height, 1.4 * text.Height);
        graphics.DrawString(text.Text, font, XBrushes.Black, start, 0);
        graphics.Restore(state);
    }

    // The page's y runs up, PDFsharp's down.
    private static XPoint At(Page page, Vec2 p) => new(p.X, page.Height - p.Y);

    private static XPen Line(double width, params double[] dashes)
    {
        var pen = new XPen(XColors.Black, width) { LineJoin = XLineJoin.Round, LineCap = dashes.Length == 0 ? XLineCap.Round : XLineCap.Flat };
        if (dashes.Length > 0) pen.DashPattern = dashes;
        return pen;
    }
}

using System.Globalization;
using System.IO.Compression;
using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.Pdf.Advanced;
using SurfaceUnroll.Drawings;

namespace SurfaceUnroll.Files.Pdf;

/// <summary>Writes pages as a PDF document at true scale.</summary>
/// <remarks>
/// The document asks the viewer not to scale when it prints. The same pages give the same bytes: the date is fixed, and what makes a PDF
/// unique (its IDs and the tag of its font subset) comes from a digest of the pages.
/// </remarks>
public static class PdfPages
{
    /// <summary>A date that does not pretend to say when.</summary>
    private static readonly DateTime FixedDate = new(2000, 1, 1, 0, 0, 0, DateTimeKind.Utc);

    /// <summary>Writes a document.</summary>
    /// <param name="pages">At least one; each becomes one page of its own size, mm.</param>
    /// <param name="title">Title of the document, shown by viewers.</param>
    /// <returns>The whole file.</returns>
    /// <remarks>Characters that the font lacks are printed as question marks.</remarks>
    public static byte[] Write(IReadOnlyList<Page> pages, string title)
    {
        ArgumentNullException.ThrowIfNull(pages);
        ArgumentOutOfRangeException.ThrowIfZero(pages.Count, nameof(pages));
        InterFontResolver.Install();
        using var document = new PdfDocument();
        Describe(document, title);
        var letters = new PageLetters();
        foreach (Page page in pages) Draw(document.AddPage(), page, letters);
        using var stream = new MemoryStream();
        document.Save(stream, closeStream: false);
        byte[] file = stream.ToArray();
        FixedIdentity.Write(file, PageDigest.Of(pages, title));
        return file;
    }

    private static void Describe(PdfDocument document, string title)
    {
        // PDFsharp leaves out the checksum that ends a compressed stream, which strict readers miss: streams are compressed here.
        document.Options.NoCompression = true;
        document.Options.CompressContentStreams = false;
        document.Info.Title = title;
        document.Info.Creator = "SurfaceUnroll";
        document.Info.CreationDate = FixedDate;
        document.Info.ModificationDate = FixedDate;
        document.ViewerPreferences.Elements.SetName("/PrintScaling", "/None");
        document.ViewerPreferences.DisplayDocTitle = true;
    }

    private static void Draw(PdfPage target, Page page, PageLetters letters)
    {
        target.Width = XUnit.FromMillimeter(page.Width);
        target.Height = XUnit.FromMillimeter(page.Height);
        target.Contents.AppendContent().CreateStream(PageDrawing.Of(page).Bytes.ToArray());
        letters.Draw(target, page);
        foreach (PdfContent content in target.Contents) Compress(content);
        target.Elements["/MediaBox"] = new PdfLiteral(string.Create(
            CultureInfo.InvariantCulture, $"[0 0 {BoxSide(page.Width):0.####} {BoxSide(page.Height):0.####}]"));
    }

    /// <summary>
    /// Points to four places, where PDFsharp itself keeps three; rounded down, since a page that is larger than its paper by a hair makes
    /// programs that turn it into dots add a row. What is added first keeps whole points whole.
    /// </summary>
    private static double BoxSide(double millimetres) => Math.Floor((millimetres * 72 / 25.4 * 1e4) + 1e-6) / 1e4;

    private static void Compress(PdfContent content)
    {
        using var packed = new MemoryStream();
        using (var packer = new ZLibStream(packed, CompressionLevel.Fastest)) packer.Write(content.Stream.Value);
        content.Stream.Value = packed.ToArray();
        content.Elements.SetName("/Filter", "/FlateDecode");
    }
}

using SurfaceUnroll.Drawings;
using SurfaceUnroll.Files.Pdf;
using SurfaceUnroll.Geometry;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.Core;

namespace SurfaceUnroll.Tests.Files.Pdf;

public class PdfTextTests
{
    private const double Millimetre = 72 / 25.4;

    /// <summary>PDFsharp rounds font sizes to a thousandth, advances in the file to a thousandth of the size: 0.02 mm over a short text.</summary>
    private const double TextPlace = 0.02;

    private static readonly Vec2 Place = new(100, 150);

    [Fact]
    public void Widths_that_pages_are_laid_out_with_are_those_of_the_embedded_font()
    {
        for (char c = ' '; c <= '~'; c++)
        {
            string text = c.ToString();
            // The table holds whole thousandths of the cap height.
            Assert.Equal(InterFont.Instance.Width(text) / InterFont.Instance.CapHeight, PageTextWidth.Of(text, 1), 0.5e-3 + 1e-9);
        }
    }

    [Theory]
    [InlineData(Anchor.Left, 0)]
    [InlineData(Anchor.Middle, 0.5)]
    [InlineData(Anchor.Right, 1)]
    public void Anchor_of_a_text_stands_at_its_place(Anchor anchor, double part)
    {
        Letter[] letters = Letters(new PageText("HHIMH", Place, 5, 0, anchor));
        double start = letters[0].StartBaseLine.X / Millimetre, end = letters[^1].EndBaseLine.X / Millimetre;
        Assert.True(end - start > 10);
        Assert.Equal(Place.X, start + part * (end - start), TextPlace);
        Assert.All(letters, l => Assert.Equal(Place.Y, l.StartBaseLine.Y / Millimetre, TextPlace));
    }

    [Theory]
    [InlineData(Anchor.Left, 0)]
    [InlineData(Anchor.Right, 1)]
    public void Turned_text_runs_counter_clockwise_from_its_place(Anchor anchor, double part)
    {
        const double Angle = 0.7;
        Letter[] letters = Letters(new PageText("HHIMH", Place, 5, Angle, anchor));
        PdfPoint start = letters[0].StartBaseLine, end = letters[^1].EndBaseLine;
        Assert.Equal(Angle, Math.Atan2(end.Y - start.Y, end.X - start.X), 1e-4);
        Assert.Equal(Place.X, (start.X + part * (end.X - start.X)) / Millimetre, TextPlace);
        Assert.Equal(Place.Y, (start.Y + part * (end.Y - start.Y)) / Millimetre, TextPlace);
    }

    [Fact]
    public void Capitals_are_as_high_as_asked()
    {
        // Cap height of Inter 3.19 is 2048 of 2816 units (its table OS/2); the em square is what PdfPig gives as the point size.
        Letter letter = Letters(new PageText("H", Place, 5))[0];
        Assert.Equal(5, letter.PointSize * 2048 / 2816 / Millimetre, 0.01);
    }

    [Fact]
    public void Halo_is_white_behind_all_of_its_text()
    {
        using PdfDocument document = Open(new PageText("gHg", Place, 5, 0, Anchor.Middle, Halo: true));
        UglyToad.PdfPig.Content.Page page = document.GetPage(1);
        UglyToad.PdfPig.Graphics.PdfPath halo = Assert.Single(page.Paths);
        Assert.Equal((1.0, 1.0, 1.0), halo.FillColor!.ToRGBValues());
        PdfRectangle white = halo.GetBoundingRectangle()!.Value;
        Assert.All(page.Letters, l =>
        {
            Assert.InRange(l.BoundingBox.Left, white.Left, white.Right);
            Assert.InRange(l.BoundingBox.Right, white.Left, white.Right);
            Assert.InRange(l.BoundingBox.Bottom, white.Bottom, white.Top);
            Assert.InRange(l.BoundingBox.Top, white.Bottom, white.Top);
        });
    }

    [Fact]
    public void Characters_that_the_font_lacks_become_question_marks()
    {
        Assert.Equal("a?b?c d", InterFont.Instance.Printable("a漢b\U0001F600c\td"));
        Assert.Equal("a?b", string.Concat(Letters(new PageText("a漢b", Place, 5)).Select(l => l.Value)));
    }

    [Fact]
    public void Font_has_the_characters_of_the_trade()
    {
        const string Needed = "ABCDEFGHIJKLMNOPQRSTUVWXYZ abcdefghijklmnopqrstuvwxyz 0123456789 .,:;/-+()'\"·×°±Ø≥≤−–—½¼¾′″→←↑↓²µäöüßéèñçåø";
        Assert.Equal("", string.Concat(Needed.Where(c => !InterFont.Instance.Has(c))));
    }

    [Fact]
    public void Empty_text_is_left_out() => Assert.Empty(Letters(new PageText(" ", Place, 5)));

    [SkippableFact]
    public void Poppler_reads_the_words_and_sizes()
    {
        using var folder = new TemporaryFolder();
        string file = folder.Write("sample.pdf", PdfPages.Write(PdfSample.Pages, "Trial cover"));
        string[] probe = ["pdfinfo", "-v"];
        string text = DebianTool.Run("poppler-utils", probe, "pdftotext", "-layout", file, "-");
        foreach (PageText expected in PdfSample.Pages.SelectMany(p => p.Texts).Where(t => t.Angle == 0))
            Assert.Contains(expected.Text, text, StringComparison.Ordinal);
        string info = DebianTool.Run("poppler-utils", probe, "pdfinfo", "-f", "1", "-l", "2", file);
        Assert.Contains("595.276 x 841.89 pts (A4)", info, StringComparison.Ordinal);
        Assert.Contains("612 x 792 pts (letter)", info, StringComparison.Ordinal);
        Assert.Contains("Trial cover", info, StringComparison.Ordinal);
    }

    [SkippableFact]
    public void Strict_reader_finds_no_fault()
    {
        using var folder = new TemporaryFolder();
        string file = folder.Write("sample.pdf", PdfPages.Write(PdfSample.Pages, "Träger & <Haube> (1) +Inter"));
        // qpdf checks the table of offsets and the checksum of every stream; it ends with 0 only without faults and warnings.
        DebianTool.Run("qpdf", ["qpdf", "--version"], "qpdf", "--check", file);
    }

    private static Letter[] Letters(PageText text)
    {
        using PdfDocument document = Open(text);
        return [.. document.GetPage(1).Letters];
    }

    private static PdfDocument Open(PageText text) => PdfDocument.Open(PdfPages.Write([PdfSample.Empty with { Texts = [text] }], "Text"));
}

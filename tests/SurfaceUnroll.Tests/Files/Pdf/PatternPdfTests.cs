using System.Collections.Immutable;
using SurfaceUnroll.Files.Pdf;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Tests.Drawings;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Tokens;

namespace SurfaceUnroll.Tests.Files.Pdf;

public class PatternPdfTests
{
    private const double Inch = 25.4;

    public static TheoryData<string, PaperOrientation> Papers =>
        new() { { "A4", PaperOrientation.Portrait }, { "A4", PaperOrientation.Landscape }, { "Letter", PaperOrientation.Portrait }, { "Letter", PaperOrientation.Landscape } };

    [Theory]
    [MemberData(nameof(Papers))]
    public void Sheets_are_as_large_as_the_paper(string name, PaperOrientation orientation)
    {
        // ISO 216 and ANSI/ASME Y14.1.
        (double wide, double high) = name == "A4" ? (210, 297) : (8.5 * Inch, 11 * Inch);
        if (orientation == PaperOrientation.Landscape) (wide, high) = (high, wide);
        Assert.All(PdfSheets.Read(Write(Paper(name, orientation))), sheet =>
        {
            // Page boxes are written to a few decimals of a point.
            Assert.Equal(wide, sheet.Width, 0.001);
            Assert.Equal(high, sheet.Height, 0.001);
        });
    }

    [Theory]
    [MemberData(nameof(Papers))]
    public void Bars_on_every_tile_are_true_in_both_directions(string name, PaperOrientation orientation)
    {
        PaperSheet[] tiles = PdfSheets.Read(Write(Paper(name, orientation)))[1..];
        Assert.True(tiles.Length >= 4);
        Assert.All(tiles, tile =>
        {
            foreach (double length in new[] { 100, 4 * Inch })
            {
                Assert.Single(tile.Straight(PaperSheet.NarrowLine, length), l => l.IsLevel);
                Assert.Single(tile.Straight(PaperSheet.NarrowLine, length), l => l.IsUpright);
            }
            string words = string.Join(' ', tile.Words.Select(w => w.Text));
            Assert.Equal(2, words.Split("100 mm").Length - 1);
            Assert.Equal(2, words.Split("4 in").Length - 1);
        });
    }

    [Fact]
    public void Scale_is_none_of_the_well_known_wrong_ones()
    {
        // What the bar would measure if inches, millimetres, points and pixels had been taken for one another, or a dialog had fitted the page.
        double[] wrong = [Inch, 1 / Inch, Inch / 96, 96 / Inch, Inch / 72, 72 / Inch, 72.0 / 96, 96.0 / 72, 300.0 / 72, 72.0 / 300, 0.97, 0.94];
        PaperSheet tile = PdfSheets.Read(Write(PaperSpec.Default))[1];
        // The longer of the two long level lines that begin at the left below the frame is the bar of 4 in.
        PaperLine[] bars = [.. tile.Lines.Where(l => l.IsLevel && l.Points[0].Y < 20 && (l.Points[1] - l.Points[0]).Length > 5).Take(2)];
        double[] measured = [.. bars.Select(b => (b.Points[1] - b.Points[0]).Length)];
        Assert.Equal(2, measured.Length);
        Assert.All(wrong, factor => Assert.True(Math.Abs(measured[0] / 100 - factor) > 0.01 && Math.Abs(measured[1] / 101.6 - factor) > 0.01, $"The scale is {factor}."));
        Assert.Equal(1.016, measured[1] / measured[0], 1e-4);
    }

    [Theory]
    [MemberData(nameof(Papers))]
    public void Taped_sheets_show_the_cut_line_whole_and_true(string name, PaperOrientation orientation)
    {
        // Askew on the paper, so that a sheet shifted either way breaks the line.
        Development half = Samples.Turned(Samples.HalfCylinder(), 0.2);
        PaperSheet[] tiles = PdfSheets.Read(Write(Paper(name, orientation), half))[1..];
        // Coordinates are written to a few decimals; a sheet is taped to its neighbours as well as those allow.
        Vec2[] corners = TapedSheets.Lay(tiles, 0.01);
        List<(Vec2 From, Vec2 To)> taped = TapedSheets.Segments(tiles, corners, PaperSheet.WideLine);
        ImmutableArray<Vec2> cut = half.Panels[0].Cut;
        Vec2 shift = Box.Around(taped.SelectMany(s => new[] { s.From, s.To })).Min - Box.Around(cut).Min;
        (Vec2, Vec2)[] drawn = [.. cut.Select((p, i) => (p + shift, cut[(i + 1) % cut.Length] + shift))];
        Assert.InRange(TapedSheets.FarthestFrom(drawn, taped), 0, 0.02);
        Assert.InRange(TapedSheets.FarthestFrom(taped, drawn), 0, 0.02);
    }

    [Fact]
    public void Print_dialogs_are_told_not_to_scale()
    {
        using PdfDocument document = PdfDocument.Open(Write(PaperSpec.Default));
        var preferences = document.Structure.Catalog.CatalogDictionary.Data["ViewerPreferences"];
        if (preferences is IndirectReferenceToken reference) preferences = document.Structure.GetObject(reference.Data).Data;
        Assert.Equal("None", ((NameToken)((DictionaryToken)preferences).Data["PrintScaling"]).Data);
    }

    [Fact]
    public void Same_job_gives_the_same_bytes() => Assert.Equal(Write(PaperSpec.Default), Write(PaperSpec.Default));

    [SkippableFact]
    public void Another_reader_finds_the_same_sizes_and_words()
    {
        using var folder = new TemporaryFolder();
        string path = folder.Write("cover.pdf", Write(PaperSpec.Default));
        string[] probe = ["pdfinfo", "-v"];
        string info = DebianTool.Run("poppler-utils", probe, "pdfinfo", "-f", "1", "-l", "99", path);
        Assert.Contains("Pages:           7", info, StringComparison.Ordinal);
        Assert.Contains("(A4)", info, StringComparison.Ordinal);
        string text = DebianTool.Run("poppler-utils", probe, "pdftotext", "-raw", path, "-");
        // How wide the white between words is does not matter.
        string[] pages = [.. text.Split('\f', StringSplitOptions.RemoveEmptyEntries).Select(p => string.Join(' ', p.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)))];
        Assert.Equal(7, pages.Length);
        foreach (string word in new[] { "actual size", "gloves", "fume", "Local codes and licensed practice decide", "Tape from P to Q", "bends only", "471.2 mm × 400 mm" })
            Assert.Contains(word, pages[0], StringComparison.Ordinal);
        string[] labels = ["sheet 1.1", "sheet 1.2", "sheet 1.3", "sheet 2.1", "sheet 2.2", "sheet 2.3"];
        for (int i = 0; i < labels.Length; i++)
            foreach (string word in new[] { labels[i], $"Page {i + 2} of 7", "OUTSIDE FACE UP", "Cover – Half cylinder", "mild steel 0.9 mm" })
                Assert.Contains(word, pages[i + 1], StringComparison.Ordinal);
    }

    [SkippableFact]
    public void Level_bar_covers_as_many_dots_as_its_length_has()
    {
        using var folder = new TemporaryFolder();
        string path = folder.Write("cover.pdf", Write(PaperSpec.Default));
        // 254 dots per inch are ten to the millimetre.
        DebianTool.Run("poppler-utils", ["pdftoppm", "-v"], "pdftoppm", "-r", "254", "-gray", "-f", "2", "-l", "2", "-singlefile", path, folder.At("tile"));
        (int width, int height, byte[] dots) = ReadPgm(folder.At("tile.pgm"));
        // Dots that the page covers only in part are counted too.
        Assert.InRange(width, 2100, 2101);
        Assert.InRange(height, 2970, 2971);
        // In the lowest 25 mm, above and below the bars there is nothing as long as they are.
        int[] runs = [.. Enumerable.Range(height - 250, 240).Select(y => LongestDark(dots.AsSpan(y * width, width))).Where(run => run > 900)];
        // With its round ends a bar is 0.35 mm longer than the distance it shows, give or take a dot at each end.
        Assert.Contains(runs, run => Math.Abs(run - 1003.5) <= 2);
        Assert.Contains(runs, run => Math.Abs(run - 1019.5) <= 2);
        Assert.All(runs, run => Assert.InRange(run, 990, 1022));
    }

    private static int LongestDark(ReadOnlySpan<byte> row)
    {
        int longest = 0, run = 0;
        foreach (byte dot in row)
        {
            run = dot < 128 ? run + 1 : 0;
            longest = Math.Max(longest, run);
        }
        return longest;
    }

    // Binary grey map: "P5 width height 255", one white-space character, then the dots row by row.
    private static (int Width, int Height, byte[] Dots) ReadPgm(string path)
    {
        byte[] file = File.ReadAllBytes(path);
        var numbers = new List<int>();
        int at = 2;
        while (numbers.Count < 3)
        {
            while (char.IsWhiteSpace((char)file[at])) at++;
            int number = 0;
            for (; char.IsAsciiDigit((char)file[at]); at++) number = 10 * number + file[at] - '0';
            numbers.Add(number);
        }
        return (numbers[0], numbers[1], file[(at + 1)..]);
    }

    private static PaperSpec Paper(string name, PaperOrientation orientation) =>
        PaperSpec.Default with { Size = name == "A4" ? PaperSize.A4 : PaperSize.Letter, Orientation = orientation };

    private static byte[] Write(PaperSpec paper) => Write(paper, Samples.HalfCylinder());

    private static byte[] Write(PaperSpec paper, Development development) =>
        PatternPdf.Write(development.Panels[0], development.Job with { Paper = paper });
}

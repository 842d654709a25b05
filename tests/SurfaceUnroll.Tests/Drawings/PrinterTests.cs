using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Files.Pdf;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Tests.Files.Pdf;

namespace SurfaceUnroll.Tests.Drawings;

/// <summary>Printers that do not print true are stood in for by moving what a PDF holds, as they would.</summary>
public class PrinterTests
{
    private const double Degree = Math.PI / 180;

    // A printer pulls paper through along its long side: a level page comes to it turned by a quarter, either way, and is printed like an upright one.
    private static Vec2 Printed(Vec2 p, PrinterScale printer, bool level)
    {
        Vec2 fed = level ? new Vec2(-p.Y, p.X) : p;
        var paper = new Vec2(printer.Across * fed.X + printer.Along * Math.Sin(printer.Skew) * fed.Y, printer.Along * Math.Cos(printer.Skew) * fed.Y);
        return level ? new Vec2(paper.Y, -paper.X) : paper;
    }

    [Theory]
    [InlineData(PaperOrientation.Portrait, 0.986, 0.997, 0)]
    [InlineData(PaperOrientation.Landscape, 0.986, 0.997, 0)]
    [InlineData(PaperOrientation.Portrait, 1.012, 0.991, 0.4)]
    [InlineData(PaperOrientation.Landscape, 0.993, 1.004, -0.3)]
    public void Corrected_sheets_come_out_true_over_two_metres(PaperOrientation orientation, double across, double along, double skew)
    {
        var printer = new PrinterScale("test", across, along, skew * Degree);
        Development half = Samples.Turned(Samples.HalfCylinder(120, 2000), 0.3);
        PaperSpec paper = PaperSpec.Default with { Orientation = orientation, Printer = printer };
        bool level = orientation == PaperOrientation.Landscape;
        PaperSheet[] given = PdfSheets.Read(PatternPdf.Write(half.Panels[0], half.Job with { Paper = paper }))[1..];
        Assert.All(given, sheet => Assert.Equal(level ? (297, 210) : (210, 297), (sheet.Width, sheet.Height), (a, b) => Math.Abs(a.Item1 - b.Item1) < 0.001 && Math.Abs(a.Item2 - b.Item2) < 0.001));
        // No mark lies where the printer cannot print.
        Box area = new Box(Vec2.Zero, level ? new Vec2(297, 210) : new Vec2(210, 297)).Grow(-10 + 1e-3);
        Assert.All(given.SelectMany(s => s.Lines).SelectMany(l => l.Points), p => Assert.True(area.Contains(p), $"{p}"));

        // Marks are found by the lengths of their crosses, which come out true too.
        PaperSheet[] sheets = [.. given.Select(s => s with { Lines = [.. s.Lines.Select(l => l with { Points = [.. l.Points.Select(p => Straightened(Printed(p, printer, level)))] })], Words = [.. s.Words.Select(w => w with { At = Printed(w.At, printer, level) })] })];
        Vec2[] corners = TapedSheets.Lay(sheets, 0.01);
        List<(Vec2 From, Vec2 To)> taped = TapedSheets.Segments(sheets, corners, PaperSheet.WideLine);
        ImmutableArray<Vec2> cut = half.Panels[0].Cut;
        Vec2 shift = Box.Around(taped.SelectMany(s => new[] { s.From, s.To })).Min - Box.Around(cut).Min;
        (Vec2, Vec2)[] drawn = [.. cut.Select((p, i) => (p + shift, cut[(i + 1) % cut.Length] + shift))];
        Assert.InRange(TapedSheets.FarthestFrom(drawn, taped), 0, 0.05);
        Assert.InRange(TapedSheets.FarthestFrom(taped, drawn), 0, 0.05);
        // Uncorrected the same printer misses by far more: the test would notice.
        Assert.True(Math.Abs(across - 1) * 2000 > 10);

        // To a ten-thousandth of a millimetre, so that a level line is level.
        static Vec2 Straightened(Vec2 p) => new(Math.Round(p.X, 4), Math.Round(p.Y, 4));
    }

    [Fact]
    public void A_corrected_sheet_says_for_which_printer()
    {
        Development half = Samples.HalfCylinder();
        PaperSpec paper = PaperSpec.Default with { Printer = new PrinterScale("shop laser", 0.99, 1.002, 0) };
        PaperSheet[] sheets = PdfSheets.Read(PatternPdf.Write(half.Panels[0], half.Job with { Paper = paper }));
        Assert.All(sheets, s => Assert.Contains("shop laser", string.Join(' ', s.Words.Select(w => w.Text)), StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("A4")]
    [InlineData("Letter")]
    [InlineData("A2")]
    [InlineData("A6")]
    public void The_page_has_two_long_bars_at_right_angles_and_says_how_long_they_are(string name)
    {
        PaperSpec paper = PaperSpec.Default with { Size = PaperSize.Named.First(s => s.Name == name) };
        var test = PrinterTestPage.On(paper);
        PaperSheet sheet = Assert.Single(PdfSheets.Read(PdfPages.Write([test.Draw(paper)], "test")));
        Assert.Single(sheet.Straight(PaperSheet.NarrowLine, test.Width), l => l.IsLevel);
        Assert.Single(sheet.Straight(PaperSheet.NarrowLine, test.Height), l => l.IsUpright);
        string words = string.Join(' ', sheet.Words.Select(w => w.Text));
        foreach (double length in new[] { test.Width, test.Height }) Assert.Contains(length.ToString("0", CultureInfo.InvariantCulture) + " mm", words, StringComparison.Ordinal);
        // More than half of the printable width and of its height, less the words.
        Assert.True(test.Width >= 0.5 * (paper.Size.Width - 20) && test.Height > 0.35 * (paper.Size.Height - 20));
        Box area = new Box(Vec2.Zero, new Vec2(sheet.Width, sheet.Height)).Grow(-10 + 1e-3);
        Assert.All(sheet.Lines.SelectMany(l => l.Points), p => Assert.True(area.Contains(p), $"{p}"));
    }

    [Theory]
    [InlineData(0.986, 0.997, 0)]
    [InlineData(1.004, 0.9905, 0.35)]
    [InlineData(0.999, 1.02, -0.8)]
    public void What_is_measured_on_the_page_gives_the_printer_back(double across, double along, double skew)
    {
        var printer = new PrinterScale("p", across, along, skew * Degree);
        var page = PrinterTestPage.On(PaperSpec.Default);
        Vec2 Out(double x, double y) => Printed(new Vec2(x, y), printer, level: false);
        double up = (Out(page.Width, page.Height) - Out(0, 0)).Length, down = (Out(page.Width, 0) - Out(0, page.Height)).Length;
        PrinterTest test = PrinterTest.Of("p", page, (Out(page.Width, 0) - Out(0, 0)).Length, (Out(0, page.Height) - Out(0, 0)).Length, (up, down));
        Assert.Equal("", test.Problem);
        Assert.Equal(across, test.Scale!.Across, 1e-9);
        Assert.Equal(along, test.Scale.Along, 1e-9);
        Assert.Equal(skew * Degree, test.Scale.Skew, 1e-9);
        // The short measure does as well, without the diagonals.
        PrinterTest small = PrinterTest.Of("p", page, across * 100, along * 100, null);
        Assert.Equal((across, along, 0.0), (small.Scale!.Across, small.Scale.Along, small.Scale.Skew), (a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) + Math.Abs(a.Item3 - b.Item3) < 1e-9);
    }

    [Theory]
    [InlineData(94.1, 94.1, "fit")]
    [InlineData(75, 75, "72 dots")]
    [InlineData(133.3, 133.3, "96 dots")]
    [InlineData(24, 24, "300")]
    [InlineData(3.94, 3.94, "inches")]
    [InlineData(10, 10, "centimetres")]
    [InlineData(70.7, 70.7, "A5")]
    [InlineData(99.8, 88, "along")]
    [InlineData(111, 99.8, "across")]
    public void A_measure_that_is_far_off_is_refused_with_its_likely_cause(double across, double along, string word)
    {
        PrinterTest test = PrinterTest.Of("p", PrinterTestPage.On(PaperSpec.Default), across, along, null);
        Assert.Null(test.Scale);
        Assert.Contains(word, test.Problem, StringComparison.Ordinal);
        Assert.NotEmpty(test.Mend);
    }

    [Fact]
    public void Diagonals_that_do_not_belong_to_the_bars_are_refused()
    {
        var page = PrinterTestPage.On(PaperSpec.Default);
        Assert.Null(PrinterTest.Of("p", page, 100, 100, (page.Diagonal, page.Diagonal + 4)).Scale);
        Assert.Null(PrinterTest.Of("p", page, 100, 100, (page.Diagonal + 20, page.Diagonal - 20)).Scale);
        Assert.NotNull(PrinterTest.Of("p", page, 100, 100, (page.Diagonal + 0.5, page.Diagonal - 0.5)).Scale);
    }

    [Fact]
    public void Both_bars_off_alike_are_taken_with_a_word_of_warning()
    {
        PrinterTest test = PrinterTest.Of("p", PrinterTestPage.On(PaperSpec.Default), 97.2, 97.3, null);
        Assert.NotNull(test.Scale);
        Assert.Contains("fitted", test.Problem, StringComparison.Ordinal);
    }
}

using System.Text;
using System.Text.RegularExpressions;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Files.Pdf;
using SurfaceUnroll.Geometry;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Core;
using UglyToad.PdfPig.Graphics;
using UglyToad.PdfPig.Tokens;
using Page = SurfaceUnroll.Drawings.Page;

namespace SurfaceUnroll.Tests.Files.Pdf;

public class PdfPagesTests
{
    private const double Millimetre = 72 / 25.4;

    /// <summary>Coordinates are written to a thousandth of a millimetre; the reader adds the rounding of a float.</summary>
    private const double Written = 0.001;

    private static readonly byte[] Sample = PdfPages.Write(PdfSample.Pages, "Trial cover");

    [Fact]
    public void Every_page_has_its_own_exact_size()
    {
        using PdfDocument document = PdfDocument.Open(Sample);
        Assert.Equal(PdfSample.Pages.Length, document.NumberOfPages);
        foreach ((Page expected, UglyToad.PdfPig.Content.Page read) in PdfSample.Pages.Zip(document.GetPages()))
        {
            // Boxes are written to a ten-thousandth of a point.
            Assert.Equal(expected.Width * Millimetre, read.MediaBox.Bounds.Width, 1e-4);
            Assert.Equal(expected.Height * Millimetre, read.MediaBox.Bounds.Height, 1e-4);
        }
    }

    [Fact]
    public void Hundred_millimetres_are_a_hundred_millimetres_on_paper_both_ways()
    {
        // The wrong scales that are commonly met (25.4, 25.4/96, 72/96, 25.4/72 and their inverses) are all off by more than a quarter.
        PdfRectangle[] boxes = Boxes(Sample, 1);
        Assert.Contains(boxes, b => Math.Abs(b.Width / Millimetre - 100) < 0.01 && b.Height < 0.01);
        Assert.Contains(boxes, b => Math.Abs(b.Height / Millimetre - 100) < 0.01 && b.Width < 0.01);
    }

    [Fact]
    public void Lines_stand_where_the_page_says()
    {
        PdfPoint[][] read = Paths(Sample, 1).Where(p => p.IsStroked).Select(Points).ToArray();
        Assert.Equal(PdfSample.Pages[0].Lines.Length, read.Length);
        foreach ((PageLine line, PdfPoint[] points) in PdfSample.Pages[0].Lines.Zip(read))
        {
            Assert.Equal(line.Points.Length, points.Length);
            Assert.All(line.Points.Zip(points), pair =>
            {
                Assert.Equal(pair.First.X, pair.Second.X / Millimetre, Written);
                Assert.Equal(pair.First.Y, pair.Second.Y / Millimetre, Written);
            });
        }
    }

    [Fact]
    public void Closed_lines_are_closed_and_open_ones_are_not()
    {
        bool[] closed = [.. Paths(Sample, 1).Where(p => p.IsStroked).Select(p => p[0].Commands[^1] is PdfSubpath.Close)];
        Assert.Equal(PdfSample.Pages[0].Lines.Select(l => l.Closed), closed);
    }

    [Fact]
    public void Wide_lines_are_twice_as_wide_as_narrow_ones()
    {
        // ISO 128-2: two widths of line, 2 : 1.
        double[] widths = [.. Paths(Sample, 1).Where(p => p.IsStroked).Select(p => p.LineWidth)];
        Assert.Equal(0.35, widths[0], 1e-6);
        Assert.Equal(0.7, widths[^1], 1e-6);
    }

    [Fact]
    public void Element_lines_are_chains_and_centrelines_chains_of_long_dashes()
    {
        // ISO 128-2, in widths of 0.35 mm: dash 12, long dash 24, gap 3, dot 0.5; lengths are written to 0.001 mm.
        PdfPath[] lines = [.. Paths(Sample, 1).Where(p => p.IsStroked)];
        Assert.Empty(lines[0].LineDashPattern!.Value.Array);
        AssertDashes([4.2, 1.05, 0.175, 1.05], lines[2]);
        AssertDashes([8.4, 1.05, 0.175, 1.05], lines[3]);
        Assert.Empty(lines[4].LineDashPattern!.Value.Array);
    }

    [Fact]
    public void Fills_have_no_outline()
    {
        PdfPath fill = Paths(Sample, 1).First(p => p.IsFilled);
        Assert.False(fill.IsStroked);
        Assert.Equal((0.5, 0.5, 0.5), fill.FillColor!.ToRGBValues());
    }

    [Fact]
    public void Document_asks_not_to_be_scaled()
    {
        using PdfDocument document = PdfDocument.Open(Sample);
        DictionaryToken catalog = document.Structure.Catalog.CatalogDictionary;
        Assert.True(catalog.TryGet(NameToken.Create("ViewerPreferences"), out IToken? token));
        if (token is IndirectReferenceToken reference) token = document.Structure.GetObject(reference.Data).Data;
        Assert.True(((DictionaryToken)token).TryGet(NameToken.Create("PrintScaling"), out IToken? scaling));
        Assert.Equal("None", Assert.IsType<NameToken>(scaling).Data);
    }

    [Fact]
    public void Same_pages_give_the_same_bytes()
    {
        Assert.Equal(Sample, PdfPages.Write([.. PdfSample.Pages], "Trial cover"));
        // Also when the process writes others at the same time.
        Assert.All(Enumerable.Range(0, 16).AsParallel().Select(_ => PdfPages.Write(PdfSample.Pages, "Trial cover")), f => Assert.Equal(Sample, f));
    }

    [Fact]
    public void Different_pages_give_different_ids()
    {
        Page moved = PdfSample.Pages[0] with { Lines = [new PageLine(Pen.Narrow, [new Vec2(10, 12), new Vec2(110.0000001, 12)])] };
        string[] ids =
        [
            Id(Sample), Id(PdfPages.Write(PdfSample.Pages, "Another title")), Id(PdfPages.Write([moved], "Trial cover")),
            Id(PdfPages.Write([moved with { Width = 211 }], "Trial cover")),
        ];
        Assert.Equal(ids.Length, ids.Distinct().Count());
    }

    [Fact]
    public void Title_may_hold_any_character()
    {
        const string Title = "Träger & <Haube> (1) \\ 漢";
        byte[] file = PdfPages.Write([PdfSample.Empty], Title);
        using PdfDocument document = PdfDocument.Open(file);
        Assert.Equal(Title, document.Information.Title);
        // Metadata would repeat the title, ill-formed where it holds a bracket or an ampersand: there are none.
        Assert.False(document.TryGetXmpMetadata(out _));
    }

    [Fact]
    public void Document_without_pages_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => PdfPages.Write([], "nothing"));

    private static void AssertDashes(double[] expected, PdfPath line)
    {
        double[] read = [.. line.LineDashPattern!.Value.Array.Select(v => (double)v)];
        Assert.Equal(expected.Length, read.Length);
        Assert.All(expected.Zip(read), pair => Assert.Equal(pair.First, pair.Second, Written));
    }

    private static PdfPath[] Paths(byte[] file, int page)
    {
        using PdfDocument document = PdfDocument.Open(file);
        return [.. document.GetPage(page).Paths];
    }

    private static PdfRectangle[] Boxes(byte[] file, int page) =>
        [.. Paths(file, page).Select(p => p.GetBoundingRectangle()).Where(b => b.HasValue).Select(b => b!.Value)];

    private static PdfPoint[] Points(PdfPath path) =>
        [.. path.SelectMany(s => s.Commands).Select(c => c switch
        {
            PdfSubpath.Move move => (PdfPoint?)move.Location,
            PdfSubpath.Line line => line.To,
            _ => null,
        }).Where(p => p.HasValue).Select(p => p!.Value)];

    private static string Id(byte[] file) => Regex.Match(Encoding.Latin1.GetString(file), "/ID\\[<([0-9A-F]{32})>").Groups[1].Value;
}

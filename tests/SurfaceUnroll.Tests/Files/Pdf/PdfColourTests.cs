using SurfaceUnroll.Drawings;
using SurfaceUnroll.Files.Pdf;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Graphics;
using UglyToad.PdfPig.Graphics.Colors;
using Page = SurfaceUnroll.Drawings.Page;

namespace SurfaceUnroll.Tests.Files.Pdf;

public class PdfColourTests
{
    private static readonly PageFill Area = new([new(20, 20), new(40, 20), new(40, 25)], 0.5);

    private static byte[] Write(PageFill fill) => PdfPages.Write([PdfSample.Empty with { Fills = [fill] }], "colour");

    [Fact]
    public void Coloured_area_of_two_loops_is_one_path_of_its_colour()
    {
        using PdfDocument document = PdfDocument.Open(Write(Area with { Colour = new PageColour(200, 100, 10), More = [[new(60, 20), new(70, 20), new(70, 25)]] }));
        PdfPath path = Assert.Single(document.GetPage(1).Paths, p => p.IsFilled);
        Assert.Equal(2, path.Count);
        (double red, double green, double blue) = Assert.IsType<RGBColor>(path.FillColor).ToRGBValues();
        Assert.Equal(200.0 / 255, red, 3);
        Assert.Equal(100.0 / 255, green, 3);
        Assert.Equal(10.0 / 255, blue, 3);
    }

    [Fact]
    public void Area_without_colour_stays_grey()
    {
        using PdfDocument document = PdfDocument.Open(Write(Area));
        Assert.IsType<GrayColor>(Assert.Single(document.GetPage(1).Paths, p => p.IsFilled).FillColor);
    }

    [Fact]
    public void Pages_that_differ_in_colour_alone_have_different_ids() => Assert.NotEqual(
        Convert.ToHexString(PageDigest.Of([Sheet(new PageColour(1, 2, 3))], "")), Convert.ToHexString(PageDigest.Of([Sheet(new PageColour(1, 2, 4))], "")));

    private static Page Sheet(PageColour colour) => PdfSample.Empty with { Fills = [Area with { Colour = colour }] };
}

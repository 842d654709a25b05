using System.Text;
using System.Xml.Linq;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Files.Svg;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Tests.Patterns.Strain;

namespace SurfaceUnroll.Tests.Files.Svg;

public class PageSvgTests
{
    private static readonly XNamespace Ns = "http://www.w3.org/2000/svg";

    private static XElement Root(Page page) => XDocument.Parse(Encoding.UTF8.GetString(PageSvg.Write(page, "a & b"))).Root!;

    [Fact]
    public void Page_is_true_to_scale_with_its_colours_lines_and_words()
    {
        var page = new Page(
            100, 50,
            [
                new PageFill([new(0, 0), new(10, 0), new(10, 10)], 0.5),
                new PageFill([new(20, 0), new(30, 0), new(30, 10)], 1) { Colour = new PageColour(200, 100, 10), More = [[new(40, 0), new(50, 0), new(50, 10)]] },
            ],
            [new PageLine(Pen.FineDashed, [new(1, 2), new(3, 4)])],
            [new PageText("1 < 2", new Vec2(60, 20), 3, Math.PI / 2, Halo: true)]);
        XElement root = Root(page);
        Assert.Equal("100mm", root.Attribute("width")!.Value);
        Assert.Equal("0 0 100 50", root.Attribute("viewBox")!.Value);
        XElement[] fills = [.. Group(root, "fills").Elements()];
        Assert.Equal(["#808080", "#c8640a"], fills.Select(f => f.Attribute("fill")!.Value));
        Assert.Equal("M20,50L30,50L30,40ZM40,50L50,50L50,40Z", fills[1].Attribute("d")!.Value);
        XElement line = Assert.Single(Group(root, "lines").Elements());
        Assert.Equal("M1,48L3,46", line.Attribute("d")!.Value);
        Assert.NotNull(line.Attribute("stroke-dasharray"));
        XElement text = Assert.Single(Group(root, "texts").Elements(Ns + "text"));
        Assert.Equal("1 < 2", text.Value);
        Assert.Equal("rotate(-90 60 30)", text.Attribute("transform")!.Value);
        Assert.Single(Group(root, "texts").Elements(Ns + "path"));
    }

    [Fact]
    public void Same_page_gives_the_same_bytes() =>
        Assert.Equal(PageSvg.Write(StrainPages.Of("dome"), "dome"), PageSvg.Write(StrainPages.Of("dome"), "dome"));

    private static XElement Group(XElement root, string id) => root.Elements(Ns + "g").Single(g => g.Attribute("id")!.Value == id);
}

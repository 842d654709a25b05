using System.Text;
using System.Xml.Linq;
using SurfaceUnroll.Files.Preview;
using SurfaceUnroll.Files.Svg;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;

namespace SurfaceUnroll.Tests.Files.Svg;

public class SvgFittingTests
{
    private static readonly XNamespace Ns = "http://www.w3.org/2000/svg";
    private static readonly Development Cover = FittedSamples.Cover();
    private static readonly XElement Root = Read(SvgPattern.Write(PatternDrawing.Of(Cover.Panels[0], Cover.Job, Cover.Joints)));

    [Fact]
    public void Bends_finished_edges_and_inner_cuts_stand_in_groups_of_their_own()
    {
        Assert.Equal(["note", "centre", "net", "element", "bend", "mark", "cut"], Root.Elements(Ns + "g").Select(g => g.Attribute("id")!.Value));
        Assert.Equal(8, Group("cut").Elements(Ns + "path").Count(p => p.Attribute("d")!.Value.EndsWith('Z')));
        Assert.Equal([false, true, true], Group("bend").Elements(Ns + "path").Select(p => p.Attribute("stroke-dasharray") is not null));
        Assert.Single(Group("net").Elements(Ns + "path"));
        Assert.Contains(Group("mark").Elements(Ns + "text"), t => t.Value == "A9");
    }

    [Fact]
    public void Every_group_has_a_colour_of_its_own()
    {
        string[] colours = [.. Root.Elements(Ns + "g").Select(g => g.Attribute("stroke")!.Value)];
        Assert.Equal(colours.Length, colours.Distinct().Count());
    }

    [Fact]
    public void Picture_shows_openings_bends_and_marks()
    {
        XElement picture = Read(PreviewSvg.Write(Cover.Panels[0], Cover.Job)), plain = Read(PreviewSvg.Write(Samples.HalfCylinder().Panels[0], Cover.Job));
        int Paths(XElement root, string id, Func<XElement, bool> which) => root.Elements(Ns + "g").Single(g => g.Attribute("id")!.Value == id).Elements(Ns + "path").Count(which);
        // Seven holes in the colour of the paper on either side; one bend and nine marks on the flat.
        Assert.Equal(7, Paths(picture, "formed", p => p.Attribute("fill")?.Value == Palette.Paper));
        Assert.Equal(7, Paths(picture, "flat", p => p.Attribute("fill")?.Value == Palette.Paper));
        Assert.Equal(Paths(plain, "flat", _ => true) + 7 + 1 + 9, Paths(picture, "flat", _ => true));
    }

    [Fact]
    public void Sheets_without_lines_have_their_rim_in_ink()
    {
        Development plate = FittedSamples.Plate();
        XElement formed = Read(PreviewSvg.Write(plate.Panels[0], plate.Job)).Elements(Ns + "g").Single(g => g.Attribute("id")!.Value == "formed");
        Assert.Equal(plate.Panels[0].Net.Length, formed.Elements(Ns + "path").Count(p => p.Attribute("stroke")!.Value == Palette.Ink && p.Attribute("fill") is null));
    }

    [Fact]
    public void Picture_of_a_bent_plate_names_its_left_and_right()
    {
        Development bent = FittedSamples.Bent();
        string[] words = [.. Read(PreviewSvg.Write(bent.Panels[0], bent.Job)).Descendants(Ns + "text").Select(t => t.Value)];
        Assert.Equal(2, words.Count(w => w == "left"));
        Assert.Equal(2, words.Count(w => w == "right"));
        Assert.DoesNotContain("front", words);
    }

    private static XElement Group(string id) => Root.Elements(Ns + "g").Single(g => g.Attribute("id")!.Value == id);

    private static XElement Read(byte[] svg) => XDocument.Parse(Encoding.UTF8.GetString(svg)).Root!;
}

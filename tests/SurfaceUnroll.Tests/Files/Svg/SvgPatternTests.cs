using System.Globalization;
using System.Text;
using System.Xml.Linq;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Files.Svg;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Tests.Files.Svg;

public class SvgPatternTests
{
    private static readonly XNamespace Ns = "http://www.w3.org/2000/svg";
    private static readonly Drawing Drawing = SampleDrawing.OfHalfCylinder();
    private static readonly XElement Root = XDocument.Parse(Encoding.UTF8.GetString(SvgPattern.Write(Drawing))).Root!;

    [Fact]
    public void One_user_unit_is_one_millimetre()
    {
        double[] box = [.. Root.Attribute("viewBox")!.Value.Split(' ').Select(Number)];
        Assert.Equal(box[2], Number(Root.Attribute("width")!.Value.Replace("mm", "", StringComparison.Ordinal)));
        Assert.Equal(box[3], Number(Root.Attribute("height")!.Value.Replace("mm", "", StringComparison.Ordinal)));
        Assert.EndsWith("mm", Root.Attribute("width")!.Value, StringComparison.Ordinal);
        // The half cylinder is 150π by 400 mm; 5 mm of room on every side.
        Assert.Equal(150 * Math.PI + 10, box[2], 1e-6);
        Assert.Equal(410, box[3], 1e-6);
    }

    [Fact]
    public void Coordinates_are_those_of_the_drawing_with_y_turned_over()
    {
        foreach (Role role in Enum.GetValues<Role>())
        {
            Stroke[] expected = [.. Drawing.Strokes.Where(s => s.Role == role)];
            (Vec2[] Points, bool Closed)[] read = [.. Group(role)?.Elements(Ns + "path").Select(Path) ?? []];
            Assert.Equal(expected.Length, read.Length);
            foreach ((Stroke stroke, (Vec2[] points, bool closed)) in expected.Zip(read))
            {
                Assert.Equal(stroke.Closed, closed);
                Assert.Equal(stroke.Points.Length, points.Length);
                // Written to 1e-9 mm.
                Assert.All(stroke.Points.Zip(points), pair => Assert.True((pair.First - pair.Second).Length < 2e-9));
            }
        }
    }

    [Fact]
    public void Everything_lies_inside_the_view()
    {
        double[] box = [.. Root.Attribute("viewBox")!.Value.Split(' ').Select(Number)];
        foreach (Vec2 p in Root.Descendants(Ns + "path").SelectMany(p => Path(p).Points))
        {
            Assert.InRange(p.X, box[0], box[0] + box[2]);
            Assert.InRange(-p.Y, box[1], box[1] + box[3]);
        }
    }

    [Fact]
    public void Words_survive_with_their_special_characters() =>
        Assert.Contains(Group(Role.Note)!.Elements(Ns + "text"), t => t.Value == "R 150 \"a\" & <b> Ø 20°");

    [Fact]
    public void Writing_upwards_turns_the_text_against_the_clock()
    {
        XElement upright = Group(Role.Note)!.Elements(Ns + "text").Single(t => t.Value == "upright");
        Assert.Equal("rotate(-90 50 200)", upright.Attribute("transform")!.Value);
        Assert.Equal("middle", upright.Attribute("text-anchor")!.Value);
    }

    [Fact]
    public void Contours_of_shrink_alone_are_dashed() => Assert.Equal(
        [false, true], Group(Role.Contour)!.Elements(Ns + "path").Select(p => p.Attribute("stroke-dasharray") is not null));

    [Fact]
    public void The_same_drawing_gives_the_same_bytes() =>
        Assert.Equal(SvgPattern.Write(Drawing), SvgPattern.Write(SampleDrawing.OfHalfCylinder()));

    private static XElement? Group(Role role)
    {
        string id = role switch { Role.Cut => "cut", Role.Element => "element", Role.Centre => "centre", Role.Mark => "mark", Role.Contour => "contour", _ => "note" };
        return Root.Elements(Ns + "g").SingleOrDefault(g => g.Attribute("id")!.Value == id && g.Attribute("class")!.Value == id);
    }

    private static (Vec2[] Points, bool Closed) Path(XElement path)
    {
        string d = path.Attribute("d")!.Value;
        Vec2[] points = [.. d.TrimEnd('Z').Split(['M', 'L'], StringSplitOptions.RemoveEmptyEntries).Select(text =>
        {
            string[] xy = text.Split(',');
            return new Vec2(Number(xy[0]), -Number(xy[1]));
        })];
        return (points, d.EndsWith('Z'));
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}

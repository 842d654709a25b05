using System.Text;
using System.Xml.Linq;
using SurfaceUnroll.Files.Preview;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Tests.Files.Preview;

public class PreviewSvgTests
{
    private static readonly XNamespace Ns = "http://www.w3.org/2000/svg";
    private static readonly Development Development = Samples.HalfCylinder();

    private static byte[] Picture() => PreviewSvg.Write(Development.Panels[0], Development.Job);

    [Fact]
    public void Picture_shows_the_formed_sheet_and_the_flat_with_both_ends_named()
    {
        XElement root = XDocument.Parse(Encoding.UTF8.GetString(Picture())).Root!;
        Assert.Equal(["formed", "flat"], root.Elements(Ns + "g").Select(g => g.Attribute("id")!.Value));
        string[] words = [.. root.Descendants(Ns + "text").Select(t => t.Value)];
        Assert.Equal(2, words.Count(w => w == "front"));
        Assert.Equal(2, words.Count(w => w == "rear"));
        Assert.Contains("13", words);
    }

    [Fact]
    public void Dense_element_lines_do_not_make_a_heavy_file()
    {
        PanelDevelopment panel = Development.Panels[0];
        ElementLine[] dense = [.. Enumerable.Range(0, 5000).Select(i => panel.Elements[i * panel.Elements.Length / 5000] with { Number = 0 })];
        byte[] picture = PreviewSvg.Write(panel with { Elements = [.. dense] }, Development.Job);
        // 73 strips of 5 facets at some 120 bytes, and lines.
        Assert.InRange(picture.Length, 10_000, 100_000);
    }

    [Fact]
    public void The_same_development_gives_the_same_bytes() => Assert.Equal(Picture(), Picture());

    [Fact]
    public void Camera_sees_left_and_front_and_top()
    {
        Camera camera = Camera.FrontLeftAbove;
        Assert.True(camera.ToEye.X < 0);
        Assert.True(camera.ToEye.Y < 0);
        Assert.True(camera.ToEye.Z > 0);
        Assert.Equal(1, camera.Up.Length, 1e-12);
        Assert.True(camera.Project(new(0, 0, 1)).Y > 0);
        Assert.Equal(0, camera.Project(new(0, 0, 1)).X, 1e-12);
        // Looking aft, the left of the job is on the right of the picture.
        Assert.True(camera.Project(new(0, -1, 0)).X > 0);
    }

    [Fact]
    public void A_sheet_that_slopes_down_aft_is_seen_from_behind()
    {
        SheetMesh level = Development.Panels[0].Mesh;
        Assert.Equal(Camera.FrontLeftAbove, Camera.For(level));
        SheetMesh sloping = level with { Formed = [.. level.Formed.Select(p => p with { Z = p.Z - 0.6 * p.X })] };
        Assert.Equal(Camera.RearLeftAbove, Camera.For(sloping));
    }
}

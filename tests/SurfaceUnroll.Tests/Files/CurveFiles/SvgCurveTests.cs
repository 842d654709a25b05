using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using static SurfaceUnroll.Tests.Curves.Measured;

namespace SurfaceUnroll.Tests.Files.CurveFiles;

/// <summary>Paths of the W3C specification "Scalable Vector Graphics (SVG) 1.1 (Second Edition)", by the names of its examples, and its units and transforms.</summary>
public class SvgCurveTests
{
    // One unit of the drawing is a millimetre.
    private static SpaceCurve Path(string data, string more = "") => FileJob.Read("a.svg", Svg($"<path d=\"{data}\"/>"), more).Curve;

    private static string Svg(string inner, string head = "width=\"1200mm\" height=\"400mm\" viewBox=\"0 0 1200 400\"") =>
        $"<?xml version=\"1.0\"?>\n<!DOCTYPE svg PUBLIC \"-//W3C//DTD SVG 1.1//EN\" \"http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd\">\n<svg xmlns=\"http://www.w3.org/2000/svg\" {head}>\n{inner}\n</svg>";

    [Fact]
    public void Example_triangle01_is_a_closed_triangle()
    {
        SpaceCurve triangle = Path("M 100 100 L 300 100 L 200 300 z");
        Assert.Equal(3, triangle.Pieces.Length);
        Near(200 + 2 * Math.Sqrt(100 * 100 + 200 * 200), triangle.Length, 1e-12);
        Near(triangle.Start.Point, triangle.End.Point, 1e-9);
    }

    [Fact]
    public void Example_cubic01_goes_on_as_the_mirror_image_of_its_handle()
    {
        SpaceCurve wave = Path("M100,200 C100,100 250,100 250,200 S400,300 400,200");
        Assert.Equal(2, wave.Pieces.Length);
        // The second cubic is C 250,300 400,300 400,200: the first, turned by a half turn about (250, 200). Of both the middle is 3/4 of the way to the handles.
        Near(new Vec3(0, 175, -125), wave.Pieces[0].At(0.5).Point, 1e-9);
        Near(new Vec3(0, 325, -275), wave.Pieces[1].At(0.5).Point, 1e-9);
        Assert.Equal(wave.PieceLengths[0], wave.PieceLengths[1], 1e-8);
    }

    [Fact]
    public void Example_quad01_goes_on_as_the_mirror_image_of_its_control_point()
    {
        SpaceCurve wave = Path("M200,300 Q400,50 600,300 T1000,300");
        Near(new Vec3(0, 400, -175), wave.Pieces[0].At(0.5).Point, 1e-9);
        Near(new Vec3(0, 800, -425), wave.Pieces[1].At(0.5).Point, 1e-9);
        // Half of a parabola of chord c and rise h: closed form of its length, with b = c/2 to either side.
        double h = 125, b = 200, root = Math.Sqrt(4 * h * h + b * b);
        Near(2 * (root + b * b / (2 * h) * Math.Log((2 * h + root) / b)), wave.Length, 1e-9);
    }

    [Theory]
    [InlineData("M300,200 h-150 a150,150 0 1,0 150,-150 z", 300 + 1.5 * Math.PI * 150, 0, 0)]
    [InlineData("M275,175 v-150 a150,150 0 0,0 -150,150 z", 300 + 0.5 * Math.PI * 150, 0, 0)]
    [InlineData("M300,200 h-150 a150 150 0 10 150-150z", 300 + 1.5 * Math.PI * 150, 0, 0)] // The same without commas: flags need nothing between them.
    public void Example_arcs01_pies_have_the_length_of_their_rim_and_two_radii(string data, double length, double x, double y)
    {
        Near(length + x + y, Path(data).Length, 1e-9);
    }

    [Fact]
    public void Example_arcs01_waves_grow_where_the_radii_do()
    {
        SpaceCurve row = Path("M600,350 l 50,-25 a25,25 -30 0,1 50,-25 l 50,-25 a25,50 -30 0,1 50,-25 l 50,-25 a25,75 -30 0,1 50,-25 l 50,-25 a25,100 -30 0,1 50,-25 l 50,-25");
        Assert.Equal(9, row.Pieces.Length);
        Near(new Vec3(0, 1050, -125), row.End.Point, 1e-9);
        // The chord √(50² + 25²) is more than twice the radius 25: the first ellipse is scaled up to a half circle over it, as appendix F.6.6 asks.
        Near(0.5 * Math.PI * Math.Sqrt(50 * 50 + 25 * 25), row.PieceLengths[1], 1e-9);
        Assert.True(row.PieceLengths[3] > row.PieceLengths[1] && row.PieceLengths[5] > row.PieceLengths[3] && row.PieceLengths[7] > row.PieceLengths[5]);
        // Each ends where the next begins, which the centre of each was computed to do.
        for (int i = 1; i < 9; i++) Near(row.Pieces[i - 1].At(1).Point, row.Pieces[i].At(0).Point, 1e-9);
    }

    [Theory]
    [InlineData("M 100 100 L 200 200", "M100 100L200 200")] // 8.3.1: superfluous white space may be left out.
    [InlineData("M 100 200 L 200 100 L -100 -200", "M 100 200 L 200 100 -100 -200")] // 8.3.1: a command that comes again may be left out.
    [InlineData("M 100 -200 L 5 6", "M 100-200L5 6")] // 8.3.9: “M 100-200” is two coordinates.
    [InlineData("M 0.6 .5 L 9 9", "M 0.6.5 9 9")] // 8.3.9: “M 0.6.5” too; pairs after a move are lines.
    [InlineData("M 1 1 l 10 0 l 0 1e1", "m1,1+10,0 0,1e1")] // Relative pairs after a relative first move.
    [InlineData("M0 0 C 10 10 20 10 30 0 C 40 -10 50 -10 60 0", "m0 0c10 10 20 10 30 0s20-10 30 0")]
    [InlineData("M0 0 L 30 0", "M0 0 A 0 10 0 0 1 30 0")] // F.6.2: an arc without a radius is a line.
    [InlineData("M0 0 A 30 30 0 0 1 30 30", "M0 0 a -30 30 45 0 1 30 30")] // F.6.6: radii lose their sign.
    [InlineData("M0 0 C 10 0 20 0 30 0", "M0 0 L 30 0")] // A cubic that is a straight line.
    public void Ways_of_writing_a_path_mean_the_same(string plain, string terse)
    {
        SpaceCurve a = Path(plain, ", \"pick\": 1"), b = Path(terse, ", \"pick\": 1");
        Near(a.Length, b.Length, 1e-12);
        for (int i = 0; i <= 8; i++) Near(a.AtLength(i * a.Length / 8).Point, b.AtLength(i * b.Length / 8).Point, 1e-9);
    }

    [Fact]
    public void After_a_close_places_go_on_from_where_the_part_began() // 8.3.3
    {
        SpaceCurve line = Path("M10 10 H 20 V 20 Z m 50 50 l 5 0", ", \"pick\": 2");
        Near(new Vec3(0, 60, -60), line.Start.Point, 1e-12);
        Near(new Vec3(0, 65, -60), line.End.Point, 1e-12);
    }

    [Theory]
    [InlineData("<rect x=\"100\" y=\"100\" width=\"400\" height=\"200\" rx=\"50\"/>", 2 * (300 + 100) + 2 * Math.PI * 50)] // Example rect02.
    [InlineData("<rect x=\"1\" y=\"1\" width=\"1198\" height=\"398\"/>", 2 * (1198 + 398))] // Example rect01.
    [InlineData("<circle cx=\"600\" cy=\"200\" r=\"100\"/>", 200 * Math.PI)] // Example circle01.
    [InlineData("<ellipse transform=\"translate(900 200) rotate(-30)\" rx=\"250\" ry=\"100\"/>", 1150.655630)] // Example ellipse01; its length is the trapezoidal sum of 200,000 steps of the integral.
    [InlineData("<line x1=\"100\" y1=\"300\" x2=\"300\" y2=\"100\"/>", 282.8427125)] // Example line01, first line.
    [InlineData("<polygon points=\"850,75  958,137.5 958,262.5 850,325 742,262.6 742,137.5\"/>", 749.173173)] // Example polygon01, second one; the sum of its six sides.
    [InlineData("<polyline points=\"50,375 150,375 150,325 250,325 250,375 350,375\"/>", 400)] // Example polyline01, its beginning.
    public void Basic_shapes_have_their_lengths(string shape, double length) => Near(length, FileJob.Read("a.svg", Svg(shape)).Curve.Length, 1e-5);

    [Theory]
    [InlineData("width=\"100mm\" height=\"50mm\" viewBox=\"0 0 100 50\"", 30)]
    [InlineData("width=\"10cm\" height=\"5cm\" viewBox=\"0 0 200 100\"", 15)]
    [InlineData("width=\"2in\" height=\"1in\" viewBox=\"0 0 144 72\"", 30 * 25.4 / 72)]
    [InlineData("width=\"100mm\" height=\"100mm\" viewBox=\"0 0 200 100\"", 15)] // Fits the width: 7.8, preserveAspectRatio.
    [InlineData("width=\"96\" height=\"96\"", 30 * 25.4 / 96)]
    public void Units_follow_size_and_view_box(string head, double length) =>
        Assert.Equal(length, FileJob.Read("a.svg", Svg("<path d=\"M0 0H30\"/>", head)).Curve.Length, 1e-9);

    [Fact]
    public void Drawing_in_pixels_is_warned_of_and_can_be_told_its_unit()
    {
        string drawing = Svg("<path d=\"M0 0H30\"/>", "width=\"96\" height=\"96\"");
        Assert.Single(FileJob.Read("a.svg", drawing).Notices, n => n is { Code: "file-no-unit", Severity: Severity.Warning });
        (SpaceCurve curve, Notice[] notices) = FileJob.Read("a.svg", drawing, ", \"fileUnits\": \"mm\"");
        Assert.Equal(30, curve.Length, 1e-9);
        Assert.Empty(notices);
    }

    [Fact]
    public void Transforms_of_groups_around_come_after_those_within_and_up_is_minus_y()
    {
        SpaceCurve line = FileJob.Read("a.svg", Svg("<g transform=\"translate(10,20) scale(2)\"><g transform=\"rotate(90)\"><path transform=\"matrix(1 0 0 1 5 0)\" d=\"M0 0 H10\"/></g></g>")).Curve;
        // (0,0) → (5,0) → (0,5) → (10, 30); (10,0) → (15,0) → (0,15) → (10, 50).
        Near(new Vec3(0, 10, -30), line.Start.Point, 1e-12);
        Near(new Vec3(0, 10, -50), line.End.Point, 1e-12);
    }

    [Fact]
    public void Circle_scaled_unevenly_is_an_exact_ellipse()
    {
        SpaceCurve ellipse = FileJob.Read("a.svg", Svg("<circle transform=\"scale(2 1)\" cx=\"50\" cy=\"0\" r=\"30\"/>")).Curve;
        foreach (CurveSample s in ellipse.Samples()) Assert.Equal(1, Math.Pow((s.Point.Y - 100) / 60, 2) + Math.Pow(s.Point.Z / 30, 2), 1e-12);
    }

    [Fact]
    public void Path_and_group_are_chosen_by_their_names()
    {
        string drawing = Svg("<g id=\"front\"><path id=\"p\" d=\"M0 0H30\"/></g><g xmlns:k=\"urn:k\" k:label=\"Rear side\"><path id=\"q\" d=\"M0 9H50\"/></g><defs><path d=\"M0 0H99\"/></defs><path style=\"display: none\" d=\"M0 0H98\"/>");
        Assert.Equal(50, FileJob.Read("a.svg", drawing, ", \"path\": \"q\"").Curve.Length, 1e-9);
        Assert.Equal(50, FileJob.Read("a.svg", drawing, ", \"layer\": \"rear side\"").Curve.Length, 1e-9);
        Assert.Equal(30, FileJob.Read("a.svg", drawing, ", \"layer\": \"front\"").Curve.Length, 1e-9);
        Assert.Equal(50, FileJob.Read("a.svg", drawing, ", \"pick\": \"longest\"").Curve.Length, 1e-9);
        Assert.Equal(30, FileJob.Read("a.svg", drawing, ", \"pick\": 2").Curve.Length, 1e-9);
    }

    [Fact]
    public void Handle_without_length_leaves_the_curve_where_it_was_and_gives_it_a_direction()
    {
        SpaceCurve curve = Path("M0 0 C 0 0 100 100 200 0");
        Near(Math.PI / 4, Math.Atan2(-curve.Start.D1.Z, curve.Start.D1.Y), 1e-9);
        // The curve without its nudge at a half: (3·100 + 200)/8, 3·100/8.
        Near(new Vec3(0, 62.5, -37.5), curve.Pieces[0].At(0.5).Point, 0.01);
    }
}

using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using static SurfaceUnroll.Tests.Published.PublishedShapes;

namespace SurfaceUnroll.Tests.Published;

/// <summary>Cones. A measured curve is never a single point, so a whole cone is tested by the part of it below half its height: it has the sector
/// angle of the whole and three quarters of its area.</summary>
public class ConeTests
{
    /// <summary>Cone with its tip at x = 0, from half its height to its base; the base centre lies off the axis by <paramref name="offset"/>.</summary>
    private static PanelDevelopment LowerHalf(double radius, double height, double offset = 0) =>
        Develop(Circle(radius / 2, height / 2, offset / 2), Circle(radius, height, offset));

    /// <summary>Angle on the blank from the left to the right end line, turning with the lines.</summary>
    private static double SectorDegrees(PanelDevelopment panel)
    {
        double angle = 0;
        for (int i = 1; i < panel.Elements.Length; i++)
        {
            Vec2 a = panel.Elements[i - 1].Rear - panel.Elements[i - 1].Front, b = panel.Elements[i].Rear - panel.Elements[i].Front;
            angle += Math.Atan2(a.Cross(b), a.Dot(b));
        }
        return Math.Abs(angle) / Degree;
    }

    [Theory]
    // "Sheet and Plate Metal Work", ch. XII (public domain): cap Ø 3, slant 2: three quarters of a circle.
    [InlineData(1.5, 1.3228756555322954, 270, 9.42477796)]
    // E. M. Longfield, Sheet Metal Drafting, ch. 5 (public domain): base 4, height 7; figures computed (360·r/slant, π·r·slant).
    [InlineData(2, 7, 98.8996, 45.7423)]
    public void Cone_has_its_published_sector_and_area(double radius, double height, double sector, double area)
    {
        // In units of 10 mm, so that the size is that of a real piece.
        PanelDevelopment cone = LowerHalf(10 * radius, 10 * height);
        Assert.Equal(Verdict.BendsOnly, cone.Verdict);
        Assert.Equal(sector, SectorDegrees(cone), 5e-5);
        Near(area, cone.FlatArea / 0.75 / 100, 2e-6);
        Near(Math.Sqrt(radius * radius + height * height), cone.Elements[0].Length / 5, 1e-9);
    }

    [Fact]
    public void Frustum_has_its_published_pattern()
    {
        // Longfield p. 128: Ø 6 to Ø 3, height 3; figures computed.
        PanelDevelopment frustum = Develop(Circle(15, 0), Circle(30, 30));
        Assert.All(frustum.Elements, e => Assert.Equal(33.54102, e.Length, 1e-5));
        Assert.Equal(160.997, SectorDegrees(frustum), 1e-3);
        Assert.Equal(4741.75, frustum.FlatArea, 0.01);
        // Radii 6.7082 and 3.3541 about the point where all lines meet.
        ElementLine line = frustum.Elements[0];
        Vec2 apex = line.Front + (line.Front - line.Rear);
        Assert.All(frustum.Elements, e => Assert.Equal(33.541, (e.Front - apex).Length, 1e-3));
        Assert.All(frustum.Elements, e => Assert.Equal(67.082, (e.Rear - apex).Length, 1e-3));
    }

    [Fact]
    public void Oblique_cone_with_its_tip_above_the_rim_has_the_area_of_the_closed_form()
    {
        // r = 1, h = 3: R. W. Gosper, math-fun list, 2010: area πhr·₃F₂(−1/2, 1/4, 3/4; 1/2, 1; −4r²/h²); the angle is computed by quadrature.
        PanelDevelopment cone = LowerHalf(100, 300, 100);
        Assert.Equal(Verdict.BendsOnly, cone.Verdict);
        Near(10.155994733, cone.FlatArea / 0.75 / 10_000, 1e-7);
        Assert.Equal(106.678513, SectorDegrees(cone), 2e-6);
    }

    [Fact]
    public void Cone_of_a_metre_is_cut_within_a_hundredth_of_a_millimetre()
    {
        PanelDevelopment cone = Develop(Circle(300, 0), Circle(600, 1000));
        double slant = Math.Sqrt(1e6 + 9e4);
        ElementLine line = cone.Elements[0];
        Vec2 apex = line.Front + (line.Front - line.Rear);
        Assert.All(cone.Edge("front").WithMiddles(), p => Assert.Equal(slant, (p - apex).Length, 0.01));
        Assert.All(cone.Edge("rear").WithMiddles(), p => Assert.Equal(2 * slant, (p - apex).Length, 0.01));
    }
}

using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using static SurfaceUnroll.Tests.Published.PublishedShapes;

namespace SurfaceUnroll.Tests.Published;

/// <summary>A pipe cut by a slanting plane develops to a sine: y = 100 cos(x/100) for Ø 200 at 45° (mathcentral.uregina.ca, question QQ.09.07); in
/// general u(x) = r tan β sin(x/r) (Apostol &amp; Mnatsakanian, "Unwrapping curves from cylinders and cones", Amer. Math. Monthly 114, 2007, 388).</summary>
public class CutPipeTests
{
    /// <summary>Circle at x = 0; rear cut where height = slope·(aft − length), on the same cylinder: its plan is the ellipse, here at 45° a circle.</summary>
    private static PanelDevelopment Pipe(double radius, double length)
    {
        var plan = new RunSpec([new ArcStep(radius, 2 * Math.PI)], 0, new Vec2(-radius, length), Placement.None);
        var cut = new PlanSideSpec(plan, [new Vec2(0, -length), new Vec2(2 * length, length)], Fit.Straight, Placement.None);
        return Develop(Circle(radius, 0), cut);
    }

    [Fact]
    public void Pipe_of_200_cut_at_45_degrees_has_the_sine_of_the_formula_for_its_edge()
    {
        PanelDevelopment pipe = Pipe(100, 300);
        Assert.Equal(Verdict.BendsOnly, pipe.Verdict);
        Near(200 * Math.PI, pipe.Edge("front").FlatLength, 1e-9);
        // Ellipse perimeter with half-axes 100√2 and 100, computed from the complete elliptic integral.
        Assert.Equal(764.03956, pipe.Edge("rear").FlatLength, 5e-6);
        Near(2 * Math.PI * 100 * 300, pipe.FlatArea, 1e-7);
        foreach (ElementLine line in pipe.Elements) Assert.Equal(300 + 100 * Math.Sin(line.FrontLength / 100), line.Length, 1e-6);
    }

    [Fact]
    public void Pipe_of_a_metre_is_cut_within_a_hundredth_of_a_millimetre()
    {
        const double r = 500, length = 1000;
        PanelDevelopment pipe = Pipe(r, length);
        // The front edge lies level at the top of the blank, its middle on the upright centre line.
        double level = pipe.Edge("front").Flat[0].Y;
        Assert.All(pipe.Edge("front").Flat, p => Assert.Equal(level, p.Y, 0.001));
        double left = pipe.Edge("front").Flat[0].X;
        foreach (Vec2 p in pipe.Edge("rear").WithMiddles()) Assert.Equal(level - length - r * Math.Sin((p.X - left) / r), p.Y, 0.01);
    }
}

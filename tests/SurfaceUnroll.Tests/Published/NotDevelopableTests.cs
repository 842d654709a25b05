using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using static SurfaceUnroll.Tests.Published.PublishedShapes;

namespace SurfaceUnroll.Tests.Published;

/// <summary>Surfaces of Gaussian curvature other than zero (any text on differential geometry) must not be called bend-only.</summary>
public class NotDevelopableTests
{
    private static SpaceSpec Helix(double radius, double pitch, double turns = 1) => new(
        [.. Enumerable.Range(0, 73).Select(i => turns * 2 * Math.PI * i / 72).Select(t =>
            new Vec3(pitch * t / (2 * Math.PI), -radius * Math.Cos(t), radius * Math.Sin(t)))],
        Fit.Smooth, Placement.None);

    private static void NeedsStretching(CurveSpec front, CurveSpec rear)
    {
        PanelDevelopment panel = Develop(front, rear);
        Assert.NotEqual(Verdict.BendsOnly, panel.Verdict);
        // The verdict's own limit is 0.1 %.
        Assert.True(Math.Max(panel.Strain.MaxShrink, panel.Strain.MaxStretch) > 1e-3);
    }

    [Fact]
    public void Helicoid_between_its_axis_and_a_helix_needs_stretching() =>
        // K = −c²/(c² + u²)². No plane holds the axis and a tangent of the helix, so no line at all is free of twist.
        NeedsStretching(new SpaceSpec([new(0, 0, 0), new(150, 0, 0)], Fit.Straight, Placement.None), Helix(100, 300, 0.5));

    [Fact]
    public void Hyperbolic_paraboloid_needs_stretching()
    {
        // z = xy/c with c = 200: K = −c²/(c² + x² + y²)².
        SpaceSpec Line(double x) => new([new(x, -100, -x * 100 / 200), new(x, 100, x * 100 / 200)], Fit.Straight, Placement.None);
        NeedsStretching(Line(-100), Line(100));
    }

    [Fact]
    public void Auger_flight_needs_stretching() =>
        // Outer Ø 9, inner Ø 2.875, pitch 9 (in): two published shop methods give different blanks (Ø 9.445/Ø 3.995, or radii 5.370/2.308 over
        // 316.58°), which is the sign that neither is a plain development.
        NeedsStretching(Helix(25.4 * 2.875 / 2, 25.4 * 9), Helix(25.4 * 9 / 2, 25.4 * 9));
}

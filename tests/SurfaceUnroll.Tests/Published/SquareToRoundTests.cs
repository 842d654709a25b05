using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using static SurfaceUnroll.Tests.Published.PublishedShapes;

namespace SurfaceUnroll.Tests.Published;

/// <summary>Square of 200 to a circle of radius 50, height 150. Dimensions: Mathematics Stack Exchange, question 4634599; figures computed. Method:
/// F. S. Kidder, Triangulation Applied to Sheet Metal Pattern Cutting, 1920 (public domain).</summary>
public class SquareToRoundTests
{
    private static readonly PanelDevelopment Transition = Develop(
        new PointsSpec(
            [.. new Vec2[] { new(-100, 0), new(-100, 100), new(100, 100), new(100, -100), new(-100, -100), new(-100, 0) }.Select(p => new ProfilePoint(p, false))],
            false, Fit.Straight, Placement.None),
        Circle(50, 150));

    private static ElementLine[] FromTopLeftCorner => [.. Transition.Elements.Where(e => (e.FormedFront - new Vec3(0, -100, 100)).Length < 1e-6)];

    [Fact]
    public void Transition_only_bends() => Assert.Equal(Verdict.BendsOnly, Transition.Verdict);

    [Fact]
    public void Lines_from_a_corner_have_the_lengths_of_the_triangulation()
    {
        // Angle round the circle from the side of the square: 0°, 22.5°, 45°. Any line of the fan obeys √((100 − 50 cos φ)² + (100 − 50 sin φ)² + 150²).
        double Length(double degrees) => Math.Sqrt(
            Math.Pow(100 - 50 * Math.Cos(degrees * Degree), 2) + Math.Pow(100 - 50 * Math.Sin(degrees * Degree), 2) + 22500);
        Assert.Equal([187.0829, 178.7019, 175.6641], new double[] { 0, 22.5, 45 }.Select(d => Math.Round(Length(d), 4)));
        ElementLine[] fan = FromTopLeftCorner;
        Assert.All(fan, e => Assert.Equal(Length(Math.Atan2(e.FormedRear.Z, -e.FormedRear.Y) / Degree), (e.Rear - e.Front).Length, 1e-7));
        Assert.Equal(187.0829, fan.Max(e => e.Length), 5e-5);
        Assert.Equal(175.6641, fan.Min(e => e.Length), 5e-5);
    }

    [Fact]
    public void Corner_takes_its_sector_and_each_side_its_flat_triangle()
    {
        ElementLine[] fan = FromTopLeftCorner;
        Assert.Equal(23.64939, Angle(fan[0].Rear - fan[0].Front, fan[^1].Rear - fan[^1].Front), 1e-4);
        // The triangle on the top side: between the last line of this corner and the first of the next.
        ElementLine next = Transition.Elements.First(e => (e.FormedFront - new Vec3(0, 100, 100)).Length < 1e-6);
        Assert.Equal(64.62307, Angle(fan[^1].Front - fan[^1].Rear, next.Front - next.Rear), 1e-5);
        Assert.Equal(158.1139, Transition.Elements[0].Length, 5e-5);
        Assert.Equal(89811.95, Transition.FlatArea, 0.02);
    }

    private static double Angle(Vec2 a, Vec2 b) => Math.Abs(Math.Atan2(a.Cross(b), a.Dot(b))) / Degree;
}

using SurfaceUnroll.Curves;
using SurfaceUnroll.Flattening;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;
using static SurfaceUnroll.Tests.Published.PublishedShapes;

namespace SurfaceUnroll.Tests.Published;

/// <summary>The tangents of a helix of radius R and pitch 2πa make a sheet that only bends and lies flat as a ring: the helix becomes a circle of the
/// same curvature R/(R² + a²) (any text on differential geometry). R = a = 1: inner radius 2, one turn takes 2π√2/2 = 254.558°.</summary>
public class HelixTests
{
    private const double Scale = 200, Near1 = 0.5, Far = 2.5;

    private static Vec3 Place(double t, double along)
    {
        double k = along / Math.Sqrt(2);
        return Scale * new Vec3(t + k, Math.Sin(t) + k * Math.Cos(t), Math.Cos(t) - k * Math.Sin(t));
    }

    private static SpaceSpec Measured(double along, int spans) =>
        new([.. Enumerable.Range(0, spans + 1).Select(i => Place(2 * Math.PI * i / spans, along))], Fit.Smooth, Placement.None);

    private static SpaceCurve Exact(double along)
    {
        double k = along / Math.Sqrt(2);
        return AnalyticPiece.Curve(
            0, 2 * Math.PI, t => Place(t, along),
            t => Scale * new Vec3(1, Math.Cos(t) - k * Math.Sin(t), -Math.Sin(t) - k * Math.Cos(t)),
            t => Scale * new Vec3(0, -Math.Sin(t) - k * Math.Cos(t), -Math.Cos(t) + k * Math.Sin(t)));
    }

    // Along its first line the ring's inner circle is touched where that line leaves the helix, and its centre lies square to it.
    private static Vec2 Centre(Vec2 front, Vec2 rear, Vec2 nextRear)
    {
        Vec2 along = (rear - front).Unit, touch = front - (Scale * Near1) * along;
        double side = Math.Sign(along.Cross(nextRear - rear));
        return touch + (side * 2 * Scale) * along.Left;
    }

    [Fact]
    public void Tangent_sheet_of_a_helix_lies_flat_as_its_ring()
    {
        Blank blank = LayFlat(Exact(Near1), Exact(Far));
        FlatLine[] lines = [.. blank.FlatLines];
        Vec2 centre = Centre(lines[0].Front, lines[0].Rear, lines[1].Rear);
        double inner = Scale * Math.Sqrt(4 + Near1 * Near1), outer = Scale * Math.Sqrt(4 + Far * Far);
        Assert.All(lines, l => Assert.Equal(inner, (l.Front - centre).Length, 0.01));
        Assert.All(lines, l => Assert.Equal(outer, (l.Rear - centre).Length, 0.01));
        Assert.Equal(254.558, Sweep(lines, centre), 0.001);
        Assert.All(lines, l => Assert.Equal((Far - Near1) * Scale, (l.Rear - l.Front).Length, 1e-4));
    }

    [Fact]
    public void Tangent_sheet_measured_by_points_is_called_bend_only()
    {
        PanelDevelopment sheet = Develop(Measured(Near1, 72), Measured(Far, 72));
        Assert.Equal(Verdict.BendsOnly, sheet.Verdict);
        Near(Scale * Math.PI * 2 * Math.Sqrt(2) / 2 * Math.Sqrt(4 + Near1 * Near1), sheet.Edge("front").FlatLength, 1e-6);
    }

    private static double Sweep(FlatLine[] lines, Vec2 centre)
    {
        double angle = 0;
        for (int i = 1; i < lines.Length; i++)
        {
            Vec2 a = lines[i - 1].Front - centre, b = lines[i].Front - centre;
            angle += Math.Atan2(a.Cross(b), a.Dot(b));
        }
        return Math.Abs(angle) / Degree;
    }
}

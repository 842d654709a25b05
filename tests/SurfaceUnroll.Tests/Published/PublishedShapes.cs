using System.Collections.Immutable;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Lofting;
using SurfaceUnroll.Patterns;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Tests.Published;

/// <summary>Runs whole jobs for shapes whose development is published or known in closed form.</summary>
internal static class PublishedShapes
{
    public const double Degree = Math.PI / 180;

    /// <summary>The one panel of a job between two curves that may not fail.</summary>
    public static PanelDevelopment Develop(CurveSpec front, CurveSpec rear)
    {
        Development result = Developer.Develop(JobOf(front, rear));
        Assert.False(result.Failed, string.Join("; ", result.Notices.Select(n => n.Message)));
        return Assert.Single(result.Panels);
    }

    public static Job JobOf(CurveSpec front, CurveSpec rear) => new(
        "Published", LengthUnit.Millimetre, new SheetStock("mild steel", 0), MeasuredFace.Middle,
        [new NamedCurve("front", front), new NamedCurve("rear", rear)],
        [new PanelSpec("sheet", ["front", "rear"], ElementMatching.BendOnly)], PaperSpec.Default);

    /// <summary>The blank between curves that are given by formula rather than measured.</summary>
    public static Blank LayFlat(SpaceCurve front, SpaceCurve rear) =>
        Blank.Of(Loft.Between(front, rear, ElementMatching.BendOnly));

    /// <summary>A full circle in a plane square to x, from its left side over the top.</summary>
    public static RunSpec Circle(double radius, double aft, double across = 0) =>
        new([new ArcStep(radius, 2 * Math.PI)], 0, new Vec2(across - radius, 0), Placement.None with { Origin = new Vec3(aft, 0, 0) });

    public static BlankEdge Edge(this PanelDevelopment panel, string name) => panel.Edges.Single(e => e.Name == name);

    /// <summary>Points of a polyline and, where it is furthest from the curve it stands for, the middles of its segments.</summary>
    public static ImmutableArray<Vec2> WithMiddles(this BlankEdge edge) =>
        [.. edge.Flat, .. edge.Flat.Zip(edge.Flat.Skip(1), (a, b) => 0.5 * (a + b))];

    public static void Near(double expected, double actual, double relative) =>
        Assert.True(Math.Abs(actual - expected) <= relative * Math.Abs(expected), $"expected {expected:R}, got {actual:R}");
}

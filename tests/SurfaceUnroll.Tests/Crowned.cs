using System.Collections.Immutable;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Lofting;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Tests;

/// <summary>Crowned sheets and jobs of them, mm.</summary>
internal static class Crowned
{
    /// <summary>Sections of a ball across the x axis: arcs of one angle either side of the top.</summary>
    public static ImmutableArray<SpaceCurve> Ball(double radius, double halfAngle, params double[] stations) =>
        [.. stations.Select(x => AnalyticPiece.Arc(new Vec3(x, 0, 0), Shapes.Z, Shapes.Y, Math.Sqrt(radius * radius - x * x), -halfAngle, halfAngle))];

    /// <summary>Bowed three ways and not its own mirror image.</summary>
    public static ImmutableArray<CurveSpec> Side { get; } =
    [
        Points(0, 0, (-88, 0), (-50, 23), (0, 34), (48, 27), (78, 4)),
        Points(150, 16, (-112, -6), (-68, 37), (0, 56), (62, 43), (98, 2)),
        Points(300, 0, (-80, 0), (-46, 17), (0, 26), (40, 20), (66, 2)),
    ];

    /// <summary>Arched both ways, its own mirror image.</summary>
    public static ImmutableArray<CurveSpec> Dome { get; } = [Chord(0, 0, 160, 20), Chord(90, 14, 180, 26), Chord(180, 0, 160, 20)];

    /// <summary>Arched across and hollow lengthwise.</summary>
    public static ImmutableArray<CurveSpec> Saddle { get; } = [Chord(0, 0, 160, 20), Chord(90, -14, 160, 20), Chord(180, 0, 160, 20)];

    /// <summary>The curves of measures.</summary>
    public static ImmutableArray<SpaceCurve> Curves(ImmutableArray<CurveSpec> specs) => [.. specs.Select(s => MeasuredCurve.Build(s, "test").Curve!)];

    /// <summary>The middle surface, measured there.</summary>
    public static SheetGrid Grid(ImmutableArray<CurveSpec> specs) => CrownedLoft.Through(Curves(specs), 0);

    /// <summary>A job of one panel through curves.</summary>
    public static Job JobOf(ImmutableArray<CurveSpec> curves, Func<PanelSpec, PanelSpec>? how = null, string material = "mild steel", double thickness = 0)
    {
        NamedCurve[] named = [.. curves.Select((c, i) => new NamedCurve($"c{i}", c))];
        var spec = new PanelSpec("sheet", [.. named.Select(n => n.Name)], ElementMatching.BendOnly);
        return new Job(
            "Test", LengthUnit.Millimetre, new SheetStock(material, thickness), MeasuredFace.Outside, [.. named], [how?.Invoke(spec) ?? spec], PaperSpec.Default);
    }

    /// <summary>A development that may not fail.</summary>
    public static Development Develop(ImmutableArray<CurveSpec> curves, Func<PanelSpec, PanelSpec>? how = null)
    {
        Development result = Developer.Develop(JobOf(curves, how));
        Assert.False(result.Failed, string.Join("; ", result.Notices.Select(n => n.Message)));
        return result;
    }

    /// <summary>The larger of stretch and shrink.</summary>
    public static double Worst(StrainSummary strain) => Math.Max(strain.MaxStretch, strain.MaxShrink);

    /// <summary>Length of a path.</summary>
    public static double Length(IEnumerable<Vec3> path)
    {
        Vec3[] places = [.. path];
        return places.Zip(places.Skip(1), (a, b) => (b - a).Length).Sum();
    }

    /// <summary>Distance of a place from a path of straight steps.</summary>
    public static double Distance(Vec3 p, IReadOnlyList<Vec3> path)
    {
        double nearest = double.PositiveInfinity;
        for (int i = 1; i < path.Count; i++)
        {
            Vec3 a = path[i - 1], along = path[i] - a;
            double t = along.Length > 0 ? Math.Clamp((p - a).Dot(along) / along.Dot(along), 0, 1) : 0;
            nearest = Math.Min(nearest, (p - a - t * along).Length);
        }
        return nearest;
    }

    private static PointsSpec Points(double aft, double up, params (double, double)[] points) =>
        SurfaceUnroll.Tests.Curves.Measured.Points(Fit.Smooth, false, points) with { At = Placement.None with { Origin = new Vec3(aft, 0, up) } };

    private static ChordSpec Chord(double aft, double up, double chord, double rise) => new(chord, rise, Placement.None with { Origin = new Vec3(aft, 0, up) });
}

using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Tests.Plates;

/// <summary>Jobs of plates for tests.</summary>
internal static class PlateJobs
{
    public static readonly SheetStock Steel = new("mild steel", 1);

    /// <summary>A point list of sharp corners, upright in the plane x = 0.</summary>
    public static PointsSpec Corners(params Vec2[] points) => new([.. points.Select(p => new ProfilePoint(p, false))], false, Fit.Straight, Placement.None);

    /// <summary>A closed rectangle about the origin of its plane.</summary>
    public static PointsSpec Rectangle(double width, double height, Placement at = default) =>
        new([.. new Vec2[] { new(-width / 2, 0), new(-width / 2, height), new(width / 2, height), new(width / 2, 0), new(-width / 2, 0) }.Select(p => new ProfilePoint(p, false))], false, Fit.Straight, at);

    /// <summary>A closed circle about the origin of its plane.</summary>
    public static RunSpec Circle(double radius, Placement at = default) => new([new ArcStep(radius, 2 * Math.PI)], 0, new Vec2(-radius, 0), at);

    public static Placement Flat => new(Vec3.Zero, 0, Math.PI / 2, 0);

    public static PanelSpec Flat2(string name, params string[] curves) => new(name, [], ElementMatching.BendOnly) { Flat = new FlatSpec([.. curves], null) };

    public static PanelSpec Bent(string name, BentSpec bent) => new(name, [], ElementMatching.BendOnly) { Bent = bent };

    public static Job Job(SheetStock sheet, IEnumerable<(string Name, CurveSpec Spec)> curves, params PanelSpec[] panels) =>
        new("test", LengthUnit.Millimetre, sheet, MeasuredFace.Outside, [.. curves.Select(c => new NamedCurve(c.Name, c.Spec))], [.. panels], PaperSpec.Default);

    /// <summary>The job with joints.</summary>
    public static Job Joined(this Job job, params JointSpec[] joints) => job with { Joints = [.. joints] };

    public static Development Run(Job job)
    {
        Development done = Developer.Develop(job);
        Assert.True(!done.Failed, string.Join("\n", done.Notices.Where(n => n.Severity == Severity.Error).Select(n => $"{n.Code}: {n.Message}")));
        return done;
    }

    public static PanelDevelopment Develop(PanelSpec panel, SheetStock? sheet = null, params (string Name, CurveSpec Spec)[] curves) => Run(Job(sheet ?? Steel, curves, panel)).Panels[0];

    /// <summary>Area inside a closed outline by the shoelace formula.</summary>
    public static double Area(ImmutableArray<Vec2> loop) => Math.Abs(loop.Select((p, i) => 0.5 * p.Cross(loop[(i + 1) % loop.Length])).Sum());
}

using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Tests.Uncertainty;

/// <summary>Small jobs whose readings have errors.</summary>
internal static class ErrorJobs
{
    /// <summary>The same error for every reading.</summary>
    public static ReadingErrors All(double error) => ReadingErrors.None with { Each = error };

    /// <summary>Errors of single readings.</summary>
    public static ReadingErrors Own(double each, params (string Part, double Error)[] own) =>
        new(each, ReadingErrors.None.Own.AddRange(own.Select(o => KeyValuePair.Create(o.Part, o.Error))));

    /// <summary>A job of sheet without thickness.</summary>
    public static Job Job(IEnumerable<(string Name, CurveSpec Spec)> curves, params PanelSpec[] panels) => new(
        "Errors", LengthUnit.Millimetre, new SheetStock("mild steel", 0), MeasuredFace.Middle, [.. curves.Select(c => new NamedCurve(c.Name, c.Spec))], [.. panels], PaperSpec.Default);

    /// <summary>A flat plate inside a curve.</summary>
    public static PanelSpec Plate(params string[] curves) => new("plate", [], ElementMatching.BendOnly) { Flat = new FlatSpec([.. curves], null) };

    /// <summary>A bent plate of one width.</summary>
    public static PanelSpec Bent(SideProfile side, double width, double error) =>
        new("plate", [], ElementMatching.BendOnly) { Bent = new BentSpec([], side, null, Placement.None) { Width = width, Errors = All(error) } };

    /// <summary>A run of one arc, radians.</summary>
    public static RunSpec Arc(double radius, double turn, ReadingErrors errors) => new([new ArcStep(radius, turn)], 0, null, Placement.None) { Errors = errors };

    /// <summary>A mirrored arch through points, and a plate inside it.</summary>
    public static Job Arch(ReadingErrors errors) =>
        Job([("arch", new PointsSpec([.. new[] { (0.0, 175.0), (62, 158), (104, 110.5), (120, 40), (120, 0) }.Select(p => new ProfilePoint(new Vec2(p.Item1, p.Item2), false))], true, Fit.Smooth, Placement.None) { Errors = errors })], Plate("arch"));

    /// <summary>What came out for the one panel of a job.</summary>
    public static BlankError Develop(Job job)
    {
        Development development = Developer.Develop(job);
        Assert.False(development.Failed, string.Join("; ", development.Notices.Select(n => n.Message)));
        return Assert.Single(development.Panels).Error ?? throw new Xunit.Sdk.XunitException("No band");
    }

    /// <summary>The bands along one edge.</summary>
    public static ImmutableArray<double> Bands(BlankError error, string edge) => [.. error.Edges.Single(e => e.Name == edge).Places.Select(p => p.Band)];
}

using System.Collections.Immutable;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Tests.Curves;

/// <summary>Short ways to write measured curves in tests; angles in degrees as in a job file.</summary>
internal static class Measured
{
    public const double Degree = Math.PI / 180;

    public static PointsSpec Points(Fit fit, bool mirror, params (double Across, double Up)[] points) =>
        new([.. points.Select(p => new ProfilePoint(new Vec2(p.Across, p.Up), false))], mirror, fit, Placement.None);

    public static PointsSpec WithCorners(this PointsSpec spec, params int[] corners) =>
        spec with { Points = [.. spec.Points.Select((p, i) => p with { Corner = corners.Contains(i) })] };

    public static SpaceSpec Space(Fit fit, params Vec3[] points) => new([.. points], fit, Placement.None);

    public static RunSpec Run(params RunStep[] steps) => new([.. steps], 0, null, Placement.None);

    public static LineStep Line(double length) => new(length);

    public static ArcStep Arc(double radius, double turn) => new(radius, turn * Degree);

    public static Placement At(Vec3 origin = default, double roll = 0, double lean = 0, double turn = 0) =>
        new(origin, roll * Degree, lean * Degree, turn * Degree);

    public static SpaceCurve Curve(CurveSpec spec)
    {
        CurveReading reading = MeasuredCurve.Build(spec, "curves.test");
        Assert.True(reading.Curve is not null, string.Join("; ", reading.Notices.Select(n => n.Message)));
        return reading.Curve;
    }

    /// <summary>The only error of a curve that cannot be used.</summary>
    public static Notice Fault(CurveSpec spec)
    {
        CurveReading reading = MeasuredCurve.Build(spec, "curves.test");
        Assert.Null(reading.Curve);
        Notice notice = Assert.Single(reading.Notices, n => n.Severity == Severity.Error);
        Assert.False(string.IsNullOrWhiteSpace(notice.Mend));
        return notice;
    }

    public static void Near(double expected, double actual, double relative) =>
        Assert.True(Math.Abs(actual - expected) <= relative * Math.Abs(expected), $"expected {expected:R}, got {actual:R}");

    public static void Near(Vec3 expected, Vec3 actual, double absolute) =>
        Assert.True((actual - expected).Length <= absolute, $"expected {expected}, got {actual}");

    /// <summary>Points on a curve at equal fractions of every piece.</summary>
    public static ImmutableArray<CurveSample> Samples(this SpaceCurve curve, int perPiece = 8) =>
        [.. curve.Pieces.SelectMany(p => Enumerable.Range(0, perPiece + 1).Select(i => p.At((double)i / perPiece)))];
}

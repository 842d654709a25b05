using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Lofting.Nearest;

namespace SurfaceUnroll.Benchmarks.Freedom;

/// <summary>What the search for the nearest edge takes, warm: on covers and cones whose rear arch is dented, at the middle and at the side, with a freedom that is enough and with one that is not, and on two straight
/// skew edges. Goal: half a second each.</summary>
internal static class FreedomTimes
{
    private const int Warm = 2, Runs = 7;

    public static int Run()
    {
        SpaceCurve arch = Built(new RunSpec([new LineStep(55), new ArcStep(120, Math.PI), new LineStep(55)], 0, null, Placement.None with { Lean = 25 * Math.PI / 180 }));
        SpaceCurve circle = Built(new ChordSpec(240, 120, Placement.None));
        foreach (bool middle in new[] { true, false })
            foreach (double freedom in new[] { 6, 0.05 })
            {
                string place = middle ? "middle" : "side";
                Time($"cover, dent at the {place}, {Mm(freedom)}", arch, Built(Dented(middle ? 90 : 55, 120, 175, Placement.None with { Lean = 0.5 * Math.PI })), freedom);
                Time($"cone, dent at the {place}, {Mm(freedom)}", circle, Built(Dented(middle ? 90 : 55, 150, 0, Placement.None with { Origin = new Vec3(300, 0, 0) })), freedom);
            }
        SpaceCurve front = Built(new PointsSpec([P(-300, 5), P(300, -5)], false, Fit.Straight, Placement.None)), rear = Built(new PointsSpec([P(-300, -5), P(300, 5)], false, Fit.Straight, Placement.None with { Origin = new Vec3(400, 0, 0) }));
        Time("skew edges, 4 mm", front, rear, 4, new EdgePlane(new Vec3(400, 0, 0), new Vec3(0, 1, 0), new Vec3(0, 0, 1)));
        return 0;
    }

    private static void Time(string name, SpaceCurve still, SpaceCurve moved, double freedom, EdgePlane? plane = null)
    {
        var times = new List<double>();
        FreedomResult? found = null;
        for (int run = 0; run < Warm + Runs; run++)
        {
            var clock = Stopwatch.StartNew();
            found = EdgeFreedom.Find(still, moved, plane ?? EdgePlane.Of(moved)!.Value, freedom);
            if (run >= Warm) times.Add(clock.Elapsed.TotalMilliseconds);
        }
        string what = found!.Outcome switch
        {
            FreedomOutcome.Found => $"moves {Mm(found.Moves.Max(m => Math.Abs(m.Move)))} at most",
            FreedomOutcome.TooFar => $"needs {Mm(found.Least)}",
            _ => "none",
        };
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name,-36} {times.Order().ElementAt(Runs / 2),7:F1} ms   ({times.Min():F1} to {times.Max():F1})   {what}"));
    }

    // Half a circle on two legs, read every 7.5 degrees, 4 mm too low over 20 degrees on either side of a place.
    private static PointsSpec Dented(double at, double radius, double leg, Placement placement)
    {
        var points = ImmutableArray.CreateBuilder<ProfilePoint>();
        for (int k = 0; k < 4 && leg > 0; k++) points.Add(P(-radius, leg * k / 4));
        for (int k = 0; k <= 24; k++)
        {
            double angle = 7.5 * k, off = Math.Abs(angle - at) < 20 ? 4 * Math.Pow(Math.Cos(0.5 * Math.PI * (angle - at) / 20), 2) : 0;
            points.Add(P(-(radius - off) * Math.Cos(angle * Math.PI / 180), leg + (radius - off) * Math.Sin(angle * Math.PI / 180)));
        }
        for (int k = 3; k >= 0 && leg > 0; k--) points.Add(P(radius, leg * k / 4));
        return new PointsSpec(points.ToImmutable(), false, Fit.Smooth, placement);
    }

    private static ProfilePoint P(double across, double up) => new(new Vec2(across, up), false);

    private static SpaceCurve Built(CurveSpec spec) => MeasuredCurve.Build(spec, "curves.edge").Curve!;

    private static string Mm(double mm) => string.Create(CultureInfo.InvariantCulture, $"{mm:0.##} mm");
}

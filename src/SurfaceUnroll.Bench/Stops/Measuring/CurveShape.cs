using System.Collections.Immutable;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Bench.Stops.Measuring;

/// <summary>A curve of a job as lines to draw.</summary>
/// <param name="Points">From left to right, mm, in its own frame (0, across, up) or, placed, in that of the job.</param>
public sealed record CurveShape(ImmutableArray<Vec3> Points)
{
    private const int Steps = 240;

    /// <summary>The curve of a name as the job was last read; null if it cannot be built.</summary>
    /// <param name="job">The job.</param>
    /// <param name="name">Name of the curve.</param>
    /// <param name="placed">Where it stands in the job; otherwise in its own frame.</param>
    public static CurveShape? Of(Job job, string name, bool placed)
    {
        ArgumentNullException.ThrowIfNull(job);
        if (job.Curves.FirstOrDefault(c => c.Name == name) is not { } named) return null;
        CurveSpec spec = placed ? named.Spec : named.Spec with { At = Placement.None };
        if (MeasuredCurve.Build(spec, "curves." + name, job.Units).Curve is not { } curve) return null;
        return new CurveShape([.. Enumerable.Range(0, Steps + 1).Select(i => curve.AtLength(curve.Length * i / Steps).Point)]);
    }
}

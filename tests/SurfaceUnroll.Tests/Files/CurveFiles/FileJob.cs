using System.Text;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Tests.Files.CurveFiles;

/// <summary>A job with one curve that is read from a file.</summary>
internal static class FileJob
{
    /// <summary>The curve of a file.</summary>
    /// <param name="file">Name, for its ending.</param>
    /// <param name="bytes">What it holds.</param>
    /// <param name="more">Keys besides <c>file</c>, with a comma before.</param>
    /// <param name="units">Of the job.</param>
    public static (SpaceCurve Curve, Notice[] Notices) Read(string file, byte[] bytes, string more = "", string units = "mm")
    {
        JobReading reading = Job(file, bytes, more, units);
        Assert.Empty(reading.Faults);
        CurveReading built = MeasuredCurve.Build(reading.Job!.Curves[0].Spec, "curves.front");
        Assert.True(built.Curve is not null, string.Join("; ", built.Notices.Select(n => n.Message)));
        return (built.Curve, [.. built.Notices]);
    }

    public static (SpaceCurve Curve, Notice[] Notices) Read(string file, string text, string more = "", string units = "mm") => Read(file, Encoding.UTF8.GetBytes(text), more, units);

    /// <summary>The only fault of a file that cannot be used.</summary>
    public static Fault Fault(string file, string text, string more = "")
    {
        Fault fault = Assert.Single(Job(file, Encoding.UTF8.GetBytes(text), more, "mm").Faults);
        Assert.False(string.IsNullOrWhiteSpace(fault.Mend));
        return fault;
    }

    public static JobReading Job(string file, byte[] bytes, string more, string units) => JobFile.Read(
        $$"""{ "units": "{{units}}", "curves": { "front": { "file": "{{file}}"{{more}} }, "rear": { "chord": 200, "rise": 90 } }, "panels": [ { "name": "a", "loft": ["front", "rear"] } ] }""",
        name => name == file ? bytes : null);

    /// <summary>Distance of a place from the nearest of a curve, mm, to about a millionth of its length.</summary>
    public static double Distance(SpaceCurve curve, Vec3 place)
    {
        const int steps = 24;
        double best = double.PositiveInfinity;
        foreach (CurvePiece piece in curve.Pieces)
        {
            double t = Enumerable.Range(0, steps + 1).Select(i => (double)i / steps).MinBy(u => (piece.At(u).Point - place).Length);
            // Newton's way to the foot of the place, from the nearest of a few; the ends stay.
            for (int i = 0; i < 20; i++)
            {
                CurveSample s = piece.At(t);
                t = Math.Clamp(t + (place - s.Point).Dot(s.D1) / s.D1.Dot(s.D1), 0, 1);
            }
            best = Math.Min(best, (piece.At(t).Point - place).Length);
        }
        return best;
    }
}

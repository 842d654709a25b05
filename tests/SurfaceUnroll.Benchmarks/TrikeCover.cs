using SurfaceUnroll.Curves;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Tests;

namespace SurfaceUnroll.Benchmarks;

/// <summary>The demo job that the timed work is done on.</summary>
internal static class TrikeCover
{
    /// <summary>The job, read from the fixtures of the repository that this program was built from.</summary>
    public static Job Job()
    {
        string path = Path.Combine(Repository.Root, "fixtures", "jobs", "trike-tail-cover.json");
        return JobFile.Read(File.ReadAllText(path)).Job ?? throw new InvalidOperationException($"{path} cannot be read");
    }

    /// <summary>One of its curves.</summary>
    public static SpaceCurve Curve(string name) =>
        MeasuredCurve.Build(Job().Curves.Single(c => c.Name == name).Spec, "").Curve ?? throw new InvalidOperationException(name);
}

using SurfaceUnroll.Files.JobFiles;

namespace SurfaceUnroll.Cli;

/// <summary>The command <c>check</c>.</summary>
internal static class Checking
{
    public static int Run(string path, bool strict, Screen screen, Pipeline pipeline)
    {
        if (new JobRun(path, JobChanges.None, screen, pipeline).Develop(out JobReading? reading) is not { } development) return ExitStatus.CannotUse;
        DevelopmentText.Write(screen, path, development, reading!);
        return DevelopmentText.Status(development, strict);
    }
}

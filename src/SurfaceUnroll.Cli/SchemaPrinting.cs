using SurfaceUnroll.Files.JobFiles;

namespace SurfaceUnroll.Cli;

/// <summary>The command <c>schema</c>.</summary>
internal static class SchemaPrinting
{
    public static int Run(Screen screen)
    {
        screen.Out.WriteLine(JobSchema.Text.TrimEnd());
        return ExitStatus.Done;
    }
}

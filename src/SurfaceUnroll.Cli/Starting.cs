using System.Text;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Files.Output;

namespace SurfaceUnroll.Cli;

/// <summary>The command <c>new</c>.</summary>
internal static class Starting
{
    public static int Run(string path, Screen screen)
    {
        if (OutputFolder.WriteNewFile(path, Encoding.UTF8.GetBytes(StarterJob.Text)) is { } fault)
        {
            FaultText.Write(screen.Error, fault.Path, fault.Message, fault.Mend);
            return fault.OfTheMachine ? ExitStatus.Failed : ExitStatus.CannotUse;
        }
        screen.Out.WriteLine($"Wrote {path}. It runs as it stands: surfaceunroll develop {path}");
        return ExitStatus.Done;
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Files.Output;

namespace SurfaceUnroll.Cli;

/// <summary>The command <c>develop</c>.</summary>
internal static class Developing
{
    public static int Run(string path, string? folder, bool strict, JobChanges changes, Screen screen, Pipeline pipeline)
    {
        if (folder is not null && string.IsNullOrWhiteSpace(folder))
        {
            FaultText.Write(screen.Error, "--out", "The name of the folder is empty.", "Name a folder, or leave --out away.");
            return ExitStatus.CannotUse;
        }
        if (new JobRun(path, changes, screen, pipeline).Develop(out JobReading? reading) is not { } development) return ExitStatus.CannotUse;
        string target = folder ?? DefaultFolder(path);
        ImmutableArray<OutputFile> files = screen.WithProgress("Drawing", _ => pipeline.Files(development));
        if (Obstacle(path, target, files) is { } obstacle)
        {
            FaultText.Write(screen.Error, obstacle.Path, obstacle.Message, obstacle.Mend);
            return ExitStatus.CannotUse;
        }
        if (OutputFolder.Write(target, files) is { } fault)
        {
            FaultText.Write(screen.Error, fault.Path, fault.Message, fault.Mend);
            return fault.OfTheMachine ? ExitStatus.Failed : ExitStatus.CannotUse;
        }
        DevelopmentText.Write(screen, path, development, reading!);
        DevelopmentText.WriteFiles(screen, target, files, development);
        return DevelopmentText.Status(development, strict);
    }

    /// <summary>The job file's name with <c>-pattern</c> in place of its extension, beside it.</summary>
    internal static string DefaultFolder(string path) =>
        Path.Combine(Path.GetDirectoryName(path) ?? "", Path.GetFileNameWithoutExtension(path) + "-pattern");

    private static OutputFault? Obstacle(string path, string target, ImmutableArray<OutputFile> files)
    {
        var names = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (OutputFile file in files)
        {
            if (!names.Add(file.Name)) return new OutputFault(path, $"Two panels would be written to one file, {file.Name}.", "Rename one of them.");
            if (Path.GetFullPath(Path.Combine(target, file.Name)) != Path.GetFullPath(path)) continue;
            return new OutputFault(path, "An output would overwrite the job file.", "Name another folder with --out.");
        }
        return null;
    }
}

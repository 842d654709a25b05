using System.Collections.Immutable;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Files.Output;
using SurfaceUnroll.Files.Printers;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Cli;

/// <summary>The three steps behind the commands, so that each command can be tried on a development made by hand.</summary>
/// <param name="Read">Text of a job file, and the folder in which it lies, to the job or its faults.</param>
/// <param name="Develop">Job to panels and notices.</param>
/// <param name="Files">Development to the content of every output file.</param>
internal sealed record Pipeline(
    Func<string, string, JobReading> Read,
    Func<Job, IProgress<string>, Development> Develop,
    Func<Development, ImmutableArray<OutputFile>> Files)
{
    /// <summary>Where measured printers are kept.</summary>
    public PrinterStore Printers { get; init; } = PrinterStore.OfUser();

    /// <summary>The real steps.</summary>
    public static Pipeline Real { get; } = new(JobFile.ReadIn, (job, progress) => Developer.Develop(job, progress), PatternFiles.Of);
}

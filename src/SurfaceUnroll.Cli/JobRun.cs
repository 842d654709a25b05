using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Cli;

/// <summary>Reads and develops the job of a command; says what is wrong where that cannot be done.</summary>
/// <param name="path">Job file.</param>
/// <param name="changes">What the command line asks for in place of what the job says.</param>
/// <param name="screen">Where to write.</param>
/// <param name="pipeline">Steps to run.</param>
internal sealed class JobRun(string path, JobChanges changes, Screen screen, Pipeline pipeline)
{
    // A job is a page or two of text: far above that it is another file, named by mistake.
    private const long LargestFile = 16 << 20;

    private readonly InputFile _input = new(
        "job file", LargestFile, ("This file is far too large to be a job.", "Name the job file, a page or two of JSON."),
        "Check the name, or make a starter job with: surfaceunroll new " + Path.GetFileName(path));

    /// <summary>The development of the job file.</summary>
    /// <param name="reading">What was read, to find places in the file.</param>
    /// <returns>Null if the job cannot be used; every fault is then on standard error.</returns>
    public Development? Develop(out JobReading? reading)
    {
        reading = null;
        if (!changes.AreWords(screen)) return null;
        if (_input.Read(path, screen) is not { } bytes) return null;
        JobReading read = reading = pipeline.Read(Text(bytes), Path.GetDirectoryName(path) ?? "");
        if (read.Job is not { } job)
        {
            FaultText.Write(screen.Error, path, read.Faults.Select(f => (f.Line, f.Column, f.Message, (string?)f.Mend)));
            return null;
        }
        if (changes.On(job, pipeline.Printers, screen) is not { } changed) return null;
        Development development = screen.WithProgress("Reading " + Path.GetFileName(path), progress => pipeline.Develop(changed, progress));
        if (!development.Failed) return development;
        // What is doubtful about a curve is the likeliest cause of the faults of it and of its sheets.
        foreach (Notice doubt in development.Notices.Where(n => n.Severity == Severity.Warning && n.Where.StartsWith("curves.", StringComparison.Ordinal)))
        {
            (int line, int column) = read.Locate(doubt.Where);
            FaultText.Doubt(screen.Error, FaultText.Place(path, line, column), doubt.Message, doubt.Mend);
        }
        FaultText.Write(screen.Error, path, development.Notices.Where(n => n.Severity == Severity.Error).Select(n =>
        {
            (int line, int column) = read.Locate(n.Where);
            return (line, column, n.Message, n.Mend);
        }));
        return null;
    }

    // As any text: the marks at its start tell the encoding, UTF-8 without.
    private static string Text(byte[] bytes)
    {
        using var reader = new StreamReader(new MemoryStream(bytes));
        return reader.ReadToEnd();
    }
}

using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Cli;

/// <summary>Reads and develops the job of a command; says what is wrong where that cannot be done.</summary>
internal sealed class JobRun(string path, Screen screen, Pipeline pipeline)
{
    // A job is a page or two of text: far above that it is another file, named by mistake.
    private const long LargestFile = 16 << 20;

    /// <summary>The development of the job file.</summary>
    /// <param name="reading">What was read, to find places in the file.</param>
    /// <returns>Null if the job cannot be used; every fault is then on standard error.</returns>
    public Development? Develop(out JobReading? reading)
    {
        reading = null;
        if (ReadText() is not { } text) return null;
        JobReading read = reading = pipeline.Read(text, Path.GetDirectoryName(path) ?? "");
        if (read.Job is not { } job)
        {
            FaultText.Write(screen.Error, path, read.Faults.Select(f => (f.Line, f.Column, f.Message, (string?)f.Mend)));
            return null;
        }
        Development development = screen.WithProgress("Reading " + Path.GetFileName(path), progress => pipeline.Develop(job, progress));
        if (!development.Failed) return development;
        FaultText.Write(screen.Error, path, development.Notices.Where(n => n.Severity == Severity.Error).Select(n =>
        {
            (int line, int column) = read.Locate(n.Where);
            return (line, column, n.Message, n.Mend);
        }));
        return null;
    }

    private string? ReadText()
    {
        (string Message, string Mend)? fault;
        try
        {
            var file = new FileInfo(path);
            fault = (file.Exists, Directory.Exists(path)) switch
            {
                (_, true) => ("This is a folder, not a job file.", "Name the job file in it."),
                (false, _) => ("There is no such file.", "Check the name, or make a starter job with: surfaceunroll new " + Path.GetFileName(path)),
                _ when file.Length > LargestFile => ("This file is far too large to be a job.", "Name the job file, a page or two of JSON."),
                _ => null,
            };
            if (fault is null) return File.ReadAllText(path);
        }
        catch (UnauthorizedAccessException)
        {
            fault = ("You have no right to read this file.", "Change its rights, or copy it to a place of your own.");
        }
        catch (Exception e) when (e is IOException or NotSupportedException)
        {
            fault = ($"This file cannot be read: {e.Message}", "Check the name.");
        }
        FaultText.Write(screen.Error, path, fault.Value.Message, fault.Value.Mend);
        return null;
    }
}

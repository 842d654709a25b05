using System.Globalization;

namespace SurfaceUnroll.Files.Output;

/// <summary>Writes a set of files so that a run stopped at any moment leaves old files or new ones, each whole.</summary>
/// <remarks>
/// Every file is first written beside its place under another name and flushed to the disk; only when all of them stand there are they
/// renamed, which the file system does in one step each. A folder that does not exist yet appears whole, by one rename. What a stopped run
/// leaves behind is hidden, marked with the number of its process, and cleared by the next run.
/// </remarks>
public static class OutputFolder
{
    private const string Suffix = ".unfinished";
    private const int DiskFullUnix = 28;                                // ENOSPC
    private const int DiskFullWindows = unchecked((int)0x80070070);     // ERROR_DISK_FULL

    /// <summary>Writes the files, the last one last.</summary>
    /// <param name="folder">Made if it does not exist, with the folders above it.</param>
    /// <param name="files">Names differ, also on a file system that does not tell capitals from small letters.</param>
    /// <returns>Null when all are written; else the reason, and no file was written or changed.</returns>
    public static OutputFault? Write(string folder, IReadOnlyList<OutputFile> files)
    {
        string target = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
        try
        {
            if (FindObstacle(target, files) is { } obstacle) return obstacle;
            string parent = Path.GetDirectoryName(target) ?? target;
            Directory.CreateDirectory(parent);
            ClearUnfinished(parent, Path.GetFileName(target));
            if (Directory.Exists(target)) WriteInto(target, files);
            else WriteNew(parent, target, files);
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            return Explain(folder, e);
        }
    }

    /// <summary>Writes one file that must not be there yet.</summary>
    /// <param name="path">Its folder must exist.</param>
    /// <param name="content">Whole content.</param>
    /// <returns>Null when written; else the reason, and nothing was written.</returns>
    public static OutputFault? WriteNewFile(string path, ReadOnlyMemory<byte> content)
    {
        if (Path.Exists(path)) return new OutputFault(path, "There is such a file already; it was left alone.", "Name another file.");
        string full = Path.GetFullPath(path), folder = Path.GetDirectoryName(full) ?? full;
        if (!Directory.Exists(folder)) return new OutputFault(path, $"There is no folder {folder}.", "Make it first, or name another.");
        string hidden = Path.Combine(folder, HiddenName(Path.GetFileName(full)));
        try
        {
            WriteWhole(hidden, content);
            File.Move(hidden, full, overwrite: false);
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return Explain(path, e) with { Mend = "Name a file in another folder." };
        }
        finally
        {
            File.Delete(hidden);
        }
    }

    private static OutputFault? FindObstacle(string target, IReadOnlyList<OutputFile> files)
    {
        for (string? above = target; above is not null; above = Path.GetDirectoryName(above))
        {
            if (!File.Exists(above)) continue;
            return new OutputFault(above, "This is a file, so it cannot be the folder to write into.", "Name another folder with --out.");
        }
        foreach (OutputFile file in files)
        {
            string path = Path.Combine(target, file.Name);
            if (!Directory.Exists(path)) continue;
            return new OutputFault(path, "A folder stands where this file should be written.", "Move it away, or name another folder with --out.");
        }
        return null;
    }

    // The folder is new: fill a hidden one beside it, then give it its name.
    private static void WriteNew(string parent, string target, IReadOnlyList<OutputFile> files)
    {
        string hidden = Path.Combine(parent, HiddenName(Path.GetFileName(target)));
        try
        {
            Directory.CreateDirectory(hidden);
            foreach (OutputFile file in files)
            {
                WriteWhole(Path.Combine(hidden, file.Name), file.Content);
            }
            Directory.Move(hidden, target);
        }
        finally
        {
            if (Directory.Exists(hidden)) Directory.Delete(hidden, recursive: true);
        }
    }

    // The folder holds earlier files, perhaps also others that are not ours to touch: replace file by file.
    private static void WriteInto(string target, IReadOnlyList<OutputFile> files)
    {
        foreach (OutputFile file in files)
        {
            ClearUnfinished(target, file.Name);
        }
        string[] hidden = [.. files.Select(f => Path.Combine(target, HiddenName(f.Name)))];
        try
        {
            for (int i = 0; i < files.Count; i++)
            {
                WriteWhole(hidden[i], files[i].Content);
            }
            for (int i = 0; i < files.Count; i++)
            {
                File.Move(hidden[i], Path.Combine(target, files[i].Name), overwrite: true);
            }
        }
        finally
        {
            foreach (string path in hidden)
            {
                File.Delete(path);
            }
        }
    }

    private static void WriteWhole(string path, ReadOnlyMemory<byte> content)
    {
        using var handle = File.OpenHandle(path, FileMode.Create, FileAccess.Write, preallocationSize: content.Length);
        RandomAccess.Write(handle, content.Span, 0);
        RandomAccess.FlushToDisk(handle);
    }

    private static string HiddenName(string name) => string.Create(CultureInfo.InvariantCulture, $".{name}.{Environment.ProcessId}{Suffix}");

    private static void ClearUnfinished(string folder, string name)
    {
        foreach (string path in Directory.EnumerateFileSystemEntries(folder, $".{name}.*{Suffix}"))
        {
            string owner = Path.GetFileName(path)[(name.Length + 2)..^Suffix.Length];
            if (!int.TryParse(owner, NumberStyles.None, CultureInfo.InvariantCulture, out int id) || IsRunning(id)) continue;
            if (Directory.Exists(path)) Directory.Delete(path, recursive: true);
            else File.Delete(path);
        }
    }

    // A number may have gone to another program since: then the leftover stays until a later run.
    private static bool IsRunning(int processId)
    {
        if (processId == Environment.ProcessId) return false;
        try
        {
            using var process = System.Diagnostics.Process.GetProcessById(processId);
            return !process.HasExited;
        }
        catch (Exception e) when (e is ArgumentException or InvalidOperationException)
        {
            return false;
        }
    }

    private static OutputFault Explain(string folder, Exception e) => e switch
    {
        UnauthorizedAccessException => new(folder, "You have no right to write into this folder.",
            "Name a folder of your own with --out, or change the rights of this one."),
        PathTooLongException => new(folder, "This path is too long for the file system.", "Name a shorter one with --out."),
        IOException { HResult: DiskFullUnix or DiskFullWindows } => new(folder, "The disk is full; nothing was written.",
            "Free some space, or name a folder on another disk with --out.", OfTheMachine: true),
        DirectoryNotFoundException => new(folder, "This folder cannot be made here.", "Name another folder with --out."),
        _ => new(folder, $"The files could not be written: {e.Message}", "Name another folder with --out.", OfTheMachine: true),
    };
}

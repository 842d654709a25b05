using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Text;
using SurfaceUnroll.Files.JobTexts;
using SurfaceUnroll.Files.Output;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Bench.Desk;

/// <summary>The folder of jobs, and the desks on which they lie open.</summary>
public sealed class JobShelf : IDisposable
{
    private const long LargestFile = 16 << 20;

    private readonly ConcurrentDictionary<string, Lazy<JobDesk?>> _desks = new(StringComparer.Ordinal);

    /// <summary>Takes a folder.</summary>
    /// <param name="folder">Made when the first job is put there.</param>
    public JobShelf(string folder) => Folder = Path.GetFullPath(folder);

    /// <summary>Full path of the folder.</summary>
    public string Folder { get; }

    /// <summary>The jobs in it, the one changed last first.</summary>
    public ImmutableArray<ShelvedJob> Jobs => Directory.Exists(Folder)
        ? [.. new DirectoryInfo(Folder).EnumerateFiles("*.json").Where(f => f.Length <= LargestFile && !f.Name.StartsWith('.')).OrderByDescending(f => f.LastWriteTimeUtc).Select(ShelvedJob.Of).OfType<ShelvedJob>()]
        : [];

    /// <summary>The desk of a job.</summary>
    /// <param name="name">File name without extension, one of the folder's own: nothing else is ever opened, so no name leads out of the folder.</param>
    /// <returns>Null if there is no such job.</returns>
    public JobDesk? Open(string name)
    {
        if (_desks.TryGetValue(name, out Lazy<JobDesk?>? known) && known.Value is { } open && File.Exists(open.Path)) return open;
        string? path = Directory.Exists(Folder) ? Directory.EnumerateFiles(Folder, "*.json").FirstOrDefault(f => Path.GetFileNameWithoutExtension(f) == name) : null;
        if (path is null || new FileInfo(path).Length > LargestFile) return null;
        return _desks.GetOrAdd(name, _ => new Lazy<JobDesk?>(() => new JobDesk(path, File.ReadAllText(path), TimeProvider.System))).Value;
    }

    /// <summary>Puts a new job on the shelf, under a name made of its title.</summary>
    /// <param name="title">What to call it.</param>
    /// <param name="text">Text of the job file.</param>
    /// <returns>Name of the job; null with the reason.</returns>
    public (string? Name, string? Problem) Add(string title, string text)
    {
        string slug = Slug.Of(title) is { Length: > 0 } made ? made[..Math.Min(made.Length, 60)] : "job";
        Directory.CreateDirectory(Folder);
        for (int i = 1; ; i++)
        {
            string name = i == 1 ? slug : $"{slug}-{i.ToString(System.Globalization.CultureInfo.InvariantCulture)}", path = Path.Combine(Folder, name + ".json");
            if (Path.Exists(path)) continue;
            OutputFault? fault = OutputFolder.WriteNewFile(path, Encoding.UTF8.GetBytes(text));
            return fault is null ? (name, null) : (null, $"{fault.Message} {fault.Mend}");
        }
    }

    /// <summary>Every change of every desk stands in its file.</summary>
    public void Dispose()
    {
        foreach (Lazy<JobDesk?> desk in _desks.Values) desk.Value?.Dispose();
    }
}

/// <summary>A job on the shelf.</summary>
/// <param name="Name">File name without extension.</param>
/// <param name="Title">As the job calls itself.</param>
/// <param name="Changed">When it was last saved, local time.</param>
public sealed record ShelvedJob(string Name, string Title, DateTime Changed)
{
    // Null for JSON files that are no jobs, such as reports.
    internal static ShelvedJob? Of(FileInfo file)
    {
        try
        {
            JobText text = JobText.Of(File.ReadAllText(file.FullName));
            bool isJob = !text.IsJson || (text.Find("curves") is not null || text.Find("panels") is not null) && text.Find("generator") is null;
            string title = text.Shown("job");
            return isJob ? new ShelvedJob(Path.GetFileNameWithoutExtension(file.Name), title.Length > 0 ? title : Path.GetFileNameWithoutExtension(file.Name), file.LastWriteTime) : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }
}

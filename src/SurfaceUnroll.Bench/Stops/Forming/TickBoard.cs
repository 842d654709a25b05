using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Text.Json;
using SurfaceUnroll.Bench.Desk;
using SurfaceUnroll.Files.Output;

namespace SurfaceUnroll.Bench.Stops.Forming;

/// <summary>The steps of one job that are ticked off, the same in every window, kept in a small file beside the job.</summary>
/// <remarks>A step is known by its words. When a measure changes, so do the words of the steps that hang on it, and their ticks no longer count. Safe to call from any thread.</remarks>
public sealed class TickBoard : IDisposable
{
    private const string FileName = "ticks.json", Key = "ticked";

    private readonly Lock _lock = new();
    private readonly string _folder;
    private readonly Loop _save;

    internal TickBoard(string jobFile)
    {
        _folder = JobHistory.FolderOf(jobFile);
        Ticked = Read(Path.Combine(_folder, FileName));
        _save = new Loop(_ =>
        {
            Save();
            return Task.CompletedTask;
        });
    }

    /// <summary>Words of the steps that are ticked.</summary>
    public ImmutableHashSet<string> Ticked { get; private set; }

    /// <summary>Why the ticks could not be written; null if they were.</summary>
    public string? Fault { get; private set; }

    /// <summary>Raised after each change, on any thread.</summary>
    public event Action? Changed;

    /// <summary>Ticks a step, or takes its tick off.</summary>
    public void Set(string step, bool ticked) => Take(all => ticked ? all.Add(step) : all.Remove(step));

    /// <summary>Ticks all of these.</summary>
    public void TickAll(IEnumerable<string> steps) => Take(all => all.Union(steps));

    /// <summary>Takes the ticks of all of these off.</summary>
    public void UntickAll(IEnumerable<string> steps) => Take(all => all.Except(steps));

    /// <inheritdoc/>
    public void Dispose()
    {
        _save.Dispose();
        Save();
    }

    private void Take(Func<ImmutableHashSet<string>, ImmutableHashSet<string>> change)
    {
        lock (_lock) Ticked = change(Ticked);
        _save.Signal();
        Changed?.Invoke();
    }

    // One writer at a time: the newest ticks are the last to be written.
    private void Save()
    {
        lock (_save) Write();
    }

    private void Write()
    {
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes, new JsonWriterOptions { Indented = true, Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            json.WriteStartObject();
            json.WriteStartArray(Key);
            foreach (string step in Ticked.Order(StringComparer.Ordinal)) json.WriteStringValue(step);
            json.WriteEndArray();
            json.WriteEndObject();
        }
        string? fault = OutputFolder.Write(_folder, [new OutputFile(FileName, bytes.ToArray())])?.Message;
        if (fault == Fault) return;
        Fault = fault;
        Changed?.Invoke();
    }

    // A file that is not there or cannot be understood ticks nothing: ticks are a help, and the next one writes it anew.
    private static ImmutableHashSet<string> Read(string path)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(File.ReadAllBytes(path));
            return document.RootElement is { ValueKind: JsonValueKind.Object } root && root.TryGetProperty(Key, out JsonElement list) && list.ValueKind == JsonValueKind.Array
                ? [.. list.EnumerateArray().Where(e => e.ValueKind == JsonValueKind.String).Select(e => e.GetString()!)]
                : [];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or JsonException)
        {
            return [];
        }
    }
}

/// <summary>The tick boards of all jobs that were looked at.</summary>
public sealed class TickBoards : IDisposable
{
    private readonly ConcurrentDictionary<string, Lazy<TickBoard>> _boards = new(StringComparer.Ordinal);

    /// <summary>The board of a job.</summary>
    /// <param name="jobFile">Path of its file.</param>
    public TickBoard Of(string jobFile) => _boards.GetOrAdd(jobFile, path => new Lazy<TickBoard>(() => new TickBoard(path))).Value;

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (Lazy<TickBoard> board in _boards.Values) board.Value.Dispose();
    }
}

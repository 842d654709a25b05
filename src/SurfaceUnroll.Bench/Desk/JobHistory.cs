using System.Collections.Immutable;
using System.Globalization;

namespace SurfaceUnroll.Bench.Desk;

/// <summary>The last states of a job file, kept beside it in a hidden folder.</summary>
/// <param name="path">The job file.</param>
public sealed class JobHistory(string path)
{
    /// <summary>How many states are kept.</summary>
    public const int Most = 50;

    private const string Stamp = "yyyyMMdd-HHmmss-fff";

    // Keys pressed one after another are one state.
    private static readonly TimeSpan Together = TimeSpan.FromSeconds(2);

    private readonly string _folder = FolderOf(path);
    private string? _last;

    /// <summary>The hidden folder of one job file, for what belongs to it and is no part of it.</summary>
    public static string FolderOf(string path) => System.IO.Path.Combine(System.IO.Path.GetDirectoryName(path) ?? "", ".surfaceunroll", System.IO.Path.GetFileName(path));

    /// <summary>The states by the time at which they were saved, the newest first.</summary>
    public ImmutableArray<DateTime> States =>
        Directory.Exists(_folder)
            ? [.. Directory.EnumerateFiles(_folder, "*.json").Select(TimeOf).OfType<DateTime>().OrderDescending()]
            : [];

    /// <summary>The text of a state; null if it is no longer there.</summary>
    public string? Text(DateTime state)
    {
        try
        {
            return File.ReadAllText(PathOf(state));
        }
        catch (IOException)
        {
            return null;
        }
    }

    /// <summary>Keeps a state.</summary>
    /// <param name="text">The job.</param>
    /// <param name="apart">A state of its own; otherwise, one that follows within two seconds takes the place of the last.</param>
    internal void Keep(string text, bool apart = false)
    {
        if (text == _last) return;
        try
        {
            Directory.CreateDirectory(_folder);
            ImmutableArray<DateTime> states = States;
            // Stamps are to the millisecond: two of one would be one file.
            DateTime now = DateTime.UtcNow;
            if (states is [DateTime newest, ..] && now <= newest.AddMilliseconds(1)) now = newest.AddMilliseconds(1);
            // What stood in the file before the bench came is always a state of its own.
            if (_last is null && states is [DateTime latest, ..] && Text(latest) == text)
            {
                _last = text;
                return;
            }
            if (!apart && _last is not null && states is [DateTime previous, _, ..] && now - previous < Together)
            {
                File.Delete(PathOf(previous));
                states = states.RemoveAt(0);
            }
            File.WriteAllText(PathOf(now), text);
            _last = text;
            foreach (DateTime old in states.Skip(Most - 1)) File.Delete(PathOf(old));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // Without history the job itself is still saved.
        }
    }

    private string PathOf(DateTime state) => System.IO.Path.Combine(_folder, state.ToString(Stamp, CultureInfo.InvariantCulture) + ".json");

    private static DateTime? TimeOf(string file) =>
        DateTime.TryParseExact(System.IO.Path.GetFileNameWithoutExtension(file), Stamp, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out DateTime time)
            ? time
            : null;
}

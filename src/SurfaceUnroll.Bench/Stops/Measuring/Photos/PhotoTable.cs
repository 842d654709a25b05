using System.Collections.Concurrent;
using System.Collections.Immutable;
using SurfaceUnroll.Bench.Desk;
using SurfaceUnroll.Files.Photos;

namespace SurfaceUnroll.Bench.Stops.Measuring.Photos;

/// <summary>Photos that lie beside jobs, and what was tapped on them while the bench runs. Safe to call from any thread.</summary>
public sealed class PhotoTable
{
    /// <summary>What photo files end in.</summary>
    public static readonly ImmutableArray<string> Endings = [".jpg", ".jpeg", ".png"];

    // A photo of twelve megapixels takes 24 MB: the last one is asked for again and again, others hardly.
    private const int MostKept = 2;

    private readonly Lock _lock = new();
    private readonly ConcurrentDictionary<(string Job, string Curve, string Photo), PhotoSitting> _sittings = new();
    private ImmutableArray<(string Path, DateTime Written, PhotoReading Reading)> _kept = [];

    /// <summary>What was tapped of a curve's photo.</summary>
    public PhotoSitting Sitting(string job, string curve, string photo) => _sittings.TryGetValue((job, curve, photo), out PhotoSitting? kept) ? kept : new PhotoSitting();

    /// <summary>Keeps it.</summary>
    public void Keep(string job, string curve, string photo, PhotoSitting sitting) => _sittings[(job, curve, photo)] = sitting;

    /// <summary>A photo beside a job.</summary>
    /// <param name="job">The job file.</param>
    /// <param name="photo">One of the names that <see cref="SideFiles"/> gives: nothing else is ever opened.</param>
    public PhotoReading Read(string job, string photo)
    {
        if (PathOf(job, photo) is not { } path) return new PhotoReading(null, new Jobs.Notice("photo-not-a-photo", Jobs.Severity.Error, "photo", "The photo is not there any more.", "Bring it again."));
        // One at a time: two windows that ask at once would hold it twice.
        lock (_lock)
        {
            DateTime written;
            PhotoReading reading;
            try
            {
                written = File.GetLastWriteTimeUtc(path);
                if (_kept.FirstOrDefault(k => k.Path == path && k.Written == written) is { Reading: { } known }) return known;
                if (new FileInfo(path).Length > PhotoFile.LargestFile) return new PhotoReading(null, TooLarge);
                reading = PhotoFile.Read(File.ReadAllBytes(path));
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                return new PhotoReading(null, new Jobs.Notice("photo-broken", Jobs.Severity.Error, "photo", $"The photo cannot be read: {e.Message}", "Bring it again."));
            }
            _kept = [.. _kept.RemoveAll(k => k.Path == path).Prepend((path, written, reading)).Take(MostKept)];
            return reading;
        }
    }

    /// <summary>The photo upright and small enough for a page, as a JPEG; null if there is no such photo.</summary>
    public static byte[]? Shown(string job, string photo)
    {
        try
        {
            return PathOf(job, photo) is { } path && new FileInfo(path).Length <= PhotoFile.LargestFile ? PhotoFile.Shown(File.ReadAllBytes(path)) : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    private static Jobs.Notice TooLarge { get; } = new("photo-too-large", Jobs.Severity.Error, "photo", $"The photo has more than {PhotoFile.LargestFile >> 20} MB.", "Save it as a JPEG.");

    private static string? PathOf(string job, string photo)
    {
        string folder = Path.GetDirectoryName(job) ?? "";
        return new SideFiles(folder, Endings).Names.Contains(photo) ? Path.Combine(folder, photo) : null;
    }
}

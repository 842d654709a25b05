using System.Collections.Frozen;
using System.Collections.Immutable;
using SurfaceUnroll.Files.Json;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>What came of reading a job file.</summary>
/// <param name="Job">The job; null if there is any fault.</param>
/// <param name="Faults">Every fault found, in the order of the file; empty if <paramref name="Job"/> is set.</param>
public sealed record JobReading(Job? Job, ImmutableArray<Fault> Faults)
{
    /// <summary>Places of the values by their paths.</summary>
    internal FrozenDictionary<string, TextPlace> Places { get; init; } = FrozenDictionary<string, TextPlace>.Empty;

    /// <summary>Paths of all lengths of the job, as far as it could be read; also where there are faults.</summary>
    public ImmutableArray<string> Lengths { get; init; } = [];

    /// <summary>Finds a path of the job in its file, for notices that come up after reading.</summary>
    /// <param name="path">For example <c>curves.front.points[2]</c>.</param>
    /// <returns>Line and column, from 1, of that value or of the nearest one around it that the file has; 1, 1 if none.</returns>
    public (int Line, int Column) Locate(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        while (path.Length > 0)
        {
            if (Places.TryGetValue(path, out TextPlace place)) return (place.Line, place.Column);
            path = path[..Math.Max(0, path.LastIndexOfAny(['.', '[']))];
        }
        return (1, 1);
    }
}

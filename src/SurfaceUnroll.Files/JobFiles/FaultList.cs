using System.Collections.Immutable;
using SurfaceUnroll.Files.Json;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Gathers faults while a file is read on past them.</summary>
internal sealed class FaultList
{
    private readonly List<Fault> _faults = [];

    public int Count => _faults.Count;

    public void Add(string code, string path, TextPlace place, string message, string mend) =>
        _faults.Add(new Fault(code, path, place.Line, place.Column, message, mend));

    /// <summary>A value of the wrong kind.</summary>
    public void WrongType(string path, JsonTree found, string wanted, string mend) =>
        Add("wrong-type", path, found.Place, $"Here should be {wanted}, not {found.Kind}.", mend);

    /// <summary>True if a name is among those that are known; with a fault if not.</summary>
    /// <param name="name">As written.</param>
    /// <param name="known">The names that there are.</param>
    /// <param name="kind">What is named: curve or panel.</param>
    /// <param name="path">Path of the name.</param>
    /// <param name="at">Where it stands.</param>
    /// <param name="ifNone">What to do where there is none at all.</param>
    public bool Knows(string name, ImmutableArray<string> known, string kind, string path, JsonTree at, string ifNone)
    {
        if (known.Contains(name)) return true;
        string mend = NearestWord.To(name, known) is { } near ? $"Did you mean \"{near}\"?" : known.IsEmpty ? ifNone : $"The {kind}s of the job are: {string.Join(", ", known)}.";
        Add($"{kind}-absent", path, at.Place, $"There is no {kind} called \"{name}\".", mend);
        return false;
    }

    /// <summary>True if something is wrong at a path, or below it.</summary>
    public bool HasUnder(string path) => _faults.Any(f => f.Path.StartsWith(path, StringComparison.Ordinal) && (f.Path.Length == path.Length || f.Path[path.Length] is '.' or '['));

    /// <summary>All faults in the order of the file.</summary>
    public ImmutableArray<Fault> InOrder() => [.. _faults.OrderBy(f => f.Line).ThenBy(f => f.Column)];
}

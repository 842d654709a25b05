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

    /// <summary>All faults in the order of the file.</summary>
    public ImmutableArray<Fault> InOrder() => [.. _faults.OrderBy(f => f.Line).ThenBy(f => f.Column)];
}

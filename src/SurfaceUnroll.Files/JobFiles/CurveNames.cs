using System.Collections.Immutable;
using SurfaceUnroll.Files.Json;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>The curves of a job, by name, for those that use them.</summary>
/// <param name="measures">Reads single values.</param>
/// <param name="names">Names of all curves, also of those with faults.</param>
/// <param name="sideViews">Names of those that are measured in plan and side.</param>
internal sealed class CurveNames(Measures measures, ImmutableArray<string> names, ImmutableArray<string> sideViews)
{
    private readonly FaultList _faults = measures.Faults;

    /// <summary>True if there is a curve of this name; a fault if not.</summary>
    public bool Has(string name, string path, JsonTree at) => _faults.Knows(name, names, "curve", path, at, "Measure it and give it under \"curves\".");

    /// <summary>True if the curve of this name has a side view; a fault if not, or if there is none.</summary>
    public bool HasSide(string name, string path, JsonTree at)
    {
        if (!Has(name, path, at)) return false;
        if (sideViews.Contains(name)) return true;
        _faults.Add("curve-no-side", path, at.Place, $"The curve \"{name}\" is not measured in plan and side, so it has no side view.", "Name one that is, or give the side as a list of [aft, height] pairs.");
        return false;
    }

    /// <summary>One name, or a list of different ones.</summary>
    public ImmutableArray<string> ListOrOne(JsonTree tree, string path, string example)
    {
        if (tree is JsonText one) return Has(one.Value, path, one) ? [one.Value] : [];
        if (tree is not JsonList list)
        {
            _faults.WrongType(path, tree, "the name of a curve, or a list of names", $"Write {example}.");
            return [];
        }
        if (list.Items.IsEmpty) _faults.Add("plate-no-curve", path, list.Place, "The plate names no curve.", $"Write {example}.");
        var found = ImmutableArray.CreateBuilder<string>();
        for (int i = 0; i < list.Items.Length; i++)
        {
            string place = $"{path}[{Measures.Count(i)}]";
            if (measures.Text(list.Items[i], place) is not { } name || !Has(name, place, list.Items[i])) continue;
            if (found.Contains(name)) _faults.Add("plate-same-curve", place, list.Items[i].Place, $"The plate names \"{name}\" twice.", "Each curve goes round the plate once: take one of the two out.");
            else found.Add(name);
        }
        return found.ToImmutable();
    }
}

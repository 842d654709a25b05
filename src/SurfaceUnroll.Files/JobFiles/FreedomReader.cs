using System.Collections.Immutable;
using SurfaceUnroll.Files.Json;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Reads which curve of a loft may move, and how far.</summary>
internal sealed class FreedomReader(Measures measures)
{
    private const string Example = "{ \"rear\": 4 }";

    private readonly FaultList _faults = measures.Faults;

    // Curves that freedoms before have moved or held, by name.
    private readonly Dictionary<string, string> _moved = [], _held = [];

    /// <summary>The freedom of a loft; null if it has none, or with a fault.</summary>
    /// <param name="panel">Its block.</param>
    /// <param name="loft">Names of its curves.</param>
    public FreedomSpec? Read(JobBlock panel, ImmutableArray<string> loft)
    {
        string path = panel.PathOf("freedom");
        if (panel.Find("freedom") is not { } tree || JobBlock.Of(tree, path, _faults, Example) is not { } block) return null;
        if (block.Tree.Members.Length != 1)
        {
            _faults.Add("freedom-curves", path, tree.Place, $"One curve of a sheet may move, but here are {Measures.Count(block.Tree.Members.Length)}.", $"Name one curve and how far it may move, like {Example}.");
            return null;
        }
        JsonMember member = block.Tree.Members[0];
        double most = measures.Length(member.Value, block.PathOf(member.Key), Allowed.Positive);
        if (loft.Length > 2)
        {
            _faults.Add("freedom-loft", path, tree.Place, "A sheet through three or more curves is not straight from edge to edge, so no move makes it bend only.", "Take \"freedom\" out, or make lofts between two curves each.");
            return null;
        }
        if (loft.Length < 2) return null; // That has its own fault.
        if (!loft.Contains(member.Key))
        {
            string names = $"\"{loft[0]}\" or \"{loft[1]}\"";
            _faults.Add("freedom-curve", block.PathOf(member.Key), member.Place, $"\"{member.Key}\" is not a curve of this loft.", NearestWord.To(member.Key, loft) is { } near ? $"Did you mean \"{near}\"? It can be {names}." : $"Name {names}.");
            return null;
        }
        if (panel.Find("elements") is JsonText { Value: "even" } even)
            _faults.Add("freedom-even", panel.PathOf("elements"), even.Place, "Evenly spaced lines do not bend only, however the curve moves.", "Take \"elements\" out, or \"freedom\".");
        string still = loft[0] == member.Key ? loft[1] : loft[0];
        if (Taken(member.Key, still) is { } reason) _faults.Add("freedom-twice", block.PathOf(member.Key), member.Place, reason, "Give the freedom to another curve: what one sheet moves, no other may move or hold still.");
        _moved.TryAdd(member.Key, path);
        _held.TryAdd(still, path);
        return new FreedomSpec(member.Key, most);
    }

    private string? Taken(string moved, string still)
    {
        if (_moved.TryGetValue(moved, out string? other)) return $"\"{moved}\" is moved by {other} already.";
        if (_held.TryGetValue(moved, out other)) return $"\"{moved}\" is what {other} moves another curve to, so it must stay.";
        return _moved.TryGetValue(still, out other) ? $"\"{still}\" must stay for this, but {other} moves it." : null;
    }
}

using SurfaceUnroll.Files.Json;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>A block of keys and values in a job file, with its path.</summary>
internal sealed record JobBlock(JsonObject Tree, string Path, FaultList Faults)
{
    /// <summary>The block at a place of the tree; null, with a fault, if something else stands there.</summary>
    /// <param name="tree">What stands there.</param>
    /// <param name="path">Its path.</param>
    /// <param name="faults">Where faults go.</param>
    /// <param name="example">A right block, for the fault.</param>
    public static JobBlock? Of(JsonTree tree, string path, FaultList faults, string example)
    {
        if (tree is JsonObject block)
        {
            var found = new JobBlock(block, path, faults);
            found.CheckForTwins();
            return found;
        }
        faults.WrongType(path, tree, "a block { … }", $"Write it like {example}.");
        return null;
    }

    public bool Has(string key) => Tree.Find(key) is not null;

    public JsonTree? Find(string key) => Tree.Find(key);

    /// <summary>The value of a key that must be there; null, with a fault, if it is not.</summary>
    public JsonTree? Need(string key, string mend)
    {
        JsonTree? value = Tree.Find(key);
        if (value is null) Faults.Add("key-missing", PathOf(key), Tree.Place, $"\"{key}\" is missing here.", mend);
        return value;
    }

    public string PathOf(string key) => Path.Length == 0 ? key : $"{Path}.{key}";

    /// <summary>Refuses every key but these.</summary>
    /// <param name="known">Keys that may stand in this block.</param>
    /// <param name="elsewhere">Keys that go into blocks of this sort, but not into this one, and why not.</param>
    public void CheckKeys(IReadOnlyCollection<string> known, Func<string, string?>? elsewhere = null)
    {
        foreach (JsonMember member in Tree.Members.Where(m => !known.Contains(m.Key)))
        {
            if (elsewhere?.Invoke(member.Key) is { } reason)
                Faults.Add("key-misplaced", PathOf(member.Key), member.Place, reason, $"Take \"{member.Key}\" out.");
            else
                Faults.Add("key-unknown", PathOf(member.Key), member.Place, $"\"{member.Key}\" is not a key that can stand here.", Suggestion(member.Key, known));
        }
    }

    private static string Suggestion(string key, IReadOnlyCollection<string> known) => NearestWord.To(key, known) is { } near
        ? $"Did you mean \"{near}\"?"
        : $"The keys that can stand here are: {string.Join(", ", known)}.";

    private void CheckForTwins()
    {
        var seen = new Dictionary<string, TextPlace>();
        foreach (JsonMember member in Tree.Members)
        {
            if (seen.TryAdd(member.Key, member.Place)) continue;
            Faults.Add("key-twice", PathOf(member.Key), member.Place,
                $"\"{member.Key}\" is here a second time; the first is in line {seen[member.Key].Line}.", "Take one of the two out, or rename it.");
        }
    }
}

using System.Collections.Immutable;

namespace SurfaceUnroll.Files.JobTexts;

/// <summary>One change of a job's text.</summary>
public abstract record JobEdit
{
    /// <summary>Puts a value in place of another, or under a key that is not there yet, with the blocks around it.</summary>
    /// <param name="path">Where; what is missing of it must be keys.</param>
    /// <param name="json">The value as JSON.</param>
    public static JobEdit Set(string path, string json) => new SetValue(path, json);

    /// <summary>Puts what was typed into a field there, as a number or as a text.</summary>
    public static JobEdit Type(string path, string typed) => new SetValue(path, JobPath.Typed(typed));

    /// <summary>Puts a value into a list.</summary>
    /// <param name="list">Path of the list; a missing one under a block is made.</param>
    /// <param name="index">Before which item, from 0; the count of items, or more, for the end.</param>
    /// <param name="json">The value as JSON.</param>
    public static JobEdit Insert(string list, int index, string json) => new InsertItem(list, index, json);

    /// <summary>Takes a value out, with its key. What is not there stays so.</summary>
    public static JobEdit Remove(string path) => new RemoveValue(path);

    /// <summary>Gives a key another name; its value and its place stay.</summary>
    public static JobEdit Rename(string path, string key) => new RenameKey(path, key);

    /// <summary>Several changes, one after another.</summary>
    public static JobEdit All(params ReadOnlySpan<JobEdit> edits) => new EditRow([.. edits]);

    /// <summary>The places whose values decide whether an edit means the same in another text: what it changes, and the whole list where it moves items.</summary>
    public static IEnumerable<string> Places(JobEdit edit)
    {
        // Taking an item out, too, moves those after it.
        static string OfItem(string path) => path.EndsWith(']') ? path[..path.LastIndexOf('[')] : path;
        return edit switch
        {
            SetValue set => [set.Path],
            InsertItem insert => [insert.List],
            RemoveValue remove => [OfItem(remove.Path)],
            RenameKey rename => [rename.Path],
            EditRow row => row.Edits.SelectMany(Places),
            _ => [],
        };
    }
}

internal sealed record SetValue(string Path, string Json) : JobEdit;

internal sealed record InsertItem(string List, int Index, string Json) : JobEdit;

internal sealed record RemoveValue(string Path) : JobEdit;

internal sealed record RenameKey(string Path, string Key) : JobEdit;

internal sealed record EditRow(ImmutableArray<JobEdit> Edits) : JobEdit;

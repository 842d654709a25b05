using System.Collections.Immutable;

namespace SurfaceUnroll.Files.JobTexts;

/// <summary>What stands at a place of a job's text.</summary>
public enum JobValueKind
{
    /// <summary>A block of keys and values.</summary>
    Block,

    /// <summary>A list.</summary>
    List,

    /// <summary>A text in quotes.</summary>
    Text,

    /// <summary>A number.</summary>
    Number,

    /// <summary>true, false or null.</summary>
    Word,
}

/// <summary>One value of a job's text.</summary>
/// <param name="Path">Where it stands, for example <c>curves.front.points[2]</c>, as in faults and notices; empty for the whole.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Shown">As a person would type it into a field: a text without its quotes, everything else as written.</param>
/// <param name="Keys">Of a block its keys, in order, each once; else empty.</param>
/// <param name="Count">Of a list its items, of a block its keys; else 0.</param>
/// <param name="Start">Offset of its first character.</param>
/// <param name="End">Offset past its last character.</param>
public sealed record JobValue(string Path, JobValueKind Kind, string Shown, ImmutableArray<string> Keys, int Count, int Start, int End)
{
    /// <summary>Path of what stands under a key of this block.</summary>
    public string Under(string key) => JobPath.Under(Path, key);

    /// <summary>Path of an item of this list, from 0.</summary>
    public string Item(int index) => JobPath.Item(Path, index);
}

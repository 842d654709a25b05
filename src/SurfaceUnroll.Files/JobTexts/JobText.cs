using System.Collections.Frozen;
using System.Collections.Immutable;

namespace SurfaceUnroll.Files.JobTexts;

/// <summary>The text of a job file, to be looked into and changed value by value; comments, order and layout stay as they are.</summary>
/// <remarks>A value of its own: every change gives another text. What is read here is JSON alone; <see cref="JobFiles.JobFile"/> says what it means.</remarks>
public sealed class JobText
{
    private readonly FrozenDictionary<string, JobSpan>? _spans;

    private JobText(string text, Dictionary<string, JobSpan>? spans)
    {
        Text = text;
        _spans = spans?.ToFrozenDictionary();
    }

    /// <summary>The whole text.</summary>
    public string Text { get; }

    /// <summary>It is JSON, so that it can be looked into and changed.</summary>
    public bool IsJson => _spans is not null;

    /// <summary>Looks into a text.</summary>
    public static JobText Of(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return new JobText(text, JobSpan.Of(text));
    }

    /// <summary>The value at a path, or null.</summary>
    public JobValue? Find(string path) => Span(path)?.Value;

    /// <summary>What a field at a path shows; empty where nothing stands.</summary>
    public string Shown(string path) => Find(path)?.Shown ?? "";

    /// <summary>The value at a path as it is written; null where nothing stands.</summary>
    public string? Written(string path) => Find(path) is { } value ? Text[value.Start..value.End] : null;

    /// <summary>The values of a block or list, in order.</summary>
    public ImmutableArray<JobValue> Inside(string path) => Span(path) is { } span ? [.. span.Children.Select(c => _spans![c.Path].Value)] : [];

    /// <summary>The text with a change.</summary>
    /// <returns>This one if it is no JSON or the change finds no place in it.</returns>
    public JobText With(JobEdit edit)
    {
        ArgumentNullException.ThrowIfNull(edit);
        if (_spans is null) return this;
        return edit switch
        {
            SetValue set => With(set),
            InsertItem insert => With(insert),
            RemoveValue remove => With(remove),
            RenameKey rename => With(rename),
            EditRow row => row.Edits.Aggregate(this, (text, next) => text.With(next)),
            _ => this,
        };
    }

    internal JobSpan? Span(string path) => _spans is not null && _spans.TryGetValue(path, out JobSpan? span) ? span : null;

    private JobText With(SetValue set)
    {
        if (Find(set.Path) is { } value) return Replaced(value.Start, value.End, set.Json);
        (string parent, string rest) = Missing(set.Path);
        if (Span(parent) is not { Value.Kind: JobValueKind.Block } block || rest.Length == 0 || rest.Contains('[', StringComparison.Ordinal)) return this;
        // Blocks that are missing between are written round the value.
        string[] keys = rest.Split('.');
        string json = keys.Skip(1).Reverse().Aggregate(set.Json, (inner, key) => $"{{ {JobPath.Quoted(key)}: {inner} }}");
        return Inserted(block, block.Children.Length, $"{JobPath.Quoted(keys[0])}: {json}");
    }

    private JobText With(InsertItem insert)
    {
        if (Span(insert.List) is not { } list) return With(new SetValue(insert.List, $"[{insert.Json}]"));
        return list.Value.Kind == JobValueKind.List ? Inserted(list, Math.Clamp(insert.Index, 0, list.Children.Length), insert.Json) : this;
    }

    private JobText With(RemoveValue remove)
    {
        if (_spans!.Values.FirstOrDefault(s => s.Children.Any(c => c.Path == remove.Path)) is not { } parent) return this;
        (int start, int end) = TextCut.Of(Text, parent, parent.Children.Select(c => c.Path).ToList().IndexOf(remove.Path));
        return Replaced(start, end, "");
    }

    private JobText With(RenameKey rename)
    {
        JobChild child = _spans!.Values.SelectMany(s => s.Children).FirstOrDefault(c => c.Path == rename.Path && c.Key is not null);
        return child.Key is null ? this : Replaced(child.Start, child.KeyEnd, JobPath.Quoted(rename.Key));
    }

    // The longest part of a path that is there, and what is left of it.
    private (string There, string Left) Missing(string path)
    {
        for (string there = path; ; there = there[..Math.Max(0, there.LastIndexOfAny(['.', '[']))])
        {
            if (Span(there) is not null) return (there, path[there.Length..].TrimStart('.'));
            if (there.Length == 0) return ("", path);
        }
    }

    private JobText Inserted(JobSpan parent, int index, string json)
    {
        (int start, int end, string before, string after) = TextCut.Room(Text, parent, index);
        return Replaced(start, end, before + json + after);
    }

    private JobText Replaced(int start, int end, string with) => Of(Text[..start] + with + Text[end..]);
}

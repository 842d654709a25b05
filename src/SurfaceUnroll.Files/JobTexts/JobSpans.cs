using System.Collections.Immutable;
using System.Text;
using System.Text.Json;

namespace SurfaceUnroll.Files.JobTexts;

/// <summary>A value in its text, with what it holds.</summary>
/// <param name="Value">The value.</param>
/// <param name="Children">Of a block or list, in order.</param>
internal sealed record JobSpan(JobValue Value, ImmutableArray<JobChild> Children)
{
    /// <summary>The spans of a text by path; null if it is no JSON. Of a key that stands twice, the first.</summary>
    public static Dictionary<string, JobSpan>? Of(string text)
    {
        try
        {
            return new JobSpanReader(text).Read();
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            return null; // InvalidOperationException: an escape that stands for no character.
        }
    }
}

/// <summary>What a block or list holds at one place.</summary>
/// <param name="Path">Of the value.</param>
/// <param name="Key">Its key; null in a list.</param>
/// <param name="Start">Offset of the key, or of the value in a list.</param>
/// <param name="KeyEnd">Offset past the key's closing quote; <paramref name="Start"/> in a list.</param>
/// <param name="End">Offset past the value.</param>
internal readonly record struct JobChild(string Path, string? Key, int Start, int KeyEnd, int End);

/// <summary>Finds where every value of a JSON text stands, in characters.</summary>
internal sealed class JobSpanReader
{
    private readonly string _text;
    private readonly byte[] _bytes;
    private readonly int[] _characters; // Character offset of each byte.
    private readonly Dictionary<string, JobSpan> _spans = [];

    public JobSpanReader(string text)
    {
        _text = text;
        _bytes = Encoding.UTF8.GetBytes(text);
        _characters = new int[_bytes.Length + 1];
        int at = 0, character = 0;
        foreach (Rune rune in text.EnumerateRunes())
        {
            for (int i = 0; i < rune.Utf8SequenceLength; i++) _characters[at++] = character;
            character += rune.Utf16SequenceLength;
        }
        _characters[at] = character;
    }

    public Dictionary<string, JobSpan> Read()
    {
        // A byte order mark is no character of the text.
        int skip = _text.StartsWith('\uFEFF') ? 3 : 0;
        var json = new Utf8JsonReader(_bytes.AsSpan(skip), new JsonReaderOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true, MaxDepth = 64 });
        json.Read();
        Value(ref json, "", skip);
        json.Read();
        return _spans;
    }

    private JobValue Value(ref Utf8JsonReader json, string path, int skip)
    {
        int start = _characters[json.TokenStartIndex + skip];
        var children = ImmutableArray.CreateBuilder<JobChild>();
        JobValueKind kind;
        string? shown = null;
        switch (json.TokenType)
        {
            case JsonTokenType.StartObject:
                kind = JobValueKind.Block;
                while (json.Read() && json.TokenType != JsonTokenType.EndObject)
                {
                    string key = json.GetString()!;
                    (int keyStart, int keyEnd) = (_characters[json.TokenStartIndex + skip], _characters[json.BytesConsumed + skip]);
                    // The reader has taken the colon with the key.
                    keyEnd = _text.LastIndexOf('"', keyEnd - 1) + 1;
                    json.Read();
                    JobValue child = Value(ref json, JobPath.Under(path, key), skip);
                    children.Add(new JobChild(child.Path, key, keyStart, keyEnd, child.End));
                }
                break;
            case JsonTokenType.StartArray:
                kind = JobValueKind.List;
                while (json.Read() && json.TokenType != JsonTokenType.EndArray)
                {
                    JobValue child = Value(ref json, JobPath.Item(path, children.Count), skip);
                    children.Add(new JobChild(child.Path, null, child.Start, child.Start, child.End));
                }
                break;
            case JsonTokenType.String:
                (kind, shown) = (JobValueKind.Text, json.GetString());
                break;
            case JsonTokenType.Number:
                kind = JobValueKind.Number;
                break;
            default:
                kind = JobValueKind.Word;
                break;
        }
        int end = _characters[json.BytesConsumed + skip];
        var value = new JobValue(path, kind, shown ?? _text[start..end], [.. children.Where(c => c.Key is not null).Select(c => c.Key!).Distinct()], children.Count, start, end);
        _spans.TryAdd(path, new JobSpan(value, children.ToImmutable()));
        return value;
    }
}

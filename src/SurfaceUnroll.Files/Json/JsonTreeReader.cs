using System.Collections.Immutable;
using System.Text;
using System.Text.Json;

namespace SurfaceUnroll.Files.Json;

/// <summary>Why a text is not JSON, and where.</summary>
/// <param name="Code">Stable id in kebab-case.</param>
/// <param name="Place">Where reading stopped.</param>
/// <param name="Message">What is wrong.</param>
/// <param name="Mend">How to mend it.</param>
internal sealed record JsonBreak(string Code, TextPlace Place, string Message, string Mend);

/// <summary>Reads JSON with comments and trailing commas into a tree that knows its places.</summary>
internal sealed class JsonTreeReader
{
    /// <summary>Deepest nesting; a job needs seven.</summary>
    public const int DeepestNesting = 32;

    private readonly byte[] _text;
    private readonly LineMap _lines;
    private readonly Dictionary<long, double> _wild;
    private bool _tooDeep;

    private JsonTreeReader(string text)
    {
        _text = Encoding.UTF8.GetBytes(text);
        _lines = new LineMap(_text);
        _wild = WildNumbers.Take(_text);
    }

    /// <summary>Reads a whole text.</summary>
    /// <returns>The tree, or why there is none.</returns>
    public static (JsonTree? Tree, JsonBreak? Break) Read(string text)
    {
        if (text.StartsWith('\uFEFF')) text = text[1..]; // A byte order mark is no character of the text.
        return new JsonTreeReader(text).Read();
    }

    private (JsonTree?, JsonBreak?) Read()
    {
        var options = new JsonReaderOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true, MaxDepth = 2 * DeepestNesting };
        var json = new Utf8JsonReader(_text, options);
        JsonTree? tree = null;
        try
        {
            json.Read();
            tree = Value(ref json);
            json.Read(); // Throws at anything but space and comments.
            return (tree, null);
        }
        catch (JsonException fault)
        {
            return (null, _tooDeep ? TooDeepAt(json.TokenStartIndex) : Broken(fault, tree is not null));
        }
        catch (InvalidOperationException)
        {
            // GetString, at half of a surrogate pair.
            return (null, new JsonBreak("json-broken", _lines.At(json.TokenStartIndex),
                "This text holds a \\u escape that stands for no character.", "Write the character itself."));
        }
    }

    private JsonTree Value(ref Utf8JsonReader json)
    {
        TextPlace place = _lines.At(json.TokenStartIndex);
        return json.TokenType switch
        {
            JsonTokenType.StartObject => Object(ref json, place),
            JsonTokenType.StartArray => List(ref json, place),
            JsonTokenType.String => new JsonText(place, json.GetString()!),
            JsonTokenType.Number => new JsonNumber(place, _wild.TryGetValue(json.TokenStartIndex, out double wild) ? wild : json.GetDouble()),
            JsonTokenType.True or JsonTokenType.False => new JsonFlag(place, json.GetBoolean()),
            _ => new JsonNull(place),
        };
    }

    private JsonObject Object(ref Utf8JsonReader json, TextPlace place)
    {
        if (json.CurrentDepth >= DeepestNesting) throw TooDeep();
        var members = ImmutableArray.CreateBuilder<JsonMember>();
        while (json.Read() && json.TokenType != JsonTokenType.EndObject)
        {
            TextPlace keyPlace = _lines.At(json.TokenStartIndex);
            string key = json.GetString()!;
            json.Read();
            members.Add(new JsonMember(key, keyPlace, Value(ref json)));
        }
        return new JsonObject(place, members.ToImmutable());
    }

    private JsonList List(ref Utf8JsonReader json, TextPlace place)
    {
        if (json.CurrentDepth >= DeepestNesting) throw TooDeep();
        var items = ImmutableArray.CreateBuilder<JsonTree>();
        while (json.Read() && json.TokenType != JsonTokenType.EndArray) items.Add(Value(ref json));
        return new JsonList(place, items.ToImmutable());
    }

    private JsonException TooDeep()
    {
        _tooDeep = true;
        return new JsonException();
    }

    private JsonBreak TooDeepAt(long offset) => new("json-too-deep", _lines.At(offset),
        $"Blocks and lists are nested more than {DeepestNesting} deep here.", "A job needs no more than seven: look for a bracket that is opened again and again.");

    private JsonBreak Broken(JsonException fault, bool afterEnd)
    {
        int at = Offset(fault);
        if (string.IsNullOrWhiteSpace(Encoding.UTF8.GetString(_text)))
            return new("file-empty", TextPlace.Start, "The file is empty.", "Start from the job that \"surfaceunroll new FILE.json\" writes.");
        if (at >= _text.Length && !afterEnd)
        {
            return new("json-ends-early", _lines.At(_text.Length), "The file ends in the middle of the job.",
                "Look for a }, ] or \" that is missing, or copy the file again.");
        }
        TextPlace place = _lines.At(at);
        string found = at < _text.Length ? Character(at) : "the end of the file";
        return afterEnd
            ? new("json-goes-on", place, $"The job ends before this, but the file goes on with {found}.", "Take out what follows the last }, or mend a } too many before it.")
            : new("json-broken", place, $"The file cannot be read on from here: {found} is out of place.",
                "Look here and just before for a missing comma, colon, quote or bracket. Keys and texts stand in double quotes.");
    }

    // JsonException counts lines and the bytes within them from 0.
    private int Offset(JsonException fault)
    {
        int at = 0;
        for (long line = fault.LineNumber ?? 0; line > 0 && at < _text.Length; line--)
        {
            int length = _text.AsSpan(at).IndexOf((byte)'\n');
            at = length < 0 ? _text.Length : at + length + 1;
        }
        return (int)Math.Min(_text.Length, at + (fault.BytePositionInLine ?? 0));
    }

    private string Character(int at)
    {
        Rune.DecodeFromUtf8(_text.AsSpan(at), out Rune rune, out _);
        return Rune.IsControl(rune) || Rune.IsWhiteSpace(rune) ? "the end of this line" : $"'{rune}'";
    }
}

using System.Collections.Immutable;

namespace SurfaceUnroll.Files.Json;

/// <summary>A JSON value that knows where it stands in its file.</summary>
/// <param name="Place">Its first character.</param>
internal abstract record JsonTree(TextPlace Place)
{
    /// <summary>What it is, in plain words with an article, for messages.</summary>
    public abstract string Kind { get; }
}

/// <summary>An object; members in the order of the file, among them any key that stands there twice.</summary>
internal sealed record JsonObject(TextPlace Place, ImmutableArray<JsonMember> Members) : JsonTree(Place)
{
    public override string Kind => "a block { … }";

    /// <summary>The first value under a key, or null.</summary>
    public JsonTree? Find(string key) => Members.FirstOrDefault(m => m.Key == key)?.Value;
}

/// <summary>A key and its value.</summary>
internal sealed record JsonMember(string Key, TextPlace Place, JsonTree Value);

/// <summary>A list.</summary>
internal sealed record JsonList(TextPlace Place, ImmutableArray<JsonTree> Items) : JsonTree(Place)
{
    public override string Kind => "a list [ … ]";
}

/// <summary>A string.</summary>
internal sealed record JsonText(TextPlace Place, string Value) : JsonTree(Place)
{
    public override string Kind => "a text";
}

/// <summary>A number. NaN or infinite where the file says so, or where the number is too large for a double.</summary>
internal sealed record JsonNumber(TextPlace Place, double Value) : JsonTree(Place)
{
    public override string Kind => "a number";
}

/// <summary>true or false.</summary>
internal sealed record JsonFlag(TextPlace Place, bool Value) : JsonTree(Place)
{
    public override string Kind => Value ? "true" : "false";
}

/// <summary>null.</summary>
internal sealed record JsonNull(TextPlace Place) : JsonTree(Place)
{
    public override string Kind => "null";
}

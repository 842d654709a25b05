using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace SurfaceUnroll.Files.CurveFiles;

/// <summary>One value of a DXF file.</summary>
/// <param name="Code">Group code.</param>
/// <param name="Value">As written, without spaces around it.</param>
/// <param name="Line">Line of the value, from 1.</param>
internal readonly record struct DxfTag(int Code, string Value, int Line);

/// <summary>One entity with its values, and those that belong to it, as the corners of an old polyline do.</summary>
internal sealed record DxfEntity(string Kind, int Line, ImmutableArray<DxfTag> Tags, FileFaults Faults)
{
    // Far past any part in any unit, and small enough for the products of a few of them.
    private const double Largest = 1e9;

    public List<DxfEntity> Parts { get; } = [];

    public string Layer => Text(8, "0");

    public string Text(int code, string fallback) => Tags.FirstOrDefault(t => t.Code == code) is { Value: { } value } ? value : fallback;

    public int Whole(int code, int fallback = 0) => (int)Number(code, fallback);

    public double Number(int code, double fallback = 0) => Tags.FirstOrDefault(t => t.Code == code) is { Value: not null } tag ? Number(tag) : fallback;

    public ImmutableArray<double> Numbers(int code) => [.. Tags.Where(t => t.Code == code).Select(Number)];

    /// <summary>The value as a number; NaN with a fault where it is none.</summary>
    public double Number(DxfTag tag)
    {
        if (double.TryParse(tag.Value, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && Math.Abs(value) <= Largest) return value;
        Faults.Add("dxf-broken", tag.Line, $"{FileFaults.Show(tag.Value)} is no number that {("AEIOU".Contains(Kind[0], StringComparison.Ordinal) ? "an" : "a")} {Kind} can have.", "Write the file anew from the program that made it.");
        return double.NaN;
    }
}

/// <summary>The parts of a DXF file that curves are read from.</summary>
/// <param name="Units">Value of <c>$INSUNITS</c>; null where there is none, as in R12.</param>
/// <param name="Entities">Of the drawing itself.</param>
/// <param name="Blocks">By their names.</param>
internal sealed partial record DxfDocument(int? Units, ImmutableArray<DxfEntity> Entities, ImmutableDictionary<string, (DxfEntity Head, ImmutableArray<DxfEntity> Entities)> Blocks)
{
    private const string Anew = "Write the file anew, as ASCII (text) DXF.";

    /// <summary>Takes a file apart; null with faults where that cannot be done.</summary>
    public static DxfDocument? Read(byte[] bytes, FileFaults faults)
    {
        if (bytes.AsSpan(0, Math.Min(bytes.Length, 64)).Contains((byte)0))
        {
            faults.Add("dxf-broken", 0, "This is a binary file.", Anew);
            return null;
        }
        if (Tags(Text(bytes), faults) is not { } tags) return null;
        if (!tags.Any(t => t is { Code: 0, Value: "SECTION" }))
        {
            faults.Add("dxf-broken", 1, "This is no DXF file: it has no sections.", Anew);
            return null;
        }
        if (tags[^1] is not { Code: 0, Value: "EOF" })
        {
            faults.Add("dxf-broken", tags[^1].Line, "The file breaks off: a DXF file ends with EOF.", "Copy or write it again, whole.");
            return null;
        }
        int? units = null;
        var entities = ImmutableArray<DxfEntity>.Empty;
        var blocks = ImmutableDictionary.CreateBuilder<string, (DxfEntity, ImmutableArray<DxfEntity>)>(StringComparer.OrdinalIgnoreCase);
        for (int i = 0; i < tags.Count;)
        {
            int end = tags.FindIndex(i, t => t is { Code: 0, Value: "ENDSEC" or "EOF" });
            string name = tags[i] is { Code: 0, Value: "SECTION" } && tags[i + 1].Code == 2 ? tags[i + 1].Value : "";
            if (name == "HEADER") units = Header(tags[i..end]);
            if (name == "ENTITIES") entities = Grouped(tags[(i + 2)..end], faults);
            if (name == "BLOCKS") AddBlocks(Grouped(tags[(i + 2)..end], faults), blocks);
            i = end + 1;
        }
        return new DxfDocument(units, entities, blocks.ToImmutable());
    }

    private static int? Header(List<DxfTag> tags)
    {
        int at = tags.FindIndex(t => t is { Code: 9, Value: "$INSUNITS" });
        return at >= 0 && at + 1 < tags.Count && int.TryParse(tags[at + 1].Value, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int unit) ? unit : null;
    }

    private static ImmutableArray<DxfEntity> EntitiesOf(List<DxfTag> tags, FileFaults faults)
    {
        var found = ImmutableArray.CreateBuilder<DxfEntity>();
        int at = 0;
        while (at < tags.Count && tags[at].Code != 0) at++;
        while (at < tags.Count)
        {
            int next = at + 1;
            while (next < tags.Count && tags[next].Code != 0) next++;
            found.Add(new DxfEntity(tags[at].Value, tags[at].Line, [.. tags[(at + 1)..next]], faults));
            at = next;
        }
        return found.ToImmutable();
    }

    // Corners of a polyline go into it.
    private static ImmutableArray<DxfEntity> Grouped(List<DxfTag> tags, FileFaults faults)
    {
        var whole = ImmutableArray.CreateBuilder<DxfEntity>();
        DxfEntity? open = null;
        foreach (DxfEntity entity in EntitiesOf(tags, faults))
        {
            if (entity.Kind == "SEQEND") open = null;
            else if (entity.Kind == "VERTEX" && open is not null) open.Parts.Add(entity);
            else
            {
                whole.Add(entity);
                open = entity.Kind == "POLYLINE" ? entity : null;
            }
        }
        return whole.ToImmutable();
    }

    private static void AddBlocks(ImmutableArray<DxfEntity> entities, ImmutableDictionary<string, (DxfEntity, ImmutableArray<DxfEntity>)>.Builder blocks)
    {
        for (int i = 0; i < entities.Length; i++)
        {
            if (entities[i].Kind != "BLOCK") continue;
            int end = i + 1;
            while (end < entities.Length && entities[end].Kind != "ENDBLK") end++;
            blocks[entities[i].Text(2, "")] = (entities[i], entities[(i + 1)..end]);
            i = end;
        }
    }

    private static List<DxfTag>? Tags(string text, FileFaults faults)
    {
        var tags = new List<DxfTag>();
        string[] lines = text.ReplaceLineEndings("\n").Split('\n');
        for (int i = 0; i < lines.Length; i += 2)
        {
            if (i >= lines.Length - 2 && string.IsNullOrWhiteSpace(lines[i])) break;
            if (!int.TryParse(lines[i], NumberStyles.Integer, CultureInfo.InvariantCulture, out int code))
            {
                faults.Add("dxf-broken", i + 1, tags.Count == 0 ? "This is no DXF file." : $"Here should be a group code, a whole number, not {FileFaults.Show(lines[i].Trim())}.", Anew);
                return null;
            }
            if (i + 1 >= lines.Length)
            {
                faults.Add("dxf-broken", i + 1, "The file breaks off after a group code.", "Copy or write it again, whole.");
                return null;
            }
            if (code != 999) tags.Add(new DxfTag(code, Escape().Replace(lines[i + 1].Trim(), m => ((char)Convert.ToInt32(m.Groups[1].Value, 16)).ToString()), i + 2));
            if (code == 0 && tags[^1].Value == "EOF") break;
        }
        if (tags.Count > 0) return tags;
        faults.Add("dxf-broken", 0, "There is nothing in the file.", Anew);
        return null;
    }

    // UTF-8 from R2007 on, a code page of the system before: letters beyond ASCII then may come out wrong, which matters for names of layers only.
    private static string Text(byte[] bytes)
    {
        try
        {
            return new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(bytes).TrimStart('\uFEFF');
        }
        catch (DecoderFallbackException)
        {
            return Encoding.Latin1.GetString(bytes);
        }
    }

    [GeneratedRegex(@"\\U\+([0-9A-Fa-f]{4})")]
    private static partial Regex Escape();
}

using System.Buffers.Binary;
using System.Collections.Frozen;
using System.Text;

namespace SurfaceUnroll.Files.Pdf;

/// <summary>The typeface of the printed pages: its file and the few measures that placing text needs, read from it once.</summary>
/// <remarks>Tables head, hhea, hmtx, OS/2 and cmap as in the OpenType specification 1.9; all numbers big-endian.</remarks>
internal sealed class InterFont
{
    private const int SegmentMap = 4;       // cmap format 4: UTF-16 units in segments

    private static readonly Lazy<InterFont> Loaded = new(() => new InterFont(ReadEmbedded()));

    private readonly byte[] _file;
    private readonly FrozenDictionary<char, double> _advances;

    private InterFont(byte[] file)
    {
        _file = file;
        double em = U16(Table("head") + 18);
        CapHeight = U16(Table("OS/2") + 88) / em;
        Descent = -(short)U16(Table("hhea") + 6) / em;
        _advances = ReadMap().ToFrozenDictionary(pair => pair.Key, pair => Advance(pair.Value) / em);
    }

    /// <summary>The one instance.</summary>
    public static InterFont Instance => Loaded.Value;

    /// <summary>The whole TrueType file.</summary>
    public byte[] File => _file;

    /// <summary>Height of a capital above the baseline, in parts of the font size.</summary>
    public double CapHeight { get; }

    /// <summary>How far letters may reach below the baseline, in parts of the font size; positive.</summary>
    public double Descent { get; }

    /// <summary>True if the font has a glyph for the character.</summary>
    public bool Has(char character) => _advances.ContainsKey(character);

    /// <summary>The text with a question mark for every character that the font lacks, and a space for every control character.</summary>
    public string Printable(string text)
    {
        if (text.All(Has)) return text;
        var printable = new StringBuilder(text.Length);
        foreach (Rune rune in text.EnumerateRunes())
        {
            if (rune.IsBmp && Has((char)rune.Value)) printable.Append((char)rune.Value);
            else printable.Append(Rune.IsControl(rune) ? ' ' : '?');
        }
        return printable.ToString();
    }

    /// <summary>Width of a printable text at font size 1: the sum of the advances, as the writer sets text without kerning.</summary>
    public double Width(string printable) => printable.Sum(character => _advances[character]);

    private static byte[] ReadEmbedded()
    {
        using Stream stream = typeof(InterFont).Assembly.GetManifestResourceStream("Inter-Regular.ttf")
            ?? throw new InvalidOperationException("The font was not embedded when this library was built.");
        byte[] file = new byte[stream.Length];
        stream.ReadExactly(file);
        return file;
    }

    private Dictionary<char, int> ReadMap()
    {
        int map = FindSegmentMap(), segments = U16(map + 6) / 2;
        int ends = map + 14, starts = ends + (2 * segments) + 2, deltas = starts + (2 * segments), offsets = deltas + (2 * segments);
        var glyphs = new Dictionary<char, int>();
        for (int s = 0; s < segments; s++)
        {
            int end = U16(ends + (2 * s)), start = U16(starts + (2 * s)), delta = U16(deltas + (2 * s));
            int at = offsets + (2 * s), offset = U16(at);
            for (int c = start; c <= end && c < char.MaxValue; c++)
            {
                int glyph = offset == 0 ? c : U16(at + offset + (2 * (c - start)));
                if (offset == 0 || glyph != 0) glyph = (glyph + delta) & 0xFFFF;
                if (glyph != 0 && !char.IsControl((char)c)) glyphs[(char)c] = glyph;
            }
        }
        return glyphs;
    }

    private int FindSegmentMap()
    {
        int table = Table("cmap"), count = U16(table + 2);
        for (int i = 0; i < count; i++)
        {
            int map = table + (int)U32(table + 4 + (8 * i) + 4);
            if (U16(map) == SegmentMap) return map;
        }
        throw new InvalidDataException("The font has no character map of format 4.");
    }

    private int Advance(int glyph) => U16(Table("hmtx") + (4 * Math.Min(glyph, U16(Table("hhea") + 34) - 1)));

    private int Table(string tag)
    {
        uint wanted = BinaryPrimitives.ReadUInt32BigEndian(Encoding.ASCII.GetBytes(tag));
        for (int i = 0; i < U16(4); i++)
            if (U32(12 + (16 * i)) == wanted) return (int)U32(12 + (16 * i) + 8);
        throw new InvalidDataException($"The font has no table {tag}.");
    }

    private ushort U16(int at) => BinaryPrimitives.ReadUInt16BigEndian(_file.AsSpan(at));

    private uint U32(int at) => BinaryPrimitives.ReadUInt32BigEndian(_file.AsSpan(at));
}

using System.Globalization;
using System.Text;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Files.Dxf;

/// <summary>The text of a DXF file: pairs of lines, a group code and its value.</summary>
internal sealed class DxfTags
{
    private readonly StringBuilder _text = new();

    /// <summary>One pair. The value is made plain ASCII: anything else is written as <c>\U+XXXX</c>, which every reader of AC1015 knows.</summary>
    public DxfTags Add(int code, string value)
    {
        _text.Append(CultureInfo.InvariantCulture, $"{code,3}\n");
        foreach (char c in value)
        {
            if (c is >= ' ' and <= '~') _text.Append(c);
            else if (char.IsControl(c)) _text.Append(' ');
            else _text.Append(CultureInfo.InvariantCulture, $"\\U+{(int)c:X4}");
        }
        _text.Append('\n');
        return this;
    }

    /// <summary>A whole number.</summary>
    public DxfTags Add(int code, int value) => Add(code, value.ToString(CultureInfo.InvariantCulture));

    /// <summary>A real number.</summary>
    public DxfTags Add(int code, double value)
    {
        string text = PlainNumber.Mm(value);
        return Add(code, text.Contains('.', StringComparison.Ordinal) ? text : text + ".0");
    }

    /// <summary>A handle.</summary>
    public DxfTags Handle(int code, int handle) => Add(code, handle.ToString("X", CultureInfo.InvariantCulture));

    /// <summary>A point of the plane: codes <paramref name="code"/> and <paramref name="code"/> + 10.</summary>
    public DxfTags At(int code, Vec2 p) => Add(code, p.X).Add(code + 10, p.Y);

    /// <summary>A point of the plane at height 0: codes <paramref name="code"/>, + 10 and + 20.</summary>
    public DxfTags AtZero(int code, Vec2 p) => At(code, p).Add(code + 20, 0.0);

    /// <summary>Several subclass markers or names, each a pair of the same code.</summary>
    public DxfTags Add(int code, params ReadOnlySpan<string> values)
    {
        foreach (string value in values)
        {
            Add(code, value);
        }
        return this;
    }

    /// <summary>The file's bytes, ASCII.</summary>
    public byte[] ToBytes() => Encoding.ASCII.GetBytes(_text.ToString());
}

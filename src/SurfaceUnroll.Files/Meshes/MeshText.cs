using System.Buffers;
using System.Buffers.Text;

namespace SurfaceUnroll.Files.Meshes;

/// <summary>Walks through the words of a mesh file written as text, without making strings of them.</summary>
/// <param name="bytes">The file; lines end in LF, CR LF or CR.</param>
internal ref struct MeshText(ReadOnlySpan<byte> bytes)
{
    private static ReadOnlySpan<byte> LineEnds => "\r\n"u8;

    private static readonly SearchValues<byte> WordEnds = SearchValues.Create(" \t\r\n\f\v"u8);

    private readonly ReadOnlySpan<byte> _bytes = bytes;

    private int _at = bytes.StartsWith("\uFEFF"u8) ? 3 : 0;

    /// <summary>Line of the last word, from 1.</summary>
    public int Line { get; private set; } = 1;

    /// <summary>True if nothing is left.</summary>
    public readonly bool AtEnd => _at >= _bytes.Length;

    /// <summary>The next word of this line; empty at its end. A backslash at the end of a line joins the next one to it.</summary>
    public ReadOnlySpan<byte> Word()
    {
        while (_at < _bytes.Length)
        {
            byte b = _bytes[_at];
            if (b is (byte)' ' or (byte)'\t' or (byte)'\f' or (byte)'\v') _at++;
            else if (b == '\\' && EndsLine(_at + 1)) (_at, Line) = (AfterLine(_at + 1), Line + 1);
            else break;
        }
        int length = _bytes[_at..].IndexOfAny(WordEnds);
        ReadOnlySpan<byte> word = length < 0 ? _bytes[_at..] : _bytes.Slice(_at, length);
        if (word is [.., (byte)'\\'] && EndsLine(_at + word.Length)) word = word[..^1];
        _at += word.Length;
        return word;
    }

    /// <summary>The next word of this line or a later one; empty at the end of the file.</summary>
    public ReadOnlySpan<byte> WordAnywhere()
    {
        while (true)
        {
            ReadOnlySpan<byte> word = Word();
            if (!word.IsEmpty || AtEnd) return word;
            SkipLine(joined: false);
        }
    }

    /// <summary>Goes to the start of the next line.</summary>
    /// <param name="joined">A backslash at the end of the line joins the next one to it, so that both are skipped.</param>
    public void SkipLine(bool joined)
    {
        bool more = true;
        while (more && _at < _bytes.Length)
        {
            int length = _bytes[_at..].IndexOfAny(LineEnds);
            if (length < 0)
            {
                _at = _bytes.Length;
                return;
            }
            int end = _at + length;
            more = joined && end > 0 && _bytes[end - 1] == '\\';
            (_at, Line) = (AfterLine(end), Line + 1);
        }
    }

    /// <summary>A whole word as a number, for example <c>-1.5e-3</c>.</summary>
    public static bool Number(ReadOnlySpan<byte> word, out double value) => Utf8Parser.TryParse(word, out value, out int used) && used == word.Length;

    private readonly bool EndsLine(int at) => at >= _bytes.Length || _bytes[at] is (byte)'\r' or (byte)'\n';

    private readonly int AfterLine(int end)
    {
        if (end >= _bytes.Length) return _bytes.Length;
        return _bytes[end] == '\r' && end + 1 < _bytes.Length && _bytes[end + 1] == '\n' ? end + 2 : end + 1;
    }
}

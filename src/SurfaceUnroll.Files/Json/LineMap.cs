namespace SurfaceUnroll.Files.Json;

/// <summary>Turns offsets into UTF-8 text to lines and columns.</summary>
internal sealed class LineMap
{
    private readonly byte[] _text;
    private readonly List<int> _lineStarts = [0];

    public LineMap(byte[] text)
    {
        _text = text;
        for (int i = 0; i < text.Length; i++)
        {
            bool ends = text[i] == '\n' || (text[i] == '\r' && (i + 1 == text.Length || text[i + 1] != '\n'));
            if (ends) _lineStarts.Add(i + 1);
        }
    }

    /// <summary>Place of the character at a byte offset; the end of the text has a place too.</summary>
    public TextPlace At(long offset)
    {
        int end = (int)Math.Clamp(offset, 0, _text.Length);
        int line = _lineStarts.BinarySearch(end);
        if (line < 0) line = ~line - 1;
        int column = 1;
        for (int i = _lineStarts[line]; i < end; i++)
        {
            if ((_text[i] & 0xC0) != 0x80) column++; // Bytes 10xxxxxx go on with a character.
        }
        return new TextPlace(line + 1, column);
    }
}

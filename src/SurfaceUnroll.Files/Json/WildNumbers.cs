namespace SurfaceUnroll.Files.Json;

/// <summary>Finds NaN and Infinity in JSON text, which has no such numbers, so that reading can go on past them.</summary>
internal static class WildNumbers
{
    private static readonly (byte[] Word, double Value)[] Words =
    [
        ("NaN"u8.ToArray(), double.NaN),
        ("Infinity"u8.ToArray(), double.PositiveInfinity),
        ("-Infinity"u8.ToArray(), double.NegativeInfinity),
    ];

    /// <summary>Overwrites each with 0 and spaces of the same length, which moves nothing.</summary>
    /// <param name="text">UTF-8; changed in place.</param>
    /// <returns>Values by the byte offset at which they stood.</returns>
    public static Dictionary<long, double> Take(byte[] text)
    {
        var found = new Dictionary<long, double>();
        for (int i = 0; i < text.Length; i++)
        {
            i = PastTextOrComment(text, i);
            if (i >= text.Length || (i > 0 && IsWord(text[i - 1]))) continue;
            foreach ((byte[] word, double value) in Words)
            {
                if (!text.AsSpan(i).StartsWith(word) || (i + word.Length < text.Length && IsWord(text[i + word.Length]))) continue;
                text.AsSpan(i, word.Length).Fill((byte)' ');
                text[i] = (byte)'0';
                found.Add(i, value);
                break;
            }
        }
        return found;
    }

    private static bool IsWord(byte c) => char.IsAsciiLetterOrDigit((char)c) || c is (byte)'_' or (byte)'.' or (byte)'-';

    // The offset of the last byte of the string or comment that begins at an offset, or that offset.
    private static int PastTextOrComment(byte[] text, int at)
    {
        ReadOnlySpan<byte> rest = text.AsSpan(at);
        if (rest[0] == '"')
        {
            for (int i = 1; i < rest.Length; i++)
            {
                if (rest[i] == '\\') i++;
                else if (rest[i] is (byte)'"' or (byte)'\n') return at + i;
            }
            return text.Length;
        }
        if (rest.StartsWith("//"u8)) return rest.IndexOf((byte)'\n') is >= 0 and int line ? at + line : text.Length;
        if (rest.StartsWith("/*"u8)) return rest[2..].IndexOf("*/"u8) is >= 0 and int close ? at + close + 3 : text.Length;
        return at;
    }
}

using System.Buffers.Text;
using System.Text;

namespace SurfaceUnroll.Files.Pdf;

/// <summary>Replaces what PDFsharp draws at random for each file by what follows from a digest, without moving a byte.</summary>
/// <remarks>
/// The random parts are the two file IDs of the trailer, the six capitals before the name of a font subset, and the UUIDs of the metadata
/// (ISO 32000-2, 9.9.2, 14.3.2 and 14.4). All have a fixed length, so the table of offsets stays true. The metadata are blanked and no
/// longer referred to: they only repeat the document information, and a title with an ampersand makes them ill-formed.
/// </remarks>
internal static class FixedIdentity
{
    private const int IdDigits = 32;
    private const int TagLetters = 6;
    private const byte Blank = (byte)' ';

    /// <summary>Writes the identity into a whole file.</summary>
    /// <param name="file">As saved; changed in place.</param>
    /// <param name="digest">At least 16 bytes.</param>
    /// <exception cref="InvalidOperationException">The file is not laid out as expected, so it would not come out the same twice.</exception>
    public static void Write(Span<byte> file, ReadOnlySpan<byte> digest)
    {
        WriteIds(file, Encoding.ASCII.GetBytes(Convert.ToHexString(digest[..(IdDigits / 2)])));
        WriteTags(file, digest);
        BlankMetadata(file);
    }

    private static void WriteIds(Span<byte> file, ReadOnlySpan<byte> hex)
    {
        ReadOnlySpan<byte> between = "><"u8;
        Span<byte> trailer = file[After(file, "\ntrailer"u8)..];
        Span<byte> ids = trailer[After(trailer, "/ID[<"u8)..];
        if (!ids.Slice(IdDigits, between.Length).SequenceEqual(between))
            throw new InvalidOperationException("The trailer has no pair of IDs.");
        hex.CopyTo(ids);
        hex.CopyTo(ids[(IdDigits + between.Length)..]);
    }

    private static void BlankMetadata(Span<byte> file)
    {
        Span<byte> packet = file[After(file, "<</Type/Metadata/Subtype/XML/Length "u8)..];
        if (!Utf8Parser.TryParse(packet, out int length, out _)) throw new InvalidOperationException("The metadata have no length.");
        packet.Slice(After(packet[..packet.IndexOf("<?xpacket"u8)], "stream"u8) + 1, length).Fill(Blank);

        ReadOnlySpan<byte> key = "/Metadata "u8, end = " 0 R"u8;
        Span<byte> catalog = file[After(file, "/Type/Catalog"u8)..];
        int at = catalog.IndexOf(key);
        if (at < 0) throw new InvalidOperationException("The catalog refers to no metadata.");
        Span<byte> reference = catalog[at..];
        reference[..(reference.IndexOf(end) + end.Length)].Fill(Blank);
    }

    private static void WriteTags(Span<byte> file, ReadOnlySpan<byte> digest)
    {
        ReadOnlySpan<byte> name = "+Inter"u8;
        Span<byte> tag = stackalloc byte[TagLetters];
        for (int i = 0; i < TagLetters; i++) tag[i] = (byte)('A' + (digest[i] % 26));
        int from = 0;
        while (file[from..].IndexOf(name) is >= 0 and int found)
        {
            int at = from + found - TagLetters;
            // A name begins with a slash and six capitals; the same letters elsewhere do not.
            if (at > 0 && file[at - 1] == '/' && file.Slice(at, TagLetters).IndexOfAnyExceptInRange((byte)'A', (byte)'Z') < 0)
                tag.CopyTo(file[at..]);
            from += found + name.Length;
        }
    }

    /// <summary>Place after the last occurrence: what PDFsharp adds when saving stands behind all that came from outside.</summary>
    private static int After(ReadOnlySpan<byte> file, ReadOnlySpan<byte> what)
    {
        int at = file.LastIndexOf(what);
        return at >= 0 ? at + what.Length : throw new InvalidOperationException($"There is no {Encoding.ASCII.GetString(what)} in the file.");
    }
}

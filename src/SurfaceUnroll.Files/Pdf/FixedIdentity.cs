using System.Text;

namespace SurfaceUnroll.Files.Pdf;

/// <summary>Replaces what PDFsharp draws at random for each file by what follows from a digest, without moving a byte.</summary>
/// <remarks>
/// The random parts are the two file IDs of the trailer, the two UUIDs of the metadata, and the six capitals before the name of a font
/// subset (ISO 32000-2, 9.9.2 and 14.4). All have a fixed length, so the table of offsets stays true. Only objects are looked at: what
/// stands in a compressed stream is skipped.
/// </remarks>
internal static class FixedIdentity
{
    private const int IdDigits = 32;
    private const int TagLetters = 6;

    private static readonly byte[] SubsetName = "+Inter"u8.ToArray();
    private static readonly byte[][] UuidElements = ["<xmpMM:DocumentID>uuid:"u8.ToArray(), "<xmpMM:InstanceID>uuid:"u8.ToArray()];

    /// <summary>Writes the identity into a whole file.</summary>
    /// <param name="file">As saved; changed in place.</param>
    /// <param name="digest">At least 16 bytes.</param>
    /// <exception cref="InvalidOperationException">The file is not laid out as expected, so it would not come out the same twice.</exception>
    public static void Write(Span<byte> file, ReadOnlySpan<byte> digest)
    {
        string hex = Convert.ToHexString(digest[..(IdDigits / 2)]);
        WriteIds(file, Encoding.ASCII.GetBytes(hex));
        byte[] uuid = Encoding.ASCII.GetBytes(new Guid(digest[..16]).ToString("D"));
        foreach (byte[] element in UuidElements) uuid.CopyTo(file[(Find(file, element) + element.Length)..]);
        WriteTags(file, digest);
    }

    private static void WriteIds(Span<byte> file, ReadOnlySpan<byte> hex)
    {
        ReadOnlySpan<byte> trailer = "trailer"u8, key = "/ID[<"u8, between = "><"u8;
        int first = file.LastIndexOf(trailer);
        if (first >= 0) first += Find(file[first..], key) + key.Length;
        int second = first + IdDigits + between.Length;
        if (first < 0 || !file.Slice(first + IdDigits, between.Length).SequenceEqual(between))
            throw new InvalidOperationException("The trailer has no pair of IDs.");
        hex.CopyTo(file[first..]);
        hex.CopyTo(file[second..]);
    }

    private static void WriteTags(Span<byte> file, ReadOnlySpan<byte> digest)
    {
        Span<byte> tag = stackalloc byte[TagLetters];
        for (int i = 0; i < TagLetters; i++) tag[i] = (byte)('A' + (digest[i] % 26));
        int from = 0;
        while (file[from..].IndexOf(SubsetName) is >= 0 and int found)
        {
            int at = from + found - TagLetters;
            // A name begins with a slash; the same letters by chance inside a stream do not follow a slash and six capitals.
            if (at > 0 && file[at - 1] == '/' && file.Slice(at, TagLetters).IndexOfAnyExceptInRange((byte)'A', (byte)'Z') < 0)
                tag.CopyTo(file[at..]);
            from += found + SubsetName.Length;
        }
    }

    private static int Find(ReadOnlySpan<byte> file, ReadOnlySpan<byte> what)
    {
        int at = file.LastIndexOf(what);
        return at >= 0 ? at : throw new InvalidOperationException($"There is no {Encoding.ASCII.GetString(what)} in the file.");
    }
}

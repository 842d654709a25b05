using System.Reflection;
using PdfSharp.Drawing;
using PdfSharp.Fonts;

namespace SurfaceUnroll.Files.Pdf;

/// <summary>The one font of the printed pages, Inter Regular, embedded in this assembly.</summary>
internal sealed class PatternFont : IFontResolver
{
    /// <summary>Cap height of Inter as a share of its size: 1490 of 2048 units (read from the font's OS/2 table).</summary>
    public const double CapHeight = 1490.0 / 2048;

    private const string Face = "Inter";

    private static readonly Lazy<byte[]> Bytes = new(Read);
    private static readonly Lock Gate = new();

    /// <summary>The font at a cap height, in the unit of the caller's drawing.</summary>
    public static XFont At(double capHeight)
    {
        lock (Gate)
        {
            GlobalFontSettings.FontResolver ??= new PatternFont();
        }
        return new XFont(Face, capHeight / CapHeight);
    }

    /// <inheritdoc/>
    public FontResolverInfo? ResolveTypeface(string familyName, bool bold, bool italic) => new(Face);

    /// <inheritdoc/>
    public byte[]? GetFont(string faceName) => Bytes.Value;

    private static byte[] Read()
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("Inter-Regular.ttf")!;
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}

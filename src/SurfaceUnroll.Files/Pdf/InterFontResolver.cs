using PdfSharp.Fonts;

namespace SurfaceUnroll.Files.Pdf;

/// <summary>Gives PDFsharp the embedded font, whatever fonts the machine has: the same job prints the same everywhere.</summary>
internal sealed class InterFontResolver : IFontResolver
{
    /// <summary>Family name to ask for.</summary>
    public const string Family = "Inter";

    private static readonly Lazy<bool> Installed = new(() =>
    {
        GlobalFontSettings.FontResolver = new InterFontResolver();
        return true;
    });

    /// <summary>Makes this the resolver of the process; PDFsharp knows only one and wants it before the first font.</summary>
    public static void Install() => _ = Installed.Value;

    /// <inheritdoc/>
    public FontResolverInfo? ResolveTypeface(string familyName, bool isBold, bool isItalic) => new(Family);

    /// <inheritdoc/>
    public byte[]? GetFont(string faceName) => InterFont.Instance.File;
}

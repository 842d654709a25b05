namespace SurfaceUnroll.Files.Json;

/// <summary>A place in a text file.</summary>
/// <param name="Line">From 1.</param>
/// <param name="Column">From 1, in Unicode characters; a tab is one.</param>
public readonly record struct TextPlace(int Line, int Column)
{
    /// <summary>The first character of a file.</summary>
    public static TextPlace Start => new(1, 1);
}

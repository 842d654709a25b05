namespace SurfaceUnroll.Bench.Fields;

/// <summary>Ids of what stands on the page for a place of the job.</summary>
internal static class FieldIds
{
    /// <summary>Id for the value at a path.</summary>
    /// <param name="path">Of the value.</param>
    /// <param name="kind">What stands there: the field itself, or something else of the same value.</param>
    public static string Of(string path, string kind = "field") => $"{kind}-{new string([.. path.Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-')])}";
}

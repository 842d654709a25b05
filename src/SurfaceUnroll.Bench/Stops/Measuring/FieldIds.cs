namespace SurfaceUnroll.Bench.Stops.Measuring;

/// <summary>Ids of fields, to put the cursor there.</summary>
internal static class FieldIds
{
    /// <summary>Id of the input of the value at a path, as the fields give it.</summary>
    public static string Of(string path) => "field-" + new string([.. path.Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-')]);
}

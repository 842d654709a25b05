using System.Globalization;

namespace SurfaceUnroll.Photos;

/// <summary>Marks and distances in words.</summary>
internal static class MarkNames
{
    /// <summary>“A–B”.</summary>
    public static string Between(MarkReference marks, TapedDistance distance) => $"{marks.Marks[distance.From].Name}–{marks.Marks[distance.To].Name}";

    /// <summary>“A, B or C”.</summary>
    public static string Joined(IReadOnlyList<string> names, string last) => names.Count < 2 ? string.Concat(names) : $"{string.Join(", ", names.Take(names.Count - 1))} {last} {names[^1]}";

    /// <summary>A length to a tenth of a millimetre.</summary>
    public static string Mm(double value) => string.Create(CultureInfo.InvariantCulture, $"{value:0.0} mm");
}

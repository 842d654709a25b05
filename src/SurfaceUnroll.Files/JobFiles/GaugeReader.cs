using System.Globalization;
using System.Text.RegularExpressions;
using SurfaceUnroll.Files.Json;
using SurfaceUnroll.Forming;

namespace SurfaceUnroll.Files.JobFiles;

/// <summary>Reads a thickness that is given as a gauge number, such as <c>20 ga</c>.</summary>
internal static partial class GaugeReader
{
    /// <summary>True if a gauge stands there, and no length.</summary>
    public static bool IsGauge(JsonTree tree) => tree is JsonText text && Gauge().IsMatch(text.Value);

    /// <summary>Thickness, mm; NaN with a fault.</summary>
    /// <param name="tree">For which <see cref="IsGauge"/> is true.</param>
    /// <param name="path">Its path.</param>
    /// <param name="material">The sheet's material; null where the job does not say, or the list does not have it.</param>
    /// <param name="written">The material as the job has it; null where it does not say.</param>
    /// <param name="faults">Where faults go.</param>
    public static double Read(JsonTree tree, string path, Material? material, string? written, FaultList faults)
    {
        string text = ((JsonText)tree).Value, number = Gauge().Match(text).Groups[1].Value;
        if (material?.Gauges is not { } system)
        {
            string of = written is null ? "and the job does not say what the sheet is" : $"and there is no gauge table for \"{written}\"";
            faults.Add("gauge-no-table", path, tree.Place, $"A gauge number means another thickness for every metal, {of}.",
                $"Write the thickness as a length, such as \"0.9 mm\" or \".0359 in\"{(written is null ? ", or say the material" : "")}. Gauges are known for {Known()}.");
            return double.NaN;
        }
        if (int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out int gauge) && Gauges.Thickness(system, gauge) is { } thickness) return thickness;
        (int first, int last) = Gauges.Range(system);
        faults.Add("gauge-unknown", path, tree.Place, $"\"{text}\" is not in the gauge table of {Gauges.Name(system)}.",
            $"Write a whole number from {Measures.Count(first)} to {Measures.Count(last)}, or the thickness as a length, such as \"0.9 mm\".");
        return double.NaN;
    }

    private static string Known()
    {
        string[] names = [.. Enum.GetValues<GaugeSystem>().Select(s => $"{Gauges.Name(s)} ({Measures.Count(Gauges.Range(s).First)} to {Measures.Count(Gauges.Range(s).Last)})")];
        return $"{string.Join(", ", names[..^1])} and {names[^1]}";
    }

    [GeneratedRegex(@"^\s*(-?[0-9]+(?:[.,][0-9]+)?)\s*-?\s*(?:ga|gauges?|gage)\.?\s*$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Gauge();
}

using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Forming;

namespace SurfaceUnroll.Cli;

/// <summary>The command <c>materials</c>.</summary>
internal static class MaterialPrinting
{
    private static readonly char[] Breaks = [' ', '-', ',', ';', '/', '(', ')', '"'];

    /// <summary>Lists all materials, or tells one in full.</summary>
    /// <param name="name">A material in the words of the shop; empty for the list.</param>
    /// <param name="screen">Where to write.</param>
    public static int Run(string name, Screen screen)
    {
        if (string.IsNullOrWhiteSpace(name))
        {
            TextTable.Write(screen, MaterialRows.Headings, [.. Materials.All.Select(MaterialRows.Short)]);
            return ExitStatus.Done;
        }
        (Material material, bool known) = Materials.Of(name);
        string? meant = Meant(name);
        if (!known || meant is not null)
        {
            FaultText.Write(screen.Error, "surfaceunroll", $"There is no material “{name}” in the list.",
                meant is not null ? $"Did you mean “{meant}”?" : $"The materials are: {string.Join("; ", Materials.All.Select(m => m.Name))}. A job may define its own.");
            return ExitStatus.CannotUse;
        }
        screen.Out.WriteLine(material.Name);
        screen.Out.WriteLine($"called {string.Join(", ", material.Words)}");
        screen.Out.WriteLine(MaterialRows.Thicknesses(material));
        screen.Out.WriteLine();
        TextTable.Write(screen, MaterialRows.FullHeadings, [.. MaterialRows.Full(material)]);
        if (!material.Springback.IsEmpty)
        {
            screen.Out.WriteLine();
            TextTable.Write(screen, MaterialRows.FactorHeadings(material), [MaterialRows.Factors(material)]);
        }
        if (material.Gauges is not { } system) return ExitStatus.Done;
        screen.Out.WriteLine();
        TextTable.Write(screen, MaterialRows.GaugeHeadings, [.. MaterialRows.GaugeTable(system)]);
        return ExitStatus.Done;
    }

    // The name with its mistyped words put right; null if none is. "stainles steel" holds the name "steel", but means another.
    private static string? Meant(string name)
    {
        string[] known = [.. Materials.All.SelectMany(m => m.Words.Append(m.Name)).SelectMany(Words).Distinct()];
        string[] written = Words(name), mended = [.. written.Select(w => known.Contains(w) ? w : NearestWord.To(w, known) ?? w)];
        string text = string.Join(' ', mended);
        return mended.SequenceEqual(written) || !Materials.Of(text).Known ? null : text;
    }

    private static string[] Words(string text) => text.ToLowerInvariant().Split(Breaks, StringSplitOptions.RemoveEmptyEntries);
}

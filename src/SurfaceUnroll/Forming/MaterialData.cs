using System.Collections.Immutable;
using System.Text.Json;

namespace SurfaceUnroll.Forming;

/// <summary>Reads the list of materials that is built in, <c>materials.json</c>: the one place where their numbers stand.</summary>
internal static class MaterialData
{
    private const double Percents = 100, GigaToMega = 1000;

    public static ImmutableArray<Material> Read()
    {
        using Stream stream = typeof(MaterialData).Assembly.GetManifestResourceStream("materials.json")
            ?? throw new InvalidOperationException("materials.json is not built in.");
        using JsonDocument document = JsonDocument.Parse(stream);
        ImmutableArray<double> ratios = Numbers(document.RootElement.GetProperty("springbackRatios"));
        return [.. document.RootElement.GetProperty("materials").EnumerateArray().Select(m => One(m, ratios))];
    }

    private static Material One(JsonElement m, ImmutableArray<double> ratios)
    {
        (double uniform, string source) = Number(m, "uniformElongation");
        (double modulus, string modulusSource) = Number(m, "modulus");
        (double elongation, string elongationSource) = Number(m, "elongation");
        JsonElement bend = m.GetProperty("bend"), thicknesses = m.GetProperty("thicknesses");
        var material = new Material(Text(m.GetProperty("name")), [.. m.GetProperty("called").EnumerateArray().Select(Text)], Share(uniform), source, Class(Text(bend[0])))
        {
            Yield = Number(m, "yield"),
            Tensile = Number(m, "tensile"),
            Elongation = new Sourced(Share(elongation), elongationSource),
            Modulus = new Sourced(modulus * GigaToMega, modulusSource),
            Density = Number(m, "density"),
            MinimumRadius = Number(m, "minimumRadius"),
            BendingSource = Text(bend[1]),
            Gauges = m.TryGetProperty("gauges", out JsonElement gauges) ? SystemOf(Text(gauges)) : null,
            Thicknesses = Numbers(thicknesses[0]),
            ThicknessSource = Text(thicknesses[1]),
        };
        if (!m.TryGetProperty("springback", out JsonElement springback)) return material;
        // A table may end before the last column.
        return material with { Springback = [.. ratios.Zip(Numbers(springback[0]))], SpringbackSource = Text(springback[1]) };
    }

    private static Sourced Number(JsonElement material, string key)
    {
        JsonElement pair = material.GetProperty(key);
        return new Sourced(pair[0].GetDouble(), Text(pair[1]));
    }

    // Divided, so that 22 % is the number nearest to 0.22.
    private static double Share(double percent) => percent / Percents;

    private static ImmutableArray<double> Numbers(JsonElement list) => [.. list.EnumerateArray().Select(n => n.GetDouble())];

    private static string Text(JsonElement element) => element.GetString() ?? "";

    private static BendClass Class(string word) => word switch
    {
        "soft" => BendClass.Soft,
        "medium" => BendClass.Medium,
        "hard" => BendClass.Hard,
        _ => throw new InvalidOperationException($"materials.json: no class “{word}”."),
    };

    private static GaugeSystem SystemOf(string word) => word switch
    {
        "sheet steel" => GaugeSystem.SheetSteel,
        "galvanized" => GaugeSystem.Galvanized,
        "aluminium" => GaugeSystem.Aluminium,
        _ => throw new InvalidOperationException($"materials.json: no gauges “{word}”."),
    };
}

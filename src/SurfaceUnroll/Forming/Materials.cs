using System.Collections.Immutable;

namespace SurfaceUnroll.Forming;

/// <summary>A sheet material and how far it can be strained before it starts to neck.</summary>
/// <param name="Name">As listed.</param>
/// <param name="Words">Names by which a job may call it, lower case.</param>
/// <param name="UniformElongation">Engineering strain up to which a sheet stretches evenly, as a fraction.</param>
/// <param name="Source">Where the number comes from.</param>
/// <param name="Bending">How far the neutral fibre moves inward in a sharp bend.</param>
public sealed record Material(string Name, ImmutableArray<string> Words, double UniformElongation, string Source, BendClass Bending)
{
    /// <summary>Yield strength or 0.2 % proof stress, MPa.</summary>
    public Sourced Yield { get; init; } = new(200, "from memory");

    /// <summary>Modulus of elasticity, MPa.</summary>
    public Sourced Modulus { get; init; } = new(210_000, "from memory");

    /// <summary>Density, kg/m³.</summary>
    public Sourced Density { get; init; } = new(7850, "from memory");

    /// <summary>Smallest inside radius of a bend, in thicknesses.</summary>
    public Sourced MinimumRadius { get; init; } = new(1, "from memory");

    /// <summary>Springback of sharp bends: finished inside radius over thickness, rising, and the finished angle as a share of the one bent to; empty where no table is known.</summary>
    public ImmutableArray<(double Ratio, double Factor)> Springback { get; init; } = [];
}

/// <summary>A number and where it comes from.</summary>
/// <param name="Value">The number.</param>
/// <param name="Source">Standard, data sheet, "common practice" or "from memory".</param>
public readonly record struct Sourced(double Value, string Source);

/// <summary>Classes of sheet by where the fibre that keeps its length lies in a bend.</summary>
public enum BendClass
{
    /// <summary>Soft aluminium, copper and brass.</summary>
    Soft,

    /// <summary>Low-carbon steel, half-hard aluminium and copper.</summary>
    Medium,

    /// <summary>Stainless steel, hard aluminium, titanium.</summary>
    Hard,
}

/// <summary>Uniform elongation of the usual sheet materials.</summary>
/// <remarks>Data sheets give the elongation at break, of which part is necking in one place. Uniform elongation is smaller: about n of the hardening law σ = K·εⁿ
/// (Considère's rule: the true strain at the start of necking equals n).</remarks>
public static class Materials
{
    private const string LowCarbon = "n about 0.20 for low-carbon steel strip (from memory), e^n − 1; elongation at break 28 % (EN 10130, DC01)";

    /// <summary>All materials.</summary>
    public static ImmutableArray<Material> All { get; } =
    [
        new("mild steel (DC01)", ["mild steel", "steel", "dc01", "crs", "cold rolled steel", "low carbon steel", "sheet metal"], 0.22, LowCarbon, BendClass.Medium),
        new("galvanized steel", ["galvanized steel", "galvanised steel", "galvanized", "galvanised", "dx51d", "zinc coated steel"], 0.18, "somewhat below bare low-carbon steel (from memory)", BendClass.Medium),
        new("deep-drawing steel (DC04)", ["dc04", "deep drawing steel", "drawing steel"], 0.25, "n about 0.22 (from memory), e^n − 1; elongation at break 34 % (EN 10139:1998)", BendClass.Medium),
        new("stainless steel 304", ["304", "stainless", "stainless steel", "1.4301", "304 stainless"], 0.40, "elongation at break 40 to 60 % (supplier data sheet), most of it uniform (from memory)", BendClass.Hard),
        new("aluminium 1050/1100/3003 soft (O)", ["3003-o", "1100-o", "1050-o", "soft aluminium", "soft aluminum", "aluminium o", "aluminum o"], 0.20, "from memory", BendClass.Soft),
        new("aluminium 3003-H14", ["3003-h14", "3003"], 0.04, "elongation at break 8 % at 1.6 mm (supplier data sheet), about half of it uniform (from memory)", BendClass.Medium),
        new("aluminium 5052-H32", ["5052-h32", "5052"], 0.07, "from memory", BendClass.Medium),
        new("aluminium 6061-T6", ["6061-t6", "6061"], 0.06, "from memory", BendClass.Hard),
        new("aluminium, alloy and temper not given", ["aluminium", "aluminum", "alu"], 0.04, "as half-hard 3003, the more brittle of the usual ones (from memory)", BendClass.Medium),
        new("copper, soft (R220)", ["copper", "r220", "soft copper"], 0.30, "elongation at break 42 % (EN 1172), about three quarters of it uniform (from memory)", BendClass.Soft),
        new("copper, half hard (R240)", ["r240", "half hard copper"], 0.08, "elongation at break 15 % (EN 1172), about half of it uniform (from memory)", BendClass.Medium),
        new("brass CuZn37, soft", ["brass", "cuzn37"], 0.35, "from memory", BendClass.Soft),
        new("titanium grade 2", ["titanium", "grade 2"], 0.12, "from memory", BendClass.Hard),
    ];

    /// <summary>The material of a job by the names that stand in its words: one with a number of a standard in it before one without, and of either kind the longest.</summary>
    /// <param name="words">As written in the job; capitals and hyphens do not matter.</param>
    /// <returns>Mild steel, and false, if no name stands there.</returns>
    public static (Material Material, bool Known) Of(string words)
    {
        string text = Plain(words);
        (Material? material, int rank) = (null, 0);
        foreach (Material candidate in All)
        {
            foreach (string word in candidate.Words.Select(Plain))
            {
                int worth = word.Length + (word.Any(char.IsAsciiDigit) ? 100 : 0);
                if (worth > rank && text.Contains(word, StringComparison.Ordinal)) (material, rank) = (candidate, worth);
            }
        }
        return material is null ? (All[0], false) : (material, true);
    }

    // Whole words only: a space at each end.
    private static string Plain(string words) =>
        $" {string.Join(' ', words.ToLowerInvariant().Split([' ', '-', ',', ';', '/', '(', ')', '"'], StringSplitOptions.RemoveEmptyEntries))} ";
}

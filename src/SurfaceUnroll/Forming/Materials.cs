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

    /// <summary>Tensile strength, MPa.</summary>
    public Sourced Tensile { get; init; } = new(340, "from memory");

    /// <summary>Elongation at break as a fraction, part of which is necking in one place.</summary>
    public Sourced Elongation { get; init; } = new(0.28, "from memory");

    /// <summary>Density, kg/m³.</summary>
    public Sourced Density { get; init; } = new(7850, "from memory");

    /// <summary>Smallest inside radius of a bend, in thicknesses.</summary>
    public Sourced MinimumRadius { get; init; } = new(1, "from memory");

    /// <summary>Where the class of <see cref="Bending"/> comes from.</summary>
    public string BendingSource { get; init; } = "";

    /// <summary>The job's own, and not of the list.</summary>
    public bool IsOwn { get; init; }

    /// <summary>K of every bend, set by the job's own material; null: by class of sheet and radius.</summary>
    public double? K { get; init; }

    /// <summary>Gauge numbers that the sheet is sold by; null where it is not.</summary>
    public GaugeSystem? Gauges { get; init; }

    /// <summary>Usual thicknesses, mm, rising.</summary>
    public ImmutableArray<double> Thicknesses { get; init; } = [];

    /// <summary>Where the usual thicknesses come from.</summary>
    public string ThicknessSource { get; init; } = "";

    /// <summary>Springback of sharp bends: finished inside radius over thickness, rising, and the finished angle as a share of the one bent to; empty where no table is known.</summary>
    public ImmutableArray<(double Ratio, double Factor)> Springback { get; init; } = [];

    /// <summary>Where the springback comes from; empty where no table is known.</summary>
    public string SpringbackSource { get; init; } = "";
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

/// <summary>The usual sheet materials.</summary>
/// <remarks>Data sheets give the elongation at break, of which part is necking in one place. Uniform elongation is smaller: about n of the hardening law σ = K·εⁿ
/// (Considère's rule: the true strain at the start of necking equals n).</remarks>
public static class Materials
{
    /// <summary>All materials, as <c>materials.json</c> lists them.</summary>
    public static ImmutableArray<Material> All { get; } = MaterialData.Read();

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

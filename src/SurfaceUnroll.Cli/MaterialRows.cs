using System.Globalization;
using SurfaceUnroll.Forming;

namespace SurfaceUnroll.Cli;

/// <summary>The numbers of a material in words.</summary>
internal static class MaterialRows
{
    private const double MegaToGiga = 0.001, Inch = 25.4;

    /// <summary>Headings of <see cref="Short"/>.</summary>
    public static readonly string[] Headings = ["material", "yield MPa", "tensile MPa", "elongation %", "E GPa", "kg/m³", "K at R = t", "least R, t", "gauges", "called"];

    /// <summary>Headings of <see cref="Full"/>.</summary>
    public static readonly string[] FullHeadings = ["", "value", "source"];

    /// <summary>Headings of <see cref="GaugeTable"/>.</summary>
    public static readonly string[] GaugeHeadings = ["gauge", "in", "mm", "source"];

    /// <summary>One material in one row.</summary>
    public static string[] Short(Material m) =>
    [
        m.Name, Number(m.Yield.Value), Number(m.Tensile.Value), Number(100 * m.Elongation.Value), Number(m.Modulus.Value * MegaToGiga), Number(m.Density.Value),
        BendAllowance.FromTable(m.Bending, 1).ToString("0.00", CultureInfo.InvariantCulture), Number(m.MinimumRadius.Value), m.Gauges is { } system ? Gauges.Name(system) : "none",
        string.Join(", ", m.Words),
    ];

    /// <summary>Every number of one material and where it comes from.</summary>
    public static IEnumerable<string[]> Full(Material m)
    {
        yield return ["yield strength", $"{Number(m.Yield.Value)} MPa", m.Yield.Source];
        yield return ["tensile strength", $"{Number(m.Tensile.Value)} MPa", m.Tensile.Source];
        yield return ["elongation at break", $"{Number(100 * m.Elongation.Value)} %", m.Elongation.Source];
        yield return ["uniform elongation", $"{Number(100 * m.UniformElongation)} %", m.Source];
        yield return ["modulus E", $"{Number(m.Modulus.Value * MegaToGiga)} GPa", m.Modulus.Source];
        yield return ["density", $"{Number(m.Density.Value)} kg/m³", m.Density.Source];
        yield return ["in a bend", m.Bending.ToString().ToLowerInvariant(), m.BendingSource];
        foreach (double ratio in new double[] { 1, 3, 5 })
            yield return [$"K at R = {(ratio > 1 ? Number(ratio) + " " : "")}t", BendAllowance.FromTable(m.Bending, ratio).ToString("0.00", CultureInfo.InvariantCulture), ratio < 5 ? "shop tables for bending in air (from memory)" : "DIN 6935"];
        yield return ["least inside radius", $"{Number(m.MinimumRadius.Value)} t", m.MinimumRadius.Source];
        yield return ["springback kR", m.Springback.IsEmpty ? "no table" : "see below", m.Springback.IsEmpty ? "Ri/Rf = 4x³ − 3x + 1 with yield strength and E" : m.SpringbackSource];
        yield return ["gauges", m.Gauges is { } system ? Gauges.Name(system) : "none", m.Gauges is null ? "give the thickness as a length" : "see below"];
    }

    /// <summary>The springback factors of a material in one row, as many as it has.</summary>
    public static string[] Factors(Material m) => ["kR", .. m.Springback.Select(s => s.Factor.ToString("0.00", CultureInfo.InvariantCulture))];

    /// <summary>Headings of <see cref="Factors"/>.</summary>
    public static string[] FactorHeadings(Material m) => ["R, t", .. m.Springback.Select(s => Number(s.Ratio))];

    /// <summary>The usual thicknesses of a material in one line.</summary>
    public static string Thicknesses(Material m) => $"usual thicknesses {string.Join(", ", m.Thicknesses.Select(Number))} mm ({m.ThicknessSource})";

    /// <summary>The gauges of a material.</summary>
    public static IEnumerable<string[]> GaugeTable(GaugeSystem system)
    {
        (int first, int last) = Gauges.Range(system);
        for (int gauge = first; gauge <= last; gauge++)
        {
            double mm = Gauges.Thickness(system, gauge)!.Value;
            yield return [gauge.ToString(CultureInfo.InvariantCulture), (mm / Inch).ToString(".0000", CultureInfo.InvariantCulture), mm.ToString("0.000", CultureInfo.InvariantCulture), Gauges.Source(system, gauge)];
        }
    }

    private static string Number(double value) => value.ToString("0.###", CultureInfo.InvariantCulture);
}

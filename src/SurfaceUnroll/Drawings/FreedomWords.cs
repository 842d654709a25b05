using System.Globalization;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Drawings;

/// <summary>What is said of a curve that was moved so that its sheet only bends.</summary>
internal static class FreedomWords
{
    /// <summary>The largest move and where it is.</summary>
    public static string Largest(FreedomFit fit, LengthUnit units) =>
        $"at most {ShopLength.Print(Math.Abs(fit.Largest.Move), units, 2)} {Way(fit.Largest.Move)}, {ShopLength.Print(fit.Largest.Length, units)} along it from its left end";

    /// <summary>Label and value for tables.</summary>
    public static IEnumerable<(string Label, string Value)> Rows(FreedomFit fit, Verdict verdict, StrainSummary after, LengthUnit units)
    {
        yield return ($"Moved, {fit.Spec.Curve}", $"{Largest(fit, units)}; {ShopLength.Print(fit.Mean, units, 2)} in the mean, {ShopLength.Print(fit.Spec.Most, units, 2)} allowed");
        yield return ("  as measured", $"twist {PanelRows.Degrees(fit.Twist.Max)}{(fit.Strain is { } before ? ", " + Strains(before) : "")}");
        yield return ("  as moved", verdict == Verdict.BendsOnly ? "bends only" : Strains(after));
    }

    /// <summary>A length in the job's units, no smaller than it is: 0.1 mm or 1/64 in up.</summary>
    public static string RoundedUp(double mm, LengthUnit units)
    {
        double step = units == LengthUnit.Inch ? ShopLength.MillimetresPerInch / 64 : 0.1;
        return ShopLength.Print(step * Math.Ceiling(mm / step - 1e-9), units, 1);
    }

    private static string Way(double move) => move < 0 ? "inward" : "outward";

    private static string Strains(StrainSummary strain) => $"stretch {Percent(strain.MaxStretch)}, shrink {Percent(strain.MaxShrink)}";

    private static string Percent(double fraction) => (100 * fraction).ToString("0.##", CultureInfo.InvariantCulture) + " %";
}

using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Forming;

/// <summary>Length of metal in a sharp bend.</summary>
/// <remarks>The fibre that keeps its length lies K·t from the inside: BA = θ(R + K t). The deduction is what both outside lengths together are longer than the
/// blank. They are measured to where the outside faces, run on, meet; past 90° to the outermost place of the bend (DIN 6935).</remarks>
public static class BendAllowance
{
    // Inside radius over thickness, and K for soft, medium and hard sheet: see docs/materials.md (from memory, but for the last column, DIN 6935).
    private static readonly ImmutableArray<(double Ratio, double Soft, double Medium, double Hard)> Table =
        [(1, 0.33, 0.38, 0.40), (3, 0.40, 0.43, 0.45), (5, 0.5, 0.5, 0.5)];

    /// <summary>K of a fibre in the middle of the sheet: past it no bend on a brake is known to go.</summary>
    public const double MiddleK = 0.5;

    /// <summary>K that a measured bend may show at most: a little past the middle it can be put down to measuring.</summary>
    public const double MostShownK = 0.6;

    // The formula of DIN 6935 runs down to no length at all for a bend without radius, but every bend made has one: it is not followed below this r/s (no source).
    private const double LeastDinRatio = 0.2;

    /// <summary>Allowance and deduction of a bend.</summary>
    /// <param name="stock">Material, thickness and the shop's rule.</param>
    /// <param name="radius">Inside radius, mm, ≥ 0.</param>
    /// <param name="angle">Radians that the sheet is bent through, in (0, π).</param>
    public static BendLength Of(SheetStock stock, double radius, double angle)
    {
        (double k, string source) = K(stock, radius);
        double allowance = Length(radius, stock.Thickness, k, angle), setback = Setback(radius, stock.Thickness, angle);
        return new BendLength(k, allowance, setback, 2 * setback - allowance, source);
    }

    /// <summary>The same with setback and deduction to where the outside faces, run on, meet at any angle: where edges of pieces stand.</summary>
    /// <param name="stock">Material, thickness and the shop's rule.</param>
    /// <param name="radius">Inside radius, mm, ≥ 0.</param>
    /// <param name="angle">Radians that the sheet is bent through, in (0, π).</param>
    public static BendLength ToMeeting(SheetStock stock, double radius, double angle)
    {
        BendLength length = Of(stock, radius, angle);
        double setback = (radius + stock.Thickness) * Math.Tan(0.5 * angle);
        return length with { Setback = setback, Deduction = 2 * setback - length.Allowance };
    }

    /// <summary>Length of the fibre that keeps its length, mm: θ(R + K t).</summary>
    public static double Length(double radius, double thickness, double k, double angle) => angle * (radius + k * thickness);

    /// <summary>From the tangent line to where the outside is measured to, mm: (R + t)·tan(θ/2) up to 90°, R + t beyond.</summary>
    public static double Setback(double radius, double thickness, double angle) => (radius + thickness) * Math.Tan(0.5 * Math.Min(angle, 0.5 * Math.PI));

    /// <summary>What both outside lengths together are longer than the blank, mm, with a K.</summary>
    public static double Deduction(double radius, double thickness, double k, double angle) => 2 * Setback(radius, thickness, angle) - Length(radius, thickness, k, angle);

    /// <summary>K = k/2 of DIN 6935: k = 0.65 + 0.5 log₁₀(r/s), 1 for r/s &gt; 5; never below 0.</summary>
    public static double Din6935(double radiusOverThickness) =>
        radiusOverThickness > 5 ? 0.5 : 0.5 * Math.Clamp(0.65 + 0.5 * Math.Log10(radiusOverThickness), 0, 1);

    /// <summary>K of a class of sheet by inside radius over thickness.</summary>
    public static double FromTable(BendClass sheet, double radiusOverThickness)
    {
        double At(int i) => sheet switch { BendClass.Soft => Table[i].Soft, BendClass.Medium => Table[i].Medium, _ => Table[i].Hard };
        if (radiusOverThickness <= Table[0].Ratio) return At(0);
        for (int i = 1; i < Table.Length; i++)
        {
            if (radiusOverThickness > Table[i].Ratio) continue;
            double share = (radiusOverThickness - Table[i - 1].Ratio) / (Table[i].Ratio - Table[i - 1].Ratio);
            return At(i - 1) + share * (At(i) - At(i - 1));
        }
        return At(Table.Length - 1);
    }

    /// <summary>K that a measured bend shows.</summary>
    public static double Shown(OwnBend bend, double thickness) =>
        ((2 * Setback(bend.Radius, thickness, bend.Angle) - bend.Deduction) / bend.Angle - bend.Radius) / thickness;

    private static (double K, string Source) K(SheetStock stock, double radius)
    {
        double t = stock.Thickness;
        if (t <= 0) return (0.5, "no thickness is given");
        BendSetup setup = stock.Bending;
        if (setup.Own is { } own) return (Shown(own, t), "the shop's own measured bend");
        if (setup.K is { } k) return (k, "given in the job");
        switch (setup.Rule)
        {
            case BendRule.Din6935:
                return radius / t < LeastDinRatio ? (Din6935(LeastDinRatio), "DIN 6935 as for R/t 0.2, the least") : (Din6935(radius / t), "DIN 6935");
            case BendRule.PerDegree:
                const double degrees = 180 / Math.PI;
                return (((0.01743 * radius + 0.0078 * t) * degrees - radius) / t, "0.01743 R + 0.0078 t a degree");
            default:
                Material material = stock.Metal;
                if (material.K is { } ofMaterial) return (ofMaterial, "given for the job's own material");
                string ratio = (radius / t).ToString("0.#", CultureInfo.InvariantCulture);
                return (FromTable(material.Bending, radius / t), $"table, {material.Bending.ToString().ToLowerInvariant()} sheet, R/t {ratio}");
        }
    }
}

using System.Collections.Immutable;

namespace SurfaceUnroll.Forming;

/// <summary>How far sheet opens again when the roll or the brake lets it go.</summary>
/// <remarks>The formula Ri/Rf = 4x³ − 3x + 1, x = Ri·Y/(E·t), is that of a sheet that yields at one stress and does not harden: Ri the inside radius under load, Rf the
/// one that it finishes at, Y the yield strength, E the modulus, t the thickness.</remarks>
public static class Springback
{
    // At x = 1/2 the outermost fibre only just yields: the sheet opens flat again.
    private const double OpensFlat = 0.5;

    // Each step about halves the distance even at the double root x = 1/2, and doubles the digits away from it.
    private const int MostSteps = 200;

    private const double Converged = 1e-15;

    /// <summary>Inside radius that a sheet finishes at.</summary>
    /// <param name="radius">Inside radius that it is formed to, mm, &gt; 0.</param>
    /// <param name="thickness">mm, &gt; 0.</param>
    /// <param name="yield">Yield strength, MPa.</param>
    /// <param name="modulus">Modulus of elasticity, MPa.</param>
    /// <returns>mm; +∞ if the sheet springs fully open.</returns>
    public static double FinishedRadius(double radius, double thickness, double yield, double modulus)
    {
        double x = radius * yield / (modulus * thickness);
        // 4x³ − 3x + 1 = (1 − 2x)²·(1 + x), which keeps its digits near x = 1/2.
        return x >= OpensFlat ? double.PositiveInfinity : radius / ((1 - 2 * x) * (1 - 2 * x) * (1 + x));
    }

    /// <summary>Inside radius to form a sheet to, so that it finishes at another: the inverse of <see cref="FinishedRadius"/>.</summary>
    /// <param name="finished">Inside radius that it shall finish at, mm, &gt; 0; +∞ for a sheet that shall stay flat.</param>
    /// <param name="thickness">mm, &gt; 0.</param>
    /// <param name="yield">Yield strength, MPa.</param>
    /// <param name="modulus">Modulus of elasticity, MPa.</param>
    /// <returns>mm; the largest radius that still marks the sheet for +∞.</returns>
    public static double RollTo(double finished, double thickness, double yield, double modulus)
    {
        double scale = modulus * thickness / yield;
        // With Ri = scale·x: 4x³ − (3 + m)x + 1 = 0, m = scale/Rf. It falls from 1 at x = 0 to −m/2 at x = 1/2 and is convex between, so that Newton's steps from
        // x = 0 climb to the root and never pass it.
        double m = scale / finished, x = 0;
        if (m == 0) return OpensFlat * scale;
        for (int i = 0; i < MostSteps; i++)
        {
            double step = ((1 - 2 * x) * (1 - 2 * x) * (1 + x) - m * x) / (3 + m - 12 * x * x);
            if (!(step > Converged * x)) break;
            x = Math.Min(x + step, OpensFlat);
        }
        return scale * x;
    }

    /// <summary>Springback factor kR of a sharp bend: the finished angle as a share of the one bent to.</summary>
    /// <param name="material">Its table is read straight between the columns and goes on level past its ends.</param>
    /// <param name="radiusOverThickness">Finished inside radius in thicknesses.</param>
    /// <returns>Null without a table.</returns>
    public static double? Factor(Material material, double radiusOverThickness)
    {
        ImmutableArray<(double Ratio, double Factor)> table = material.Springback;
        if (table.IsEmpty) return null;
        if (radiusOverThickness <= table[0].Ratio) return table[0].Factor;
        for (int i = 1; i < table.Length; i++)
        {
            if (radiusOverThickness > table[i].Ratio) continue;
            double share = (radiusOverThickness - table[i - 1].Ratio) / (table[i].Ratio - table[i - 1].Ratio);
            return table[i - 1].Factor + share * (table[i].Factor - table[i - 1].Factor);
        }
        return table[^1].Factor;
    }

    /// <summary>Angle to bend through, so that a bend finishes at another: by the factor kR, or without a table by the formula for rolled sheet, for the metal in the bend stays as
    /// long as it is, at the middle of the sheet.</summary>
    /// <param name="angle">Radians that the sheet shall be bent through when it is let go.</param>
    /// <param name="material">The sheet.</param>
    /// <param name="radius">Finished inside radius, mm, ≥ 0.</param>
    /// <param name="thickness">mm, &gt; 0.</param>
    /// <returns>Radians.</returns>
    public static double BendTo(double angle, Material material, double radius, double thickness)
    {
        if (Factor(material, radius / thickness) is { } factor) return angle / factor;
        // A sharp corner is all past yielding.
        return radius <= 0 ? angle : angle * (radius + 0.5 * thickness) / (RollTo(radius, thickness, material.Yield.Value, material.Modulus.Value) + 0.5 * thickness);
    }
}

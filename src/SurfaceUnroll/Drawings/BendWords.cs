using System.Globalization;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Drawings;

/// <summary>Sharp bends in the words of the shop.</summary>
public static class BendWords
{
    // An angle that changes by less than this along a bend is one angle to the brake, degrees.
    private const double SameAngle = 1;

    /// <summary>Number in the order of bending, for after the word “bend”: a letter before it would make it a match mark.</summary>
    public static string Label(BendLine bend) => bend.Number.ToString(CultureInfo.InvariantCulture);

    /// <summary>What stands beside it: <c>bend 1</c>.</summary>
    public static string Name(BendLine bend) => "bend " + Label(bend);

    /// <summary>At the head of a row: <c>Bend 1, lip rear</c>.</summary>
    public static string Heading(BendLine bend) => "Bend " + Label(bend) + (bend.Lip is null ? "" : $", lip {bend.Lip}");

    /// <summary>Direction and angle that the sheet is bent through: <c>UP 90°</c>, <c>DOWN 85–95°</c>.</summary>
    public static string Turn(BendLine bend) => $"{Way(bend)} {Angle(bend)}";

    /// <summary>Direction as the blank lies, outside face up.</summary>
    public static string Way(BendLine bend) => bend.Up ? "UP" : "DOWN";

    /// <summary>All that the brake is set by, in one line.</summary>
    public static string Setting(BendLine bend, LengthUnit units) =>
        $"{Turn(bend)}, inside R {Radius(bend.InsideRadius, units)}, allowance {Fine(bend.Length.Allowance, units)}, "
        + $"deduction {FineLength(bend.Length.Deduction, units)}, K {bend.Length.K.ToString("0.000", CultureInfo.InvariantCulture)} ({bend.Length.Source})";

    /// <summary>Angle, or the least and the greatest where they differ.</summary>
    public static string Angle(BendLine bend) => Degrees(bend.LeastAngle, bend.GreatestAngle, bend.Angle);

    /// <summary>One angle where two are alike to a degree, else both.</summary>
    public static string Degrees(double least, double greatest, double mean)
    {
        if (Math.Abs(greatest - least) * 180 / Math.PI <= SameAngle) return DegreeNumber(mean, "0.#") + "°";
        // Both with a decimal, or neither.
        string format = IsWhole(least) && IsWhole(greatest) ? "0" : "0.0";
        return $"{DegreeNumber(least, format)}–{DegreeNumber(greatest, format)}°";
    }

    /// <summary>A length to a hundredth of a millimetre or a thousandth of an inch, always with as many decimals: what a bend is reckoned with is too fine for 1/64.</summary>
    public static string Fine(double mm, LengthUnit units) => units == LengthUnit.Inch
        ? Number(mm / ShopLength.MillimetresPerInch, 3, "0.000")
        : Number(mm, 2, "0.00");

    /// <summary>An inside radius: in millimetres as the tool is called, without noughts at its end.</summary>
    public static string Radius(double mm, LengthUnit units) => units == LengthUnit.Inch ? Fine(mm, units) : ShopLength.PrintNumber(mm, units, 2);

    /// <summary>The same with its unit.</summary>
    public static string FineLength(double mm, LengthUnit units) => $"{Fine(mm, units)} {ShopLength.Name(units)}";

    // Adding nought makes −0 of rounding 0.
    private static string Number(double value, int decimals, string format) =>
        (Math.Round(value, decimals, MidpointRounding.AwayFromZero) + 0.0).ToString(format, CultureInfo.InvariantCulture);

    private static double Tenths(double radians) => Math.Round(radians * 180 / Math.PI, 1) + 0.0;

    private static bool IsWhole(double radians) => Tenths(radians) == Math.Round(Tenths(radians));

    private static string DegreeNumber(double radians, string format) => Tenths(radians).ToString(format, CultureInfo.InvariantCulture);
}

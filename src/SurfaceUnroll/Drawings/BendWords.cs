using System.Globalization;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Drawings;

/// <summary>Sharp bends in the words of the shop.</summary>
public static class BendWords
{
    // An angle that changes by less than this along a bend is one angle to the brake, degrees.
    private const double SameAngle = 1;

    /// <summary>Label: B1, B2 in the order of bending.</summary>
    public static string Label(BendLine bend) => "B" + bend.Number.ToString(CultureInfo.InvariantCulture);

    /// <summary>Direction and angle that the sheet is bent through: <c>UP 90°</c>, <c>DOWN 85–95°</c>.</summary>
    public static string Turn(BendLine bend) => $"{Way(bend)} {Angle(bend)}";

    /// <summary>Direction as the blank lies, outside face up.</summary>
    public static string Way(BendLine bend) => bend.Up ? "UP" : "DOWN";

    /// <summary>All that the brake is set by, in one line.</summary>
    public static string Setting(BendLine bend, LengthUnit units) =>
        $"{Turn(bend)}, inside R {Fine(bend.InsideRadius, units)}, allowance {Fine(bend.Length.Allowance, units)}, "
        + $"deduction {FineLength(bend.Length.Deduction, units)}, K {bend.Length.K.ToString("0.###", CultureInfo.InvariantCulture)} ({bend.Length.Source})";

    /// <summary>Angle, or the least and the greatest where they differ.</summary>
    public static string Angle(BendLine bend) => Degrees(bend.LeastAngle, bend.GreatestAngle, bend.Angle);

    /// <summary>One angle where two are alike to a degree, else both.</summary>
    public static string Degrees(double least, double greatest, double mean) => Math.Abs(greatest - least) * 180 / Math.PI > SameAngle
        ? $"{DegreeNumber(least)}–{DegreeNumber(greatest)}°"
        : DegreeNumber(mean) + "°";

    /// <summary>A length to a hundredth of a millimetre or a thousandth of an inch: what a bend is reckoned with is too fine for 1/64.</summary>
    public static string Fine(double mm, LengthUnit units) => units == LengthUnit.Inch
        ? (Math.Round(mm / ShopLength.MillimetresPerInch, 3, MidpointRounding.AwayFromZero) + 0.0).ToString("0.###", CultureInfo.InvariantCulture)
        : ShopLength.PrintNumber(mm, units, 2);

    /// <summary>The same with its unit.</summary>
    public static string FineLength(double mm, LengthUnit units) => $"{Fine(mm, units)} {ShopLength.Name(units)}";

    private static string DegreeNumber(double radians) => (Math.Round(radians * 180 / Math.PI, 1) + 0.0).ToString("0.#", CultureInfo.InvariantCulture);
}

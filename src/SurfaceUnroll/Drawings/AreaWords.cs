using System.Globalization;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Drawings;

/// <summary>Areas in a unit that suits their size.</summary>
public static class AreaWords
{
    private const double Mm2InSquareInch = ShopLength.MillimetresPerInch * ShopLength.MillimetresPerInch;

    // Below a hundredth of a square metre the shop speaks of square centimetres; below one of these, or a square inch, more decimals tell.
    private const double SmallPart = 1e4, Mm2InSquareCentimetre = 100;

    /// <summary>An area: <c>0.2932 m²</c>, <c>34.4 cm²</c>, <c>116.9 sq in</c>.</summary>
    /// <param name="mm2">mm².</param>
    /// <param name="units">Units of the job.</param>
    public static string Of(double mm2, LengthUnit units)
    {
        if (units == LengthUnit.Inch) return Number(mm2 / Mm2InSquareInch) + " sq in";
        return mm2 < SmallPart ? Number(mm2 / Mm2InSquareCentimetre) + " cm²" : (mm2 / 1e6).ToString("0.0000", CultureInfo.InvariantCulture) + " m²";
    }

    private static string Number(double value) => value.ToString(value < 1 ? "0.000" : "0.0", CultureInfo.InvariantCulture);
}

using System.Globalization;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Drawings.ShopSheet;

/// <summary>Numbers as they stand in the tables of a shop sheet.</summary>
internal static class SheetNumbers
{
    // From here on tenths of a radius mean nothing, mm.
    private const double WholeRadius = 100, PoundsInKilogram = 1 / 0.45359237;

    /// <summary>A length without its unit, always with as many decimals, so that columns stand even.</summary>
    public static string Length(double mm, LengthUnit units) => units == LengthUnit.Inch ? ShopLength.PrintNumber(mm, units) : Fixed(mm, 1);

    /// <summary>A radius without its unit; what stays flat is so called.</summary>
    public static string Radius(double mm, LengthUnit units) => mm switch
    {
        > RollSchedule.FlatRadius => "flat",
        0 => "point",
        _ when units == LengthUnit.Inch => ShopLength.PrintNumber(Coarse(mm / ShopLength.MillimetresPerInch) * ShopLength.MillimetresPerInch, units),
        >= WholeRadius => Fixed(mm, 0),
        _ => Fixed(mm, 1),
    };

    // No template tells 64ths of an inch of a large radius: 32nds to 3 in, 16ths to 12 in, then quarters.
    private static double Coarse(double inches)
    {
        double parts = inches switch { < 3 => 32, < 12 => 16, _ => 4 };
        return Math.Round(inches * parts, MidpointRounding.AwayFromZero) / parts;
    }

    /// <summary>An angle in tenths of a degree.</summary>
    public static string Degrees(double radians) => Fixed(radians * 180 / Math.PI, 1) + "°";

    /// <summary>A mass; an inch job has pounds too. None where the sheet has no thickness.</summary>
    public static string Mass(double kilograms, LengthUnit units)
    {
        if (kilograms == 0) return "–";
        string metric = kilograms.ToString(kilograms < 1 ? "0.000" : "0.00", CultureInfo.InvariantCulture) + " kg";
        return units == LengthUnit.Inch ? $"{(kilograms * PoundsInKilogram).ToString("0.00", CultureInfo.InvariantCulture)} lb ({metric})" : metric;
    }

    /// <summary>A fraction in percent.</summary>
    public static string Percent(double fraction) => Math.Round(100 * fraction, 1, MidpointRounding.AwayFromZero).ToString("0.#", CultureInfo.InvariantCulture) + " %";

    /// <summary>A whole number.</summary>
    public static string Count(int n) => n.ToString(CultureInfo.InvariantCulture);

    /// <summary>Numbers or names in a sentence: <c>3, 5 and 9</c>.</summary>
    public static string List(IReadOnlyList<string> items) =>
        items.Count < 2 ? string.Concat(items) : $"{string.Join(", ", items.Take(items.Count - 1))} and {items[^1]}";

    /// <summary>The unit in a title.</summary>
    public static string Unit(LengthUnit units) => units == LengthUnit.Inch ? "inches" : "mm";

    // Adding nought makes −0 of rounding 0.
    private static string Fixed(double value, int decimals) =>
        (Math.Round(value, decimals, MidpointRounding.AwayFromZero) + 0.0).ToString(decimals == 0 ? "0" : "0.0", CultureInfo.InvariantCulture);
}

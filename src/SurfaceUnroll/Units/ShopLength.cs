using System.Globalization;

namespace SurfaceUnroll.Units;

/// <summary>Lengths as a shop writes them: <c>175 mm</c>, <c>6 7/8 in</c>, <c>1' 2 1/2"</c>, <c>2,5 cm</c>.</summary>
public static class ShopLength
{
    /// <summary>Millimetres in an inch, exactly (international inch of 1959).</summary>
    public const double MillimetresPerInch = 25.4;

    private const int InchParts = 64;

    /// <summary>Reads a length.</summary>
    /// <param name="text">A number with or without a unit; feet may be followed by inches and metres by centimetres.</param>
    /// <param name="unit">What a plain number is in. A fraction without a unit is inches whatever this is: nobody divides millimetres by 16.</param>
    /// <returns>The length, or what is wrong and how to mend it. Never throws.</returns>
    public static LengthReading Parse(string text, LengthUnit unit)
    {
        ArgumentNullException.ThrowIfNull(text);
        return new LengthParser(text, unit).Read();
    }

    /// <summary>Prints a length in the job's units: <c>174.6 mm</c>, or inches to the nearest 1/64 as <c>6 7/8"</c>.</summary>
    /// <param name="mm">Finite, mm.</param>
    /// <param name="unit">Units to print in.</param>
    /// <param name="decimals">Most decimals of a millimetre, 0 to 6; trailing zeros are left out. Inches take no notice of it.</param>
    /// <returns>Text that <see cref="Parse"/> reads back to within half the last step. Halves are rounded away from zero.</returns>
    public static string Print(double mm, LengthUnit unit, int decimals = 1) =>
        PrintNumber(mm, unit, decimals) + (unit == LengthUnit.Inch ? "\"" : " mm");

    /// <summary>The same without the unit, for columns and labels that name it elsewhere.</summary>
    /// <param name="mm">Finite, mm.</param>
    /// <param name="unit">Units to print in.</param>
    /// <param name="decimals">Most decimals of a millimetre, 0 to 6.</param>
    public static string PrintNumber(double mm, LengthUnit unit, int decimals = 1)
    {
        if (unit == LengthUnit.Inch) return PrintInches(mm);
        double rounded = Math.Round(mm, decimals, MidpointRounding.AwayFromZero) + 0.0; // -0 would print a sign.
        return rounded.ToString(MillimetreFormats[decimals], CultureInfo.InvariantCulture);
    }

    /// <summary>Short name of a unit: <c>mm</c> or <c>in</c>.</summary>
    public static string Name(LengthUnit unit) => unit == LengthUnit.Inch ? "in" : "mm";

    private static readonly string[] MillimetreFormats = ["0", "0.#", "0.##", "0.###", "0.####", "0.#####", "0.######"];

    private static string PrintInches(double mm)
    {
        double count = Math.Round(Math.Abs(mm) / MillimetresPerInch * InchParts, MidpointRounding.AwayFromZero);
        double whole = Math.Floor(count / InchParts);
        int over = (int)(count - whole * InchParts), under = InchParts;
        while (over != 0 && over % 2 == 0) (over, under) = (over / 2, under / 2);
        string sign = mm < 0 && count > 0 ? "-" : "";
        string number = whole.ToString("0", CultureInfo.InvariantCulture);
        if (over == 0) return sign + number;
        string fraction = string.Create(CultureInfo.InvariantCulture, $"{over}/{under}");
        return whole == 0 ? sign + fraction : $"{sign}{number} {fraction}";
    }
}

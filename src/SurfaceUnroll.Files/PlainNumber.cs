using System.Globalization;

namespace SurfaceUnroll.Files;

/// <summary>Numbers as text: decimal point whatever the machine's culture, no exponent, no negative zero, no trailing zeros.</summary>
internal static class PlainNumber
{
    /// <summary>Decimals kept of a length in mm: far below anything that can be cut, and short enough to read.</summary>
    public const int LengthDecimals = 9;

    /// <summary>A length in mm to <see cref="LengthDecimals"/> decimals.</summary>
    public static string Mm(double value) => Rounded(value, LengthDecimals).ToString("0.#########", CultureInfo.InvariantCulture);

    /// <summary>A length in mm to three decimals, for pictures.</summary>
    public static string Short(double value) => Rounded(value, 3).ToString("0.###", CultureInfo.InvariantCulture);

    /// <summary>The value rounded to a number of decimals; never −0, so that mirrored numbers print alike.</summary>
    public static double Rounded(double value, int decimals) => Math.Round(value, decimals) + 0.0;
}

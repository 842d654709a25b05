using System.Globalization;

namespace SurfaceUnroll.Files.Photos;

/// <summary>Stated errors as text.</summary>
public static class ErrorText
{
    /// <summary>Rounded up, for a bound that is rounded down is none: to hundredths of a millimetre below one, else to tenths.</summary>
    public static string Of(double mm)
    {
        double step = mm < 1 ? 100 : 10;
        return (Math.Ceiling(mm * step - 1e-9) / step).ToString("0.0#", CultureInfo.InvariantCulture) + " mm";
    }

    /// <summary>The <c>error</c> of a curve in a job, a standard error: 95 of 100 lie within twice that.</summary>
    public static string OfReadings(double mm) => Of(0.5 * mm);
}

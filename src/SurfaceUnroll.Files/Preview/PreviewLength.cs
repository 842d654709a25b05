using System.Globalization;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Files.Preview;

/// <summary>Lengths in headings of the picture, in the job's units.</summary>
internal static class PreviewLength
{
    public static string Text(double mm, LengthUnit unit) => unit == LengthUnit.Inch
        ? (mm / 25.4).ToString("0.00", CultureInfo.InvariantCulture) + " in"
        : mm.ToString("0.0", CultureInfo.InvariantCulture) + " mm";
}

using SurfaceUnroll.Files.JobTexts;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Bench.Desk;

/// <summary>The units of a job while it is text, also where it cannot be read yet.</summary>
public static class TextUnits
{
    /// <summary>What plain numbers are; millimetres unless the text says inches.</summary>
    public static LengthUnit Units(this JobText text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Shown("units") == "in" ? LengthUnit.Inch : LengthUnit.Millimetre;
    }

    /// <summary>The job is in inches.</summary>
    public static bool Inches(this JobText text) => text.Units() == LengthUnit.Inch;
}

namespace SurfaceUnroll.Units;

/// <summary>Units a job is written and labelled in.</summary>
public enum LengthUnit
{
    /// <summary>Millimetres.</summary>
    Millimetre,

    /// <summary>Inches, with shop fractions.</summary>
    Inch,
}

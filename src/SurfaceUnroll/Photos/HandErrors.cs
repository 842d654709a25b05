namespace SurfaceUnroll.Photos;

/// <summary>What is taken for granted of hands, paper and lenses before a photo has told anything: the standard errors with which everything is weighed.</summary>
/// <remarks>Common practice (no source), on the careful side. Where residuals tell more, they count for more: a hand's care enters as if it had been seen in <see cref="Seen"/> residuals before.</remarks>
public static class HandErrors
{
    /// <summary>Of a coordinate or a distance taken with a steel rule or a tape, mm: read to half a millimetre, and the tape not quite straight.</summary>
    public const double Tape = 0.3;

    /// <summary>Of the sides of a sheet of A4 or Letter as it is sold, mm.</summary>
    public const double Paper = 0.2;

    /// <summary>Of the bow of a lens, as a share at the corner of the photo. What cameras leave of it after their own correction is smaller; a bare lens of the wide kind may have twice that.</summary>
    public const double Bow = 0.02;

    /// <summary>Of the place where a lens has its middle, in each direction, in half diagonals of the photo.</summary>
    public const double Astray = 1.0 / 300;

    /// <summary>How many residuals what is taken for granted is worth.</summary>
    public const int Seen = 8;

    // Of half the diagonal; no photo is tapped better than half a pixel.
    private const double TapShare = 1.0 / 2500, LeastTap = 0.5;

    /// <summary>How far from what is meant a tap may be for it still to be found, pixels: by a thumb on a phone as well.</summary>
    public static double Reach(double halfDiagonal) => Math.Max(4 * Tap(halfDiagonal), 0.008 * halfDiagonal);

    /// <summary>Of a tap in each direction, pixels: it is made on a screen, so a larger photo is not tapped better.</summary>
    public static double Tap(double halfDiagonal) => Math.Max(LeastTap, TapShare * halfDiagonal);
}

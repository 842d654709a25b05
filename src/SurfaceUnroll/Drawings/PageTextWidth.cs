namespace SurfaceUnroll.Drawings;

/// <summary>How wide text may come out on paper, for laying out without a font.</summary>
public static class PageTextWidth
{
    // Capitals of common sans-serif faces are on average 0.9 of their height wide, letter space included; small letters less.
    private const double PerCapital = 0.98, PerSmall = 0.82;

    /// <summary>Width that a line of text does not exceed, mm.</summary>
    /// <param name="text">One line.</param>
    /// <param name="height">Cap height, mm.</param>
    public static double Of(string text, double height) => height * text.Sum(c => char.IsUpper(c) ? PerCapital : PerSmall);
}

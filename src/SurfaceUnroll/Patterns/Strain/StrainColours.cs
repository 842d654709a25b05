using SurfaceUnroll.Drawings;

namespace SurfaceUnroll.Patterns.Strain;

/// <summary>Colours of the bands between levels of strain: amber to rust for stretch, pale to deep blue for shrink, near-white for little of either.</summary>
/// <remarks>
/// Each ramp falls in lightness by even steps of CIE 1976 L*a*b*, so that its order survives printing in grey, and the two hues lie where no common
/// kind of colour blindness joins them. The darkest is light enough for black lines and words on it.
/// </remarks>
public static class StrainColours
{
    /// <summary>Colour of a place with less than the first level of either kind.</summary>
    public static PageColour Neutral { get; } = OfLightness(97.5, 0, 0);

    /// <summary>Colour of a band.</summary>
    /// <param name="kind">Stretch or shrink.</param>
    /// <param name="band">1 from the first level to the second, 2 from there to the third, and so on; 0 for less.</param>
    /// <param name="bands">Number of the highest band on the map, of either kind.</param>
    public static PageColour Of(StrainKind kind, int band, int bands)
    {
        if (band <= 0) return Neutral;
        double t = (double)Math.Min(band, bands) / bands, lightness = 96 - 46 * t, fall = Math.Pow(t, 0.9);
        return kind == StrainKind.Stretch ? OfLightness(lightness, 8 + 54 * fall, 78 - 30 * t) : OfLightness(lightness, 6 + 38 * fall, 245 + 25 * t);
    }

    // From lightness, chroma and hue in degrees of CIE 1976 L*a*b*, white D65, by the matrix of IEC 61966-2-1.
    private static PageColour OfLightness(double lightness, double chroma, double hue)
    {
        (double sin, double cos) = Math.SinCos(hue * Math.PI / 180);
        double fy = (lightness + 16) / 116, x = 0.95047 * Cube(fy + chroma * cos / 500), y = Cube(fy), z = 1.08883 * Cube(fy - chroma * sin / 200);
        return new PageColour(
            Encoded(3.2404542 * x - 1.5371385 * y - 0.4985314 * z),
            Encoded(-0.9692660 * x + 1.8760108 * y + 0.0415560 * z),
            Encoded(0.0556434 * x - 0.2040259 * y + 1.0572252 * z));

        static double Cube(double t) => t > 6.0 / 29 ? t * t * t : 3 * (6.0 / 29) * (6.0 / 29) * (t - 4.0 / 29);

        static byte Encoded(double linear) =>
            (byte)Math.Round(255 * Math.Clamp(linear <= 0.0031308 ? 12.92 * linear : 1.055 * Math.Pow(linear, 1 / 2.4) - 0.055, 0, 1));
    }
}

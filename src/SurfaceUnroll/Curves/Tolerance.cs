namespace SurfaceUnroll.Curves;

/// <summary>When two measured things count as one. Fractions of the size of the curve unless said otherwise.</summary>
internal static class Tolerance
{
    /// <summary>Points nearer than this are one point: a tenth of a micrometre on a metre, far under any tape and far over rounding.</summary>
    public const double Coincidence = 1e-7;

    /// <summary>Points nearer to the centreline than this are on it, mm: a micrometre, or more on a part of more than 10 m.</summary>
    /// <param name="size">Size of the curve, mm.</param>
    public static double Centreline(double size) => Math.Max(1e-3, Coincidence * size);

    /// <summary>Points this near to a line are on it: room for the rounding of decimals read from a file, and no more.</summary>
    public const double Straightness = 1e-10;

    /// <summary>A turn sharper than this is a fold: 179.5°, in radians. No profile of a sheet does that between two measured points.</summary>
    public const double Fold = Math.PI * 179.5 / 180;

    /// <summary>A smooth span slower than this times its mean speed has a cusp, or as good as one.</summary>
    public const double Cusp = 1e-3;

    /// <summary>A smooth span that leaves its chord by more than this times the chord is worth a look; a half circle leaves it by 0.5,
    /// a quarter of a circle by 0.21.</summary>
    public const double Bulge = 0.25;
}

namespace SurfaceUnroll.Geometry;

/// <summary>Sums of squares of independent normal errors of spread 1: what chance alone passes seldom.</summary>
internal static class ChiSquare
{
    /// <summary>Passed five times in a hundred: of one, and of two (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4).</summary>
    public const double OneSeldom = 3.841, TwoSeldom = 5.991;

    /// <summary>Passed once in a thousand: of one, and of two (ibid.).</summary>
    public const double OneHardly = 10.828, TwoHardly = 13.816;

    // Normal errors are larger than this once in a thousand, to one side.
    private const double OnceInAThousand = 3.0902;

    /// <summary>Passed once in a thousand, of any number (E. Wilson &amp; M. Hilferty, 1931, to 3 % of it for one, and closer for more).</summary>
    public static double Hardly(int freedom)
    {
        double share = 2.0 / (9 * freedom);
        return freedom * Math.Pow(1 - share + OnceInAThousand * Math.Sqrt(share), 3);
    }
}

namespace SurfaceUnroll.Photos;

/// <summary>What chance does to sums of squares.</summary>
internal static class Chance
{
    // Normal errors are larger than this once in a thousand, to one side.
    private const double OnceInAThousand = 3.0902;

    /// <summary>The sum of squares of so many independent errors of spread 1 that chance passes once in a thousand (χ²; E. Wilson &amp; M. Hilferty, 1931, to 3 % of it for one, and closer for more).</summary>
    public static double Square(int freedom)
    {
        double share = 2.0 / (9 * freedom);
        return freedom * Math.Pow(1 - share + OnceInAThousand * Math.Sqrt(share), 3);
    }
}

namespace SurfaceUnroll.Uncertainty;

/// <summary>Repeatable chance: a number for each place of a table, the same on every machine and in whatever order they are asked for.</summary>
internal static class Chance
{
    /// <summary>A number of the standard normal distribution.</summary>
    /// <param name="seed">Of the table.</param>
    /// <param name="row">Row, from 0.</param>
    /// <param name="column">Column, from 0.</param>
    /// <remarks>Two words of the SplitMix64 generator (Steele, Lea and Flood, OOPSLA 2014), turned normal by Box and Muller (Annals of Mathematical Statistics 29, 1958).</remarks>
    public static double Normal(ulong seed, int row, int column)
    {
        ulong place = Mixed(Mixed(seed) + (ulong)row) + (ulong)column;
        double radius = Math.Sqrt(-2 * Math.Log(1 - Unit(Mixed(place)))), turn = Math.Tau * Unit(Mixed(~place));
        return radius * Math.Cos(turn);
    }

    // In [0, 1), of 53 bits.
    private static double Unit(ulong word) => (word >> 11) * (1.0 / (1UL << 53));

    private static ulong Mixed(ulong z)
    {
        z += 0x9E3779B97F4A7C15;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }
}

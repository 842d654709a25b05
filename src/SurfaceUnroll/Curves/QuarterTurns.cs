namespace SurfaceUnroll.Curves;

/// <summary>Sine and cosine that are exact at multiples of 90°, where shop work mostly is.</summary>
internal static class QuarterTurns
{
    /// <summary>Sine and cosine of an angle in radians; within 1e-12 of a quarter turn it is taken as that quarter turn.</summary>
    public static (double Sin, double Cos) SinCos(double angle)
    {
        double quarters = angle / (Math.PI / 2), whole = Math.Round(quarters);
        if (!(Math.Abs(quarters - whole) <= 1e-12)) return Math.SinCos(angle);
        return (((long)whole % 4 + 4) % 4) switch
        {
            0 => (0, 1),
            1 => (1, 0),
            2 => (0, -1),
            _ => (-1, 0),
        };
    }
}

namespace SurfaceUnroll.Curves;

/// <summary>Arc length by adaptive Gauss–Legendre quadrature of the speed |D1|.</summary>
internal static class ArcLength
{
    // Eight-point Gauss–Legendre nodes and weights on [-1, 1] (Abramowitz & Stegun, table 25.4); exact for degree 15.
    private static readonly double[] Nodes = [0.1834346424956498, 0.5255324099163290, 0.7966664774136267, 0.9602898564975363];
    private static readonly double[] Weights = [0.3626837833783620, 0.3137066458778873, 0.2223810344533745, 0.1012285362903763];

    // 2^-20 of the piece: below that a speed that still disagrees is rounding or a cusp, and halving on cannot help.
    private const int MaxDepth = 20;

    /// <summary>Signed length between two parameters; halves until one rule and two half rules agree to 1e-12 relative.</summary>
    public static double Integrate(CurvePiece piece, double t0, double t1) => Refine(piece, t0, t1, Gauss(piece, t0, t1), 0);

    private static double Refine(CurvePiece piece, double t0, double t1, double whole, int depth)
    {
        double mid = 0.5 * (t0 + t1);
        double left = Gauss(piece, t0, mid), right = Gauss(piece, mid, t1);
        return Math.Abs(left + right - whole) <= 1e-12 * Math.Abs(whole) || depth == MaxDepth
            ? left + right
            : Refine(piece, t0, mid, left, depth + 1) + Refine(piece, mid, t1, right, depth + 1);
    }

    private static double Gauss(CurvePiece piece, double t0, double t1)
    {
        double mid = 0.5 * (t0 + t1), half = 0.5 * (t1 - t0), sum = 0;
        for (int i = 0; i < Nodes.Length; i++)
            sum += Weights[i] * (piece.At(mid - half * Nodes[i]).D1.Length + piece.At(mid + half * Nodes[i]).D1.Length);
        return half * sum;
    }
}

namespace SurfaceUnroll.Curves;

/// <summary>A tridiagonal system, solved by elimination without exchanges: enough for the rows of a spline, whose pivots stay positive.</summary>
internal sealed class Tridiagonal(int size)
{
    private readonly double[] below = new double[size], above = new double[size];

    public double[] Diagonal { get; } = new double[size];

    public double[] Right { get; } = new double[size];

    public void Set(int row, double left, (double Diagonal, double Beside, double Right) rest)
    {
        below[row] = left;
        (Diagonal[row], above[row], Right[row]) = rest;
    }

    public void CopyMatrixTo(Tridiagonal other)
    {
        below.CopyTo(other.below, 0);
        above.CopyTo(other.above, 0);
        Diagonal.CopyTo(other.Diagonal, 0);
    }

    /// <summary>The solution; entries outside the matrix (below of the first row, above of the last) are left out.</summary>
    public double[] Solve()
    {
        double[] pivot = [.. Diagonal], x = [.. Right];
        for (int i = 1; i < size; i++)
        {
            double factor = below[i] / pivot[i - 1];
            pivot[i] -= factor * above[i - 1];
            x[i] -= factor * x[i - 1];
        }
        x[size - 1] /= pivot[size - 1];
        for (int i = size - 2; i >= 0; i--) x[i] = (x[i] - above[i] * x[i + 1]) / pivot[i];
        return x;
    }
}

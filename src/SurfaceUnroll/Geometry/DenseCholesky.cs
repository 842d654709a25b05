namespace SurfaceUnroll.Geometry;

/// <summary>Cholesky's factor of a small symmetric positive definite matrix: L·Lᵀ, L lower triangular (G. Golub &amp; C. Van Loan, Matrix Computations, section 4.2).</summary>
internal sealed class DenseCholesky
{
    // Below this share of what a diagonal began with, rounding is all that is left of it.
    private const double Singular = 1e-13;

    private readonly double[,] _l;

    private DenseCholesky(double[,] l) => _l = l;

    private int Size => _l.GetLength(0);

    /// <summary>Factors a matrix.</summary>
    /// <param name="matrix">Some tens of rows at most; the half above its diagonal is not looked at.</param>
    /// <param name="damping">Share by which the diagonal is raised (D. Marquardt, 1963).</param>
    /// <returns>Null where the matrix is singular, but for rounding.</returns>
    public static DenseCholesky? Of(double[,] matrix, double damping = 0)
    {
        int n = matrix.GetLength(0);
        double[,] l = new double[n, n];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double sum = i == j ? (1 + damping) * matrix[i, i] : matrix[i, j];
                for (int k = 0; k < j; k++) sum -= l[i, k] * l[j, k];
                if (i > j) l[i, j] = sum / l[j, j];
                else if (sum > Singular * matrix[i, i]) l[i, i] = Math.Sqrt(sum);
                else return null;
            }
        }
        return new DenseCholesky(l);
    }

    /// <summary>The x of L·Lᵀ·x = <paramref name="right"/>.</summary>
    public double[] Solve(double[] right)
    {
        double[] x = [.. right];
        for (int i = 0; i < Size; i++)
        {
            for (int k = 0; k < i; k++) x[i] -= _l[i, k] * x[k];
            x[i] /= _l[i, i];
        }
        return Back(x);
    }

    /// <summary>A matrix whose product with its own transpose is the inverse: it makes independent numbers of spread 1 into numbers of that covariance.</summary>
    public double[,] InverseFactor()
    {
        double[,] inverse = new double[Size, Size];
        for (int k = 0; k < Size; k++)
        {
            double[] unit = new double[Size];
            unit[k] = 1;
            double[] column = Back(unit);
            for (int i = 0; i < Size; i++) inverse[i, k] = column[i];
        }
        return inverse;
    }

    // Lᵀ·x = b, in place.
    private double[] Back(double[] x)
    {
        for (int i = Size - 1; i >= 0; i--)
        {
            for (int k = i + 1; k < Size; k++) x[i] -= _l[k, i] * x[k];
            x[i] /= _l[i, i];
        }
        return x;
    }
}

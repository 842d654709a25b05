namespace SurfaceUnroll.Uncertainty;

/// <summary>Small symmetric, positive definite systems.</summary>
internal static class SmallSystem
{
    /// <summary>Solves A·x = b by Cholesky factors (Golub and Van Loan, Matrix Computations, section 4.2).</summary>
    /// <param name="matrix">Symmetric, positive definite; not changed.</param>
    /// <param name="right">As many values.</param>
    public static double[] Solve(double[,] matrix, double[] right)
    {
        int n = right.Length;
        double[,] lower = new double[n, n];
        double[] x = new double[n];
        for (int r = 0; r < n; r++)
        {
            for (int c = 0; c <= r; c++)
            {
                double sum = matrix[r, c];
                for (int k = 0; k < c; k++) sum -= lower[r, k] * lower[c, k];
                lower[r, c] = r == c ? Math.Sqrt(sum) : sum / lower[c, c];
            }
        }
        for (int r = 0; r < n; r++)
        {
            double sum = right[r];
            for (int k = 0; k < r; k++) sum -= lower[r, k] * x[k];
            x[r] = sum / lower[r, r];
        }
        for (int r = n - 1; r >= 0; r--)
        {
            double sum = x[r];
            for (int k = r + 1; k < n; k++) sum -= lower[k, r] * x[k];
            x[r] = sum / lower[r, r];
        }
        return x;
    }
}

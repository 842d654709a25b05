using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Tests.Geometry;

public class DenseCholeskyTests
{
    // The Moler matrix, mᵢⱼ = min(i, j) − 2 and i on the diagonal, counted from 1: all its entries are whole numbers, and so is its factor (N. Higham, Accuracy and Stability of Numerical Algorithms, 2002; from memory).
    private static double[,] Moler(int n)
    {
        double[,] m = new double[n, n];
        for (int i = 0; i < n; i++)
            for (int j = 0; j < n; j++) m[i, j] = i == j ? i + 1 : Math.Min(i, j) - 1;
        return m;
    }

    [Fact]
    public void Solution_put_in_gives_the_right_side()
    {
        double[,] m = Moler(6);
        double[] x = [1, -2, 3, 0.5, 7, -1], right = new double[6];
        for (int i = 0; i < 6; i++)
            for (int j = 0; j < 6; j++) right[i] += m[i, j] * x[j];
        double[] solved = DenseCholesky.Of(m)!.Solve(right);
        // Its condition is about 4^6.
        for (int i = 0; i < 6; i++) Assert.Equal(x[i], solved[i], 1e-10);
    }

    [Fact]
    public void Inverse_factor_times_its_transpose_is_the_inverse()
    {
        double[,] m = Moler(5), f = DenseCholesky.Of(m)!.InverseFactor();
        for (int i = 0; i < 5; i++)
        {
            for (int j = 0; j < 5; j++)
            {
                double sum = 0;
                for (int k = 0; k < 5; k++)
                    for (int l = 0; l < 5; l++) sum += m[i, k] * f[k, l] * f[j, l];
                Assert.Equal(i == j ? 1 : 0, sum, 1e-9);
            }
        }
    }

    [Fact]
    public void Singular_matrix_has_no_factor_until_its_diagonal_is_raised()
    {
        double[,] m = { { 4, 2 }, { 2, 1 } };
        Assert.Null(DenseCholesky.Of(m));
        Assert.NotNull(DenseCholesky.Of(m, 1e-6));
    }
}

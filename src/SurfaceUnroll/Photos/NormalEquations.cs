using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Photos;

/// <summary>Small least-squares problems by their normal equations (G. Golub &amp; C. Van Loan, Matrix Computations, section 5.3).</summary>
/// <param name="size">Unknowns; some tens at most.</param>
internal sealed class NormalEquations(int size)
{
    private readonly double[,] _matrix = new double[size, size];
    private readonly double[] _right = new double[size];

    /// <summary>Adds one equation row · x = value, of weight 1.</summary>
    public void Add(ReadOnlySpan<double> row, double value)
    {
        for (int i = 0; i < size; i++)
        {
            if (row[i] == 0) continue;
            _right[i] += row[i] * value;
            for (int j = 0; j <= i; j++) _matrix[i, j] += row[i] * row[j];
        }
    }

    /// <summary>The solution; null where the equations do not settle it.</summary>
    /// <param name="damping">Share by which the diagonal is raised (D. Marquardt, 1963); 0 for the solution itself.</param>
    public double[]? Solve(double damping = 0) => DenseCholesky.Of(_matrix, damping)?.Solve(_right);

    /// <summary>A matrix whose product with its own transpose is the inverse: it makes independent numbers of spread 1 into the errors of the solution. Null as above.</summary>
    public double[,]? ErrorFactor() => DenseCholesky.Of(_matrix)?.InverseFactor();
}

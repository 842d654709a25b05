namespace SurfaceUnroll.Curves.Fairing;

/// <summary>A symmetric positive definite system with few diagonals, which may run on round the corner as those of closed curves do. Factored once, solved for many
/// right-hand sides.</summary>
/// <remarks>Cholesky's method on the band; the last unknowns of a closed one are taken out by their Schur complement (Golub &amp; Van Loan, Matrix Computations, ch. 4).</remarks>
/// <param name="size">Unknowns; a closed system has more than twice <paramref name="reach"/> of them.</param>
/// <param name="reach">Diagonals on each side of the main one.</param>
/// <param name="closed">Row 0 is the neighbour of the last.</param>
internal sealed class BandedSystem(int size, int reach, bool closed)
{
    // Unknowns within the band proper; the rest, on a closed system, are its border.
    private readonly int _inner = closed ? size - reach : size;
    private readonly double[,] _band = new double[size, reach + 1];
    private readonly double[,] _border = new double[closed ? reach : 0, size];

    /// <summary>Adds to the entry of two unknowns that are within reach of each other, and to its mirror image.</summary>
    public void Add(int row, int column, double value)
    {
        (int low, int high) = (Math.Min(row, column), Math.Max(row, column));
        if (high >= _inner) _border[high - _inner, low] += value;
        else _band[high, high - low] += value;
    }

    /// <summary>Factors the matrix in place; false where it is not positive definite to rounding.</summary>
    public bool Factor()
    {
        for (int i = 0; i < _inner; i++)
        {
            for (int k = Math.Min(reach, i); k >= 0; k--)
            {
                int j = i - k;
                double sum = _band[i, k];
                for (int m = Math.Max(0, Math.Max(i, j) - reach); m < j; m++) sum -= _band[i, i - m] * _band[j, j - m];
                if (k > 0) _band[i, k] = sum / _band[j, 0];
                else if (sum > 0) _band[i, 0] = Math.Sqrt(sum);
                else return false;
            }
        }
        // Rows of the border go on as rows of the factor.
        for (int b = 0; b < size - _inner; b++)
        {
            for (int j = 0; j < _inner + b + 1; j++)
            {
                double sum = _border[b, j];
                if (j < _inner)
                {
                    for (int m = Math.Max(0, j - reach); m < j; m++) sum -= _border[b, m] * _band[j, j - m];
                    _border[b, j] = sum / _band[j, 0];
                    continue;
                }
                for (int m = 0; m < j; m++) sum -= _border[b, m] * _border[j - _inner, m];
                if (j < _inner + b) _border[b, j] = sum / _border[j - _inner, j];
                else if (sum > 0) _border[b, j] = Math.Sqrt(sum);
                else return false;
            }
        }
        return true;
    }

    /// <summary>The solution for one right-hand side, after <see cref="Factor"/>.</summary>
    public double[] Solve(double[] right)
    {
        double[] x = [.. right];
        for (int i = 0; i < size; i++)
        {
            for (int m = i < _inner ? Math.Max(0, i - reach) : 0; m < i; m++) x[i] -= Entry(i, m) * x[m];
            x[i] /= Entry(i, i);
        }
        for (int i = size - 1; i >= 0; i--)
        {
            x[i] /= Entry(i, i);
            for (int m = i < _inner ? Math.Max(0, i - reach) : 0; m < i; m++) x[m] -= Entry(i, m) * x[i];
        }
        return x;
    }

    private double Entry(int row, int column) => row < _inner ? _band[row, row - column] : _border[row - _inner, column];
}

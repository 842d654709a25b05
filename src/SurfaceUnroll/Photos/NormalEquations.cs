namespace SurfaceUnroll.Photos;

/// <summary>Small least-squares problems by their normal equations and a Cholesky factor (G. Golub &amp; C. Van Loan, Matrix Computations, sections 4.2 and 5.3).</summary>
/// <param name="size">Unknowns; some tens at most.</param>
internal sealed class NormalEquations(int size)
{
    // Below this share of what a diagonal began with, rounding is all that is left of it.
    private const double Singular = 1e-13;

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
    public double[]? Solve(double damping = 0) => Factor(damping) is { } factor ? Backward(factor, Forward(factor, _right)) : null;

    /// <summary>A matrix whose product with its own transpose is the inverse: it makes independent numbers of spread 1 into the errors of the solution. Null as above.</summary>
    public double[,]? ErrorFactor()
    {
        if (Factor(0) is not { } factor) return null;
        double[,] errors = new double[size, size];
        for (int k = 0; k < size; k++)
        {
            double[] unit = new double[size];
            unit[k] = 1;
            double[] column = Backward(factor, unit);
            for (int i = 0; i < size; i++) errors[i, k] = column[i];
        }
        return errors;
    }

    private double[,]? Factor(double damping)
    {
        double[,] l = new double[size, size];
        for (int i = 0; i < size; i++)
            for (int j = 0; j <= i; j++)
            {
                double sum = _matrix[i, j];
                if (i == j) sum *= 1 + damping;
                for (int k = 0; k < j; k++) sum -= l[i, k] * l[j, k];
                if (i > j) l[i, j] = sum / l[j, j];
                else if (sum > Singular * _matrix[i, i]) l[i, i] = Math.Sqrt(sum);
                else return null;
            }
        return l;
    }

    private double[] Forward(double[,] l, double[] right)
    {
        double[] x = [.. right];
        for (int i = 0; i < size; i++)
        {
            for (int k = 0; k < i; k++) x[i] -= l[i, k] * x[k];
            x[i] /= l[i, i];
        }
        return x;
    }

    private double[] Backward(double[,] l, double[] right)
    {
        double[] x = [.. right];
        for (int i = size - 1; i >= 0; i--)
        {
            for (int k = i + 1; k < size; k++) x[i] -= l[k, i] * x[k];
            x[i] /= l[i, i];
        }
        return x;
    }
}

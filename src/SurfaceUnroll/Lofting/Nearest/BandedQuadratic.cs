namespace SurfaceUnroll.Lofting.Nearest;

/// <summary>A quadratic to be made small under linear bounds, ½xᵀHx + gᵀx with a·x ≥ b, whose rows reach over a few neighbouring unknowns only.</summary>
/// <remarks>Primal-dual interior point with slacks (Nocedal and Wright, Numerical Optimization, 2nd edition, section 16.6); each step solves one banded system by Cholesky's method, so its cost grows
/// as the number of unknowns.</remarks>
internal sealed class BandedQuadratic(int size, int reach)
{
    // Share of the way to the nearest bound that a step may go, and by how much each step lowers what is left of the complementarity.
    private const double Shortened = 0.99, Centring = 0.15;

    private const int MostSteps = 60;

    // Steps once every bound is closed, for a gradient that rounding keeps from coming to rest.
    private const int Polish = 4;

    // Slacks and weights begin no smaller than this: from too near to a bound the steps are short.
    private const double Far = 0.1;

    // Mean product of slack and weight, and largest miss of a slack, that count as none; steps aim no lower, or rounding would have the last word.
    private const double Closed = 1e-10;

    // Share of the gradient at 0 that counts as none.
    private const double Rest = 1e-11;

    private readonly double[] _matrix = new double[size * (reach + 1)];
    private readonly double[] _linear = new double[size];
    private readonly List<Bound> _bounds = [];

    /// <summary>Adds ½·weight·(Σ coefficient·x + rest)².</summary>
    /// <param name="weight">≥ 0.</param>
    /// <param name="rest">Value at x = 0.</param>
    /// <param name="terms">Unknowns and their coefficients; no two unknowns farther apart than the reach.</param>
    public void AddSquare(double weight, double rest, params ReadOnlySpan<(int Index, double Coefficient)> terms)
    {
        foreach ((int i, double a) in terms)
        {
            _linear[i] += weight * a * rest;
            foreach ((int j, double b) in terms)
                if (j <= i) _matrix[i * (reach + 1) + i - j] += weight * a * b;
        }
    }

    /// <summary>Asks for a·x[i] + b·x[j] ≥ least; j = i − 1 … or b = 0.</summary>
    public void AddBound(int i, double a, int j, double b, double least) => _bounds.Add(new Bound(i, a, j, b, least));

    /// <summary>The least place.</summary>
    public double[] Minimise()
    {
        int count = _bounds.Count;
        double[] x = new double[size], slack = new double[count], weight = new double[count];
        for (int k = 0; k < count; k++) (slack[k], weight[k]) = (Math.Max(_bounds[k].Excess(x), Far), Far);
        double[] matrix = new double[_matrix.Length], right = new double[size];
        double rest = Rest * (1 + _linear.Max(Math.Abs));
        int closed = 0;
        for (int step = 0; step < MostSteps; step++)
        {
            double gap = Dot(slack, weight) / Math.Max(1, count), target = Math.Max(Centring * gap, 0.1 * Closed);
            (double miss, double unrest) = Prepare(x, slack, weight, target, matrix, right);
            if (gap < Closed && miss < Closed && (unrest < rest || ++closed > Polish)) break;
            Factor(matrix);
            Solve(matrix, right);
            double reachPrimal = 1, reachDual = 1;
            double[] ds = new double[count], dw = new double[count];
            for (int k = 0; k < count; k++)
            {
                Bound bound = _bounds[k];
                ds[k] = bound.Slope(right) + bound.Excess(x) - slack[k];
                dw[k] = (target - weight[k] * ds[k]) / slack[k] - weight[k];
                if (ds[k] < 0) reachPrimal = Math.Min(reachPrimal, -Shortened * slack[k] / ds[k]);
                if (dw[k] < 0) reachDual = Math.Min(reachDual, -Shortened * weight[k] / dw[k]);
            }
            double share = Math.Min(reachPrimal, reachDual);
            for (int i = 0; i < size; i++) x[i] += share * right[i];
            for (int k = 0; k < count; k++) (slack[k], weight[k]) = (slack[k] + share * ds[k], weight[k] + share * dw[k]);
        }
        return x;
    }

    // The Newton system; returns the largest miss of a bound's slack, and the largest part of the gradient that no bound holds up.
    private (double Miss, double Unrest) Prepare(double[] x, double[] slack, double[] weight, double target, double[] matrix, double[] right)
    {
        _matrix.CopyTo(matrix, 0);
        for (int i = 0; i < size; i++) right[i] = -_linear[i];
        for (int i = 0; i < size; i++)
        {
            int row = i * (reach + 1);
            right[i] -= _matrix[row] * x[i];
            for (int k = 1; k <= Math.Min(reach, i); k++)
            {
                right[i] -= _matrix[row + k] * x[i - k];
                right[i - k] -= _matrix[row + k] * x[i];
            }
        }
        for (int k = 0; k < _bounds.Count; k++)
        {
            Bound bound = _bounds[k];
            right[bound.I] += bound.A * weight[k];
            right[bound.J] += bound.B * weight[k];
        }
        double miss = 0, unrest = right.Max(Math.Abs);
        for (int k = 0; k < _bounds.Count; k++)
        {
            Bound bound = _bounds[k];
            double off = bound.Excess(x) - slack[k], ratio = weight[k] / slack[k];
            miss = Math.Max(miss, Math.Abs(off));
            // What is left of the bound's own equations once slack and weight are eliminated.
            double push = target / slack[k] - ratio * off - weight[k];
            right[bound.I] += bound.A * push;
            right[bound.J] += bound.B * push;
            matrix[bound.I * (reach + 1)] += ratio * bound.A * bound.A;
            if (bound.B == 0) continue;
            matrix[bound.J * (reach + 1)] += ratio * bound.B * bound.B;
            (int hi, int lo) = bound.I > bound.J ? (bound.I, bound.J) : (bound.J, bound.I);
            matrix[hi * (reach + 1) + hi - lo] += ratio * bound.A * bound.B;
        }
        return (miss, unrest);
    }

    private void Factor(double[] m)
    {
        for (int i = 0; i < size; i++)
        {
            for (int j = Math.Max(0, i - reach); j <= i; j++)
            {
                double sum = m[i * (reach + 1) + i - j];
                for (int k = Math.Max(0, i - reach); k < j; k++)
                    sum -= m[i * (reach + 1) + i - k] * m[j * (reach + 1) + j - k];
                m[i * (reach + 1) + i - j] = i == j ? Math.Sqrt(Math.Max(sum, 1e-30)) : sum / m[j * (reach + 1)];
            }
        }
    }

    private void Solve(double[] m, double[] b)
    {
        for (int i = 0; i < size; i++)
        {
            for (int k = 1; k <= Math.Min(reach, i); k++) b[i] -= m[i * (reach + 1) + k] * b[i - k];
            b[i] /= m[i * (reach + 1)];
        }
        for (int i = size - 1; i >= 0; i--)
        {
            b[i] /= m[i * (reach + 1)];
            for (int k = 1; k <= Math.Min(reach, i); k++) b[i - k] -= m[i * (reach + 1) + k] * b[i];
        }
    }

    private static double Dot(double[] a, double[] b)
    {
        double sum = 0;
        for (int i = 0; i < a.Length; i++) sum += a[i] * b[i];
        return sum;
    }

    private readonly record struct Bound(int I, double A, int J, double B, double Least)
    {
        public double Slope(double[] x) => A * x[I] + B * x[J];

        public double Excess(double[] x) => Slope(x) - Least;
    }
}

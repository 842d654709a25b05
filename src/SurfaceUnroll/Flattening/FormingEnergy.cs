using SurfaceUnroll.Flattening.Sparse;

namespace SurfaceUnroll.Flattening;

/// <summary>The forming energy of a blank, its gradient, and its Hessian made positive semidefinite triangle by triangle.</summary>
/// <remarks>Eigensystem of isotropic energies in closed form: Smith, de Goes and Kim, "Analytic eigensystems for isotropic distortion energies", ACM TOG 38(1), 2019. The Hessian by the
/// Jacobian has the modes P (both stretches alike), N (stretches opposed), which D11, D12 and D22 couple, twist T with eigenvalue (D1 + D2)/(s₁ + s₂) and flip F with
/// (D1 − D2)/(s₁ − s₂); negative eigenvalues are set to zero.</remarks>
internal sealed class FormingEnergy
{
    // Triangles to a task. Partial sums are by chunk, so results do not depend on the number of cores.
    private const int Chunk = 512;

    // Values a triangle: 6 of the gradient, then the blocks aa, bb, cc (xx, xy, yy each) and ba, ca, cb (xx, xy, yx, yy each).
    private const int Stride = 27, Gradient = 0, Diagonal = 6, OffDiagonal = 15;

    private readonly RestTriangles _rest;
    private readonly double _shrinkCost;
    private readonly BlockSystem _matrix;
    private readonly double[] _parts;

    // Where the values of each vertex and of each edge stand among the triangles' values; for edges a bit more: turned round or not.
    private readonly int[] _vertexFirst, _vertexSources, _edgeSources;

    /// <summary>The energy over a mesh.</summary>
    public FormingEnergy(RestTriangles rest, BlockSystem matrix, double shrinkCost)
    {
        (_rest, _matrix, _shrinkCost) = (rest, matrix, shrinkCost);
        _parts = new double[Stride * rest.Count];
        _vertexFirst = new int[rest.Vertices + 1];
        foreach (int v in rest.Corners) _vertexFirst[v + 1]++;
        for (int v = 0; v < rest.Vertices; v++) _vertexFirst[v + 1] += _vertexFirst[v];
        _vertexSources = new int[rest.Corners.Length];
        int[] fill = _vertexFirst[..^1];
        for (int i = 0; i < rest.Corners.Length; i++) _vertexSources[fill[rest.Corners[i]]++] = i;
        _edgeSources = new int[2 * matrix.Later.Length];
        Array.Fill(_edgeSources, -1);
        ReadOnlySpan<(int Row, int Column)> pairs = [(1, 0), (2, 0), (2, 1)];
        for (int t = 0; t < rest.Count; t++)
        {
            for (int k = 0; k < 3; k++)
            {
                int row = rest.Corners[3 * t + pairs[k].Row], column = rest.Corners[3 * t + pairs[k].Column];
                int slot = 2 * matrix.EdgeOf(Math.Min(row, column), Math.Max(row, column));
                if (_edgeSources[slot] >= 0) slot++;
                _edgeSources[slot] = 2 * (Stride * t + OffDiagonal + 4 * k) + (row < column ? 1 : 0);
            }
        }
    }

    /// <summary>Energy, mm²; +∞ if a triangle is turned over or has no area on the blank.</summary>
    /// <param name="x">Places on the blank, two values a vertex.</param>
    public double Evaluate(double[] x)
    {
        double[] sums = new double[(_rest.Count + Chunk - 1) / Chunk];
        ForChunks((chunk, start, end) =>
        {
            double sum = 0;
            for (int t = start; t < end; t++)
            {
                Jacobian j = _rest.At(x, t);
                if (!(j.Determinant > 0))
                {
                    sum = double.PositiveInfinity;
                    break;
                }
                double mean = j.Mean, half = j.Half, s1 = mean + half;
                sum += _rest.Area[t] * HenckyDensity.At(s1, j.Determinant / s1, _shrinkCost);
            }
            sums[chunk] = sum;
        });
        return sums.Sum();
    }

    /// <summary>Fills the gradient and the matrix at a blank without turned triangles.</summary>
    public void Assemble(double[] x, double[] gradient)
    {
        ForChunks((_, start, end) =>
        {
            for (int t = start; t < end; t++) Differentiate(x, t);
        });
        Gather(gradient);
    }

    /// <summary>Fills the matrix with the quadratic form of the least-squares conformal map, Σ A((Jxx − Jyy)² + (Jyx + Jxy)²)/2.</summary>
    /// <remarks>Lévy, Petitjean, Ray and Maillot, "Least squares conformal maps for automatic texture atlas generation", ACM TOG 21(3), 2002.</remarks>
    public void AssembleConformal()
    {
        ForChunks((_, start, end) =>
        {
            for (int t = start; t < end; t++)
            {
                Span<double> part = _parts.AsSpan(Stride * t, Stride);
                part.Clear();
                var blocks = new Blocks(part, _rest.Alpha[t], _rest.Beta[t], _rest.Gamma[t], _rest.Area[t]);
                blocks.AddMode(2, 1, 0, 0, -1);
                blocks.AddMode(2, 0, 1, 1, 0);
                blocks.Finish();
            }
        });
        Gather(null);
    }

    private void Differentiate(double[] x, int t)
    {
        Span<double> part = _parts.AsSpan(Stride * t, Stride);
        part.Clear();
        Jacobian j = _rest.At(x, t);
        double mean = j.Mean, half = j.Half, s1 = mean + half, s2 = j.Determinant / s1;
        var w = new HenckyDensity(s1, s2, _shrinkCost);
        (double c2, double z2) = j.Sum(mean);
        (double c1, double z1) = j.Difference(half);
        var blocks = new Blocks(part, _rest.Alpha[t], _rest.Beta[t], _rest.Gamma[t], _rest.Area[t]);

        // Each mode as a matrix of length √2, column by column: P = (c2, z2, −z2, c2), N = (c1, z1, z1, −c1), T = (−z2, c2, −c2, −z2), F = (−z1, c1, c1, z1).
        double gp = 0.5 * (w.D1 + w.D2), gn = 0.5 * (w.D1 - w.D2);
        blocks.SetGradient(gp * c2 + gn * c1, gp * z2 + gn * z1, -gp * z2 + gn * z1, gp * c2 - gn * c1);
        double pp = 0.5 * (w.D11 + 2 * w.D12 + w.D22), nn = 0.5 * (w.D11 - 2 * w.D12 + w.D22), pn = 0.5 * (w.D11 - w.D22);
        double middle = 0.5 * (pp + nn), reach = Math.Sqrt(0.25 * (pp - nn) * (pp - nn) + pn * pn);
        // Eigenvectors (u, v) and (−v, u) over P and N.
        (double u, double v) = reach > 0 ? Half(0.5 * (pp - nn) / reach, pn / reach) : (1, 0);
        blocks.AddMode(middle + reach, u * c2 + v * c1, u * z2 + v * z1, -u * z2 + v * z1, u * c2 - v * c1);
        blocks.AddMode(middle - reach, -v * c2 + u * c1, -v * z2 + u * z1, v * z2 + u * z1, -v * c2 - u * c1);
        blocks.AddMode((w.D1 + w.D2) / (2 * mean), -z2, c2, -c2, -z2);
        blocks.AddMode(half > 1e-7 * mean ? (w.D1 - w.D2) / (2 * half) : w.D11 - w.D12, -z1, c1, c1, z1);
        blocks.Finish();
    }

    // Unit vector at half the angle of a unit vector.
    private static (double Cos, double Sin) Half(double cos, double sin)
    {
        double c = Math.Sqrt(Math.Max(0, 0.5 * (1 + cos))), s = Math.Sqrt(Math.Max(0, 0.5 * (1 - cos)));
        return (c, sin < 0 ? -s : s);
    }

    private void Gather(double[]? gradient)
    {
        ForRange(_rest.Vertices, (start, end) =>
        {
            for (int v = start; v < end; v++)
            {
                double gx = 0, gy = 0, xx = 0, xy = 0, yy = 0;
                for (int i = _vertexFirst[v]; i < _vertexFirst[v + 1]; i++)
                {
                    (int t, int corner) = Math.DivRem(_vertexSources[i], 3);
                    int at = Stride * t;
                    gx += _parts[at + Gradient + 2 * corner];
                    gy += _parts[at + Gradient + 2 * corner + 1];
                    xx += _parts[at + Diagonal + 3 * corner];
                    xy += _parts[at + Diagonal + 3 * corner + 1];
                    yy += _parts[at + Diagonal + 3 * corner + 2];
                }
                (_matrix.Diagonal[3 * v], _matrix.Diagonal[3 * v + 1], _matrix.Diagonal[3 * v + 2]) = (xx, xy, yy);
                if (gradient is not null) (gradient[2 * v], gradient[2 * v + 1]) = (gx, gy);
            }
        });
        ForRange(_matrix.Later.Length, (start, end) =>
        {
            for (int e = start; e < end; e++)
            {
                double xx = 0, xy = 0, yx = 0, yy = 0;
                for (int i = 2 * e; i < 2 * e + 2 && _edgeSources[i] >= 0; i++)
                {
                    int at = _edgeSources[i] >> 1;
                    xx += _parts[at];
                    yy += _parts[at + 3];
                    bool turned = (_edgeSources[i] & 1) != 0;
                    xy += _parts[turned ? at + 2 : at + 1];
                    yx += _parts[turned ? at + 1 : at + 2];
                }
                (_matrix.Edges[4 * e], _matrix.Edges[4 * e + 1], _matrix.Edges[4 * e + 2], _matrix.Edges[4 * e + 3]) = (xx, xy, yx, yy);
            }
        });
    }

    private void ForChunks(Action<int, int, int> step)
    {
        int chunks = (_rest.Count + Chunk - 1) / Chunk;
        if (chunks == 1) step(0, 0, _rest.Count);
        else Parallel.For(0, chunks, c => step(c, c * Chunk, Math.Min(_rest.Count, (c + 1) * Chunk)));
    }

    private static void ForRange(int count, Action<int, int> step)
    {
        if (count <= Chunk) step(0, count);
        else Parallel.For(0, (count + Chunk - 1) / Chunk, c => step(c * Chunk, Math.Min(count, (c + 1) * Chunk)));
    }

    // The gradient and the blocks of one triangle, collected mode by mode for corners b and c; corner a balances them, as moving all three changes nothing.
    private readonly ref struct Blocks(Span<double> part, double alpha, double beta, double gamma, double area)
    {
        private readonly Span<double> _part = part;

        public void SetGradient(double xx, double yx, double xy, double yy)
        {
            double bx = area * (alpha * xx + beta * xy), by = area * (alpha * yx + beta * yy), cx = area * gamma * xy, cy = area * gamma * yy;
            (_part[0], _part[1], _part[2], _part[3], _part[4], _part[5]) = (-bx - cx, -by - cy, bx, by, cx, cy);
        }

        // Adds eigenvalue · m·mᵀ/2 for a mode of length √2, unless the eigenvalue is negative.
        public void AddMode(double eigenvalue, double xx, double yx, double xy, double yy)
        {
            if (!(eigenvalue > 0)) return;
            double k = 0.5 * area * eigenvalue;
            double bx = alpha * xx + beta * xy, by = alpha * yx + beta * yy, cx = gamma * xy, cy = gamma * yy;
            double kbx = k * bx, kby = k * by, kcx = k * cx, kcy = k * cy;
            _part[9] += kbx * bx;
            _part[10] += kbx * by;
            _part[11] += kby * by;
            _part[12] += kcx * cx;
            _part[13] += kcx * cy;
            _part[14] += kcy * cy;
            _part[23] += kcx * bx;
            _part[24] += kcx * by;
            _part[25] += kcy * bx;
            _part[26] += kcy * by;
        }

        public void Finish()
        {
            // ba = −(bb + bc), ca = −(cb + cc), aa = −(ba + ca).
            _part[15] = -(_part[9] + _part[23]);
            _part[16] = -(_part[10] + _part[25]);
            _part[17] = -(_part[10] + _part[24]);
            _part[18] = -(_part[11] + _part[26]);
            _part[19] = -(_part[12] + _part[23]);
            _part[20] = -(_part[13] + _part[24]);
            _part[21] = -(_part[13] + _part[25]);
            _part[22] = -(_part[14] + _part[26]);
            _part[6] = -(_part[15] + _part[19]);
            _part[7] = -(_part[16] + _part[20]);
            _part[8] = -(_part[18] + _part[22]);
        }
    }
}

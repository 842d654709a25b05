using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Curves.Fairing;

/// <summary>The smoothing spline of a row of points: of all cubic B-splines with knots at the points the one with the least Σ weightᵢ·|f(uᵢ) − pᵢ|² + ∫|f‴|² du.</summary>
/// <remarks>What it pays for is change of curvature, as little as can be: parabolas cost nothing, arcs of circles next to nothing, and free ends are
/// not straightened as they are where bending itself is paid for (P. Eilers &amp; B. Marx, Flexible smoothing with B-splines and penalties, 1996, with their third-order penalty).</remarks>
internal sealed class FairSpline
{
    private const int Reach = 3;

    private readonly ImmutableArray<Vec3> _points;
    private readonly double[] _knots;
    private readonly double[][,] _spans;
    private readonly bool _closed;

    // What costs nothing is taken off first, so that rounding is that of what is left: a parabola, of a closed row a place.
    private readonly (Vec3 C0, Vec3 C1, Vec3 C2) _trend;

    /// <summary>Prepares for a row of points.</summary>
    /// <param name="points">Three or more; of a closed row seven or more, the first not repeated.</param>
    /// <param name="parameters">As many, growing; of a closed row one more, its whole length.</param>
    /// <param name="closed">The row goes on from its last point to its first.</param>
    public FairSpline(ImmutableArray<Vec3> points, double[] parameters, bool closed)
    {
        // Knots a unit apart in the mean keep both terms of the sum of like size.
        double unit = (parameters[^1] - parameters[0]) / (parameters.Length - 1);
        _closed = closed;
        _knots = [.. parameters.Select(u => (u - parameters[0]) / unit)];
        _trend = closed ? (points.Aggregate((a, b) => a + b) / points.Length, default, default) : Parabola(points);
        _points = [.. points.Select((p, i) => p - Trend(_knots[i]))];
        _spans = [.. Enumerable.Range(0, _knots.Length - 1).Select(Basis)];
    }

    /// <summary>Fewest points of a row.</summary>
    public static int Fewest(bool closed) => closed ? 2 * Reach + 1 : 3;

    private int Coefficients => _closed ? _points.Length : _points.Length + 2;

    /// <summary>The spline for given weights, each &gt; 0; null where rounding does not let it be found.</summary>
    public Vec3[]? Fit(double[] weights)
    {
        var system = new BandedSystem(Coefficients, Reach, _closed);
        double[][] right = [new double[Coefficients], new double[Coefficients], new double[Coefficients]];
        for (int k = 0; k < _spans.Length; k++)
        {
            double step = _knots[k + 1] - _knots[k];
            Outer(system, k, j => 6 * _spans[k][j, 3], step);
        }
        for (int i = 0; i < _points.Length; i++)
        {
            (int k, double[] row) = RowAt(i);
            Outer(system, k, j => row[j], weights[i]);
            for (int j = 0; j <= Reach; j++)
            {
                int c = Coefficient(k + j);
                right[0][c] += weights[i] * row[j] * _points[i].X;
                right[1][c] += weights[i] * row[j] * _points[i].Y;
                right[2][c] += weights[i] * row[j] * _points[i].Z;
            }
        }
        if (!system.Factor()) return null;
        double[][] solved = [.. right.Select(system.Solve)];
        return [.. Enumerable.Range(0, Coefficients).Select(c => new Vec3(solved[0][c], solved[1][c], solved[2][c]))];
    }

    /// <summary>What a spline pays for change of curvature: ∫|f‴|² du, knots a unit apart in the mean.</summary>
    public double Cost(Vec3[] fit) => Enumerable.Range(0, _spans.Length).Sum(k =>
    {
        Vec3 third = 6 * Sum(fit, k, j => _spans[k][j, 3]);
        return (_knots[k + 1] - _knots[k]) * third.Dot(third);
    });

    /// <summary>By how much the spline leaves each point: f(uᵢ) − pᵢ, mm.</summary>
    public Vec3[] Moves(Vec3[] fit) => [.. _points.Select((p, i) =>
    {
        (int k, double[] row) = RowAt(i);
        return Sum(fit, k, j => row[j]) - p;
    })];

    /// <summary>The parts of the moves that are square to the spline, mm: what lies along it moves a point's parameter and not the curve.</summary>
    public Vec3[] Across(Vec3[] fit, Vec3[] moves)
    {
        ImmutableArray<Cubic> cubics = Cubics(fit);
        return [.. moves.Select((m, i) =>
        {
            Vec3 along = (i < cubics.Length ? cubics[i].C1 : cubics[^1].C1 + 2 * cubics[^1].C2 + 3 * cubics[^1].C3).Unit;
            return m - m.Dot(along) * along;
        })];
    }

    /// <summary>The spline as cubics, one for each pair of neighbouring points.</summary>
    public ImmutableArray<Cubic> Cubics(Vec3[] fit) => [.. Enumerable.Range(0, _spans.Length).Select(k =>
    {
        double h = _knots[k + 1] - _knots[k];
        double u = _knots[k];
        return new Cubic(
            Trend(u) + Sum(fit, k, j => _spans[k][j, 0]), h * (_trend.C1 + 2 * u * _trend.C2 + Sum(fit, k, j => _spans[k][j, 1])),
            h * h * (_trend.C2 + Sum(fit, k, j => _spans[k][j, 2])), h * h * h * Sum(fit, k, j => _spans[k][j, 3]));
    })];

    /// <summary>The same knots under other points, whose trend is left in them.</summary>
    public FairSpline Under(ImmutableArray<Vec3> points) => new(points, _knots, _spans, _closed);

    private FairSpline(ImmutableArray<Vec3> points, double[] knots, double[][,] spans, bool closed) => (_points, _knots, _spans, _closed) = (points, knots, spans, closed);

    private Vec3 Trend(double u) => _trend.C0 + u * (_trend.C1 + u * _trend.C2);

    // Least squares, by polynomials square to each other over the knots (G. Forsythe, 1957).
    private (Vec3, Vec3, Vec3) Parabola(ImmutableArray<Vec3> points)
    {
        double middle = _knots.Average(), spread = _knots.Sum(u => (u - middle) * (u - middle)), skew = _knots.Sum(u => Math.Pow(u - middle, 3)) / spread;
        double mean2 = spread / _knots.Length;
        double Second(double u) => (u - middle) * (u - middle - skew) - mean2;
        Vec3 c0 = default, c1 = default, c2 = default;
        for (int i = 0; i < points.Length; i++)
        {
            double u = _knots[i];
            c0 += points[i] / points.Length;
            c1 += ((u - middle) / spread) * points[i];
            c2 += Second(u) * points[i];
        }
        c2 /= _knots.Sum(u => Second(u) * Second(u));
        // From powers about the middle to powers of u.
        return (c0 - middle * c1 + (middle * (middle + skew) - mean2) * c2, c1 - (2 * middle + skew) * c2, c2);
    }

    private int Coefficient(int index) => _closed ? index % _points.Length : index;

    private Vec3 Sum(Vec3[] fit, int span, Func<int, double> share)
    {
        Vec3 sum = default;
        for (int j = 0; j <= Reach; j++) sum += share(j) * fit[Coefficient(span + j)];
        return sum;
    }

    // Adds factor·r·rᵀ, r the row of the four coefficients of a span.
    private void Outer(BandedSystem system, int span, Func<int, double> row, double factor)
    {
        for (int a = 0; a <= Reach; a++)
            for (int b = 0; b <= a; b++) system.Add(Coefficient(span + a), Coefficient(span + b), factor * row(a) * row(b));
    }

    // The B-splines at a point: at the start of its span, of the last point of an open row at the end.
    private (int Span, double[] Row) RowAt(int point)
    {
        if (point < _spans.Length) return (point, [.. Enumerable.Range(0, Reach + 1).Select(j => _spans[point][j, 0])]);
        double h = _knots[^1] - _knots[^2];
        double[,] last = _spans[^1];
        return (_spans.Length - 1, [.. Enumerable.Range(0, Reach + 1).Select(j => last[j, 0] + h * (last[j, 1] + h * (last[j, 2] + h * last[j, 3])))]);
    }

    // The four cubic B-splines over a span as polynomials in u − knot: row j, falling powers last (Cox–de Boor recursion on polynomials).
    private double[,] Basis(int span)
    {
        double at = Knot(span);
        double[,] row = new double[Reach + 1, Reach + 1];
        row[Reach, 0] = 1;
        for (int degree = 1; degree <= Reach; degree++)
        {
            double[,] next = new double[Reach + 1, Reach + 1];
            for (int j = Reach - degree; j <= Reach; j++)
            {
                // B-spline j starts at knot span + j − 3, whatever its degree: those of a lower one that live on the span are the last ones.
                int first = span + j - Reach;
                (double a, double b) = (Knot(first), Knot(first + degree));
                if (b > a) Multiply(next, j, row, j, (at - a) / (b - a), 1 / (b - a));
                (double c, double d) = (Knot(first + 1), Knot(first + degree + 1));
                if (j < Reach && d > c) Multiply(next, j, row, j + 1, (d - at) / (d - c), -1 / (d - c));
            }
            row = next;
        }
        return row;
    }

    // to[row] += (constant + slope·x)·from[other].
    private static void Multiply(double[,] to, int row, double[,] from, int other, double constant, double slope)
    {
        for (int power = 0; power <= Reach; power++)
        {
            to[row, power] += constant * from[other, power];
            if (power < Reach) to[row, power + 1] += slope * from[other, power];
        }
    }

    private double Knot(int index)
    {
        if (!_closed) return _knots[Math.Clamp(index, 0, _knots.Length - 1)];
        int spans = _knots.Length - 1, turns = (int)Math.Floor((double)index / spans);
        return _knots[index - turns * spans] + turns * _knots[^1];
    }
}

using SurfaceUnroll.Flattening.Sparse;

namespace SurfaceUnroll.Flattening;

/// <summary>Edges of a mesh that keep their formed length on the blank.</summary>
/// <remarks>Augmented Lagrangian (Nocedal and Wright, Numerical Optimization, ch. 17): each edge of formed length l adds l·(λe + ρe²/2) with e = ln(flat length / l); λ += ρe after each
/// descent until e is as good as zero.</remarks>
/// <param name="ends">Two vertices an edge, in the order of elimination, none twice.</param>
/// <param name="lengths">Formed lengths, mm.</param>
/// <param name="area">Formed area of the sheet, mm².</param>
internal sealed class HeldEdges(int[] ends, double[] lengths, double area)
{
    // Stiffness of the hold against that of the sheet behind the edge: what is left of the strain after a descent is about the inverse of it.
    private const double Stiffness = 100;

    // Largest strain that an edge may keep; the contract asks for 1e-4.
    private const double Kept = 2e-6;

    private readonly double[] _multipliers = new double[lengths.Length];

    // The sheet behind a millimetre of edge resists with about its depth.
    private readonly double _rho = Stiffness * area / Math.Max(lengths.Sum(), 1e-300);

    /// <summary>No edge at all.</summary>
    public static HeldEdges None { get; } = new([], [], 0);

    /// <summary>True if there is none.</summary>
    public bool IsEmpty => lengths.Length == 0;

    /// <summary>What the hold adds to the energy.</summary>
    public double Evaluate(double[] x)
    {
        double sum = 0;
        for (int i = 0; i < lengths.Length; i++)
        {
            double e = Strain(x, i);
            sum += lengths[i] * (_multipliers[i] * e + 0.5 * _rho * e * e);
        }
        return sum;
    }

    /// <summary>Adds the hold's gradient and its Hessian, made positive semidefinite.</summary>
    public void AddTo(double[] x, double[] gradient, BlockSystem matrix)
    {
        for (int i = 0; i < lengths.Length; i++)
        {
            int a = ends[2 * i], b = ends[2 * i + 1];
            double dx = x[2 * b] - x[2 * a], dy = x[2 * b + 1] - x[2 * a + 1], square = dx * dx + dy * dy, e = Strain(x, i);
            double pull = lengths[i] * (_multipliers[i] + _rho * e) / square;
            gradient[2 * a] -= pull * dx;
            gradient[2 * a + 1] -= pull * dy;
            gradient[2 * b] += pull * dx;
            gradient[2 * b + 1] += pull * dy;
            double along = Math.Max(0, lengths[i] * _rho / square - pull), across = Math.Max(0, pull);
            double xx = (along * dx * dx + across * dy * dy) / square, yy = (along * dy * dy + across * dx * dx) / square, xy = (along - across) * dx * dy / square;
            foreach (int v in (ReadOnlySpan<int>)[a, b])
            {
                matrix.Diagonal[3 * v] += xx;
                matrix.Diagonal[3 * v + 1] += xy;
                matrix.Diagonal[3 * v + 2] += yy;
            }
            int slot = 4 * matrix.EdgeOf(Math.Min(a, b), Math.Max(a, b));
            matrix.Edges[slot] -= xx;
            matrix.Edges[slot + 1] -= xy;
            matrix.Edges[slot + 2] -= xy;
            matrix.Edges[slot + 3] -= yy;
        }
    }

    /// <summary>Raises the hold by what the edges still strain. True once every edge keeps its length.</summary>
    public bool Tighten(double[] x)
    {
        bool kept = true;
        for (int i = 0; i < lengths.Length; i++)
        {
            double e = Strain(x, i);
            kept &= Math.Abs(e) <= Kept;
            _multipliers[i] += _rho * e;
        }
        return kept;
    }

    private double Strain(double[] x, int i)
    {
        int a = 2 * ends[2 * i], b = 2 * ends[2 * i + 1];
        double dx = x[b] - x[a], dy = x[b + 1] - x[a + 1];
        return 0.5 * Math.Log((dx * dx + dy * dy) / (lengths[i] * lengths[i]));
    }
}

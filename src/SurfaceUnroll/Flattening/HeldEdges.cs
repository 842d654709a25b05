using System.Collections.Immutable;
using SurfaceUnroll.Flattening.Sparse;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Flattening;

/// <summary>Edges of a mesh that keep their formed length on the blank.</summary>
/// <remarks>Augmented Lagrangian (Nocedal and Wright, Numerical Optimization, ch. 17): each edge of formed length l adds l·(λe + ρe²/2) with e = ln(flat length / l); λ += ρe after each
/// descent until e is as good as zero.
/// <para>Length alone would let a fine mesh shorten an edge by folding it to and fro within its outermost row of triangles, at a cost that falls with the size of the
/// triangles. So each inner place of an edge also resists a turn that differs from the one it has on the formed sheet; on a smooth blank that costs nothing that counts.</para></remarks>
internal sealed class HeldEdges
{
    // Stiffness of the hold against that of the sheet behind the edge: what is left of the strain after a descent is about the inverse of it.
    private const double Stiffness = 100;

    // Largest strain that an edge may keep; the contract asks for 1e-4.
    private const double Kept = 2e-6;

    // Resistance to a turn for each millimetre of edge, against the depth of the sheet.
    private const double TurnStiffness = 0.2;

    private readonly int[] _ends, _bends;
    private readonly double[] _lengths, _multipliers, _sines, _bendStiffness;

    // The sheet behind a millimetre of edge resists with about its depth.
    private readonly double _rho;

    /// <summary>Holds chains of vertices.</summary>
    /// <param name="mesh">The formed mesh.</param>
    /// <param name="chains">Vertices of the mesh along each edge, the sheet on either side; no edge twice.</param>
    /// <param name="rank">Place of each vertex in the order of elimination.</param>
    /// <param name="area">Formed area, mm².</param>
    public HeldEdges(TriangleMesh mesh, ImmutableArray<ImmutableArray<int>> chains, int[] rank, double area)
    {
        (int A, int B)[] edges = [.. chains.SelectMany(c => c.Zip(c.Skip(1)))];
        (int A, int B, int C)[] bends = [.. Bends(chains)];
        _ends = [.. edges.SelectMany(e => new[] { rank[e.A], rank[e.B] })];
        _lengths = [.. edges.Select(e => Length(e.A, e.B))];
        _multipliers = new double[edges.Length];
        double depth = edges.Length > 0 ? area / _lengths.Sum() : 0;
        _rho = Stiffness * depth;
        _bends = [.. bends.SelectMany(b => new[] { rank[b.A], rank[b.B], rank[b.C] })];
        _bendStiffness = [.. bends.Select(b => 0.5 * TurnStiffness * depth * (Length(b.A, b.B) + Length(b.B, b.C)))];
        _sines = Sines(mesh, bends);

        double Length(int a, int b) => (mesh.Places[b] - mesh.Places[a]).Length;
    }

    /// <summary>Triples of neighbouring vertices along the chains: the matrix must have an entry for each pair.</summary>
    public static IEnumerable<(int A, int B, int C)> Bends(ImmutableArray<ImmutableArray<int>> chains) =>
        chains.SelectMany(c => c.Zip(c.Skip(1), c.Skip(2)));

    /// <summary>True if there is none.</summary>
    public bool IsEmpty => _lengths.Length == 0;

    /// <summary>What the hold adds to the energy.</summary>
    public double Evaluate(double[] x)
    {
        double sum = 0;
        for (int i = 0; i < _lengths.Length; i++)
        {
            double e = Strain(x, i);
            sum += _lengths[i] * (_multipliers[i] * e + 0.5 * _rho * e * e);
        }
        for (int i = 0; i < _sines.Length; i++)
        {
            double miss = Sine(x, i, default) - _sines[i];
            sum += 0.5 * _bendStiffness[i] * miss * miss;
        }
        return sum;
    }

    /// <summary>Adds the hold's gradient and its Hessian, made positive semidefinite.</summary>
    public void AddTo(double[] x, double[] gradient, BlockSystem matrix)
    {
        for (int i = 0; i < _lengths.Length; i++)
        {
            int a = _ends[2 * i], b = _ends[2 * i + 1];
            double dx = x[2 * b] - x[2 * a], dy = x[2 * b + 1] - x[2 * a + 1], square = dx * dx + dy * dy, e = Strain(x, i);
            double pull = _lengths[i] * (_multipliers[i] + _rho * e) / square;
            gradient[2 * a] -= pull * dx;
            gradient[2 * a + 1] -= pull * dy;
            gradient[2 * b] += pull * dx;
            gradient[2 * b + 1] += pull * dy;
            double along = Math.Max(0, _lengths[i] * _rho / square - pull), across = Math.Max(0, pull);
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
        AddBends(x, gradient, matrix);
    }

    // Gauss and Newton's part of the Hessian alone: the rest is as small as the miss.
    private void AddBends(double[] x, double[] gradient, BlockSystem matrix)
    {
        Span<double> slope = stackalloc double[6];
        for (int i = 0; i < _sines.Length; i++)
        {
            double miss = Sine(x, i, slope) - _sines[i], k = _bendStiffness[i];
            for (int p = 0; p < 3; p++)
            {
                int v = _bends[3 * i + p];
                (double gx, double gy) = (slope[2 * p], slope[2 * p + 1]);
                gradient[2 * v] += k * miss * gx;
                gradient[2 * v + 1] += k * miss * gy;
                matrix.Diagonal[3 * v] += k * gx * gx;
                matrix.Diagonal[3 * v + 1] += k * gx * gy;
                matrix.Diagonal[3 * v + 2] += k * gy * gy;
                for (int q = 0; q < p; q++)
                {
                    int w = _bends[3 * i + q];
                    (int row, int column) = v > w ? (p, q) : (q, p);
                    int slot = 4 * matrix.EdgeOf(Math.Min(v, w), Math.Max(v, w));
                    matrix.Edges[slot] += k * slope[2 * row] * slope[2 * column];
                    matrix.Edges[slot + 1] += k * slope[2 * row] * slope[2 * column + 1];
                    matrix.Edges[slot + 2] += k * slope[2 * row + 1] * slope[2 * column];
                    matrix.Edges[slot + 3] += k * slope[2 * row + 1] * slope[2 * column + 1];
                }
            }
        }
    }

    // Sine of the turn from one edge of a bend to the next, and its derivatives by the six coordinates of its three places.
    private double Sine(double[] x, int bend, Span<double> slope)
    {
        int a = 2 * _bends[3 * bend], b = 2 * _bends[3 * bend + 1], c = 2 * _bends[3 * bend + 2];
        double ux = x[b] - x[a], uy = x[b + 1] - x[a + 1], wx = x[c] - x[b], wy = x[c + 1] - x[b + 1];
        double uu = ux * ux + uy * uy, ww = wx * wx + wy * wy, scale = 1 / Math.Sqrt(uu * ww), sine = (ux * wy - uy * wx) * scale;
        if (slope.IsEmpty) return sine;
        double sux = wy * scale - sine * ux / uu, suy = -wx * scale - sine * uy / uu;
        double swx = -uy * scale - sine * wx / ww, swy = ux * scale - sine * wy / ww;
        (slope[0], slope[1], slope[2], slope[3], slope[4], slope[5]) = (-sux, -suy, sux - swx, suy - swy, swx, swy);
        return sine;
    }

    // Sine of the geodesic turn at each bend: half a turn less the angles of the triangles between its two edges, on the side that has the sheet.
    private static double[] Sines(TriangleMesh mesh, (int A, int B, int C)[] bends)
    {
        // Most meshes hold nothing: then there is no need to walk over all their faces.
        if (bends.Length == 0) return [];
        var angles = new Dictionary<int, double>();
        foreach ((int _, int b, int _) in bends) angles[b] = 0;
        foreach ((int a, int b, int c) in mesh.Faces)
        {
            Add(a, b, c);
            Add(b, c, a);
            Add(c, a, b);
        }
        var runs = new HashSet<(int, int)>();
        foreach ((int a, int b, int c) in mesh.Faces)
        {
            if (angles.ContainsKey(a)) runs.Add((a, b));
            if (angles.ContainsKey(b)) runs.Add((b, c));
            if (angles.ContainsKey(c)) runs.Add((c, a));
        }
        // With the sheet on the left the chain runs as its faces do.
        return [.. bends.Select(bend => (runs.Contains((bend.B, bend.C)) ? 1 : -1) * Math.Sin(Math.PI - angles[bend.B]))];

        void Add(int at, int b, int c)
        {
            if (angles.TryGetValue(at, out double sum)) angles[at] = sum + (mesh.Places[b] - mesh.Places[at]).AngleTo(mesh.Places[c] - mesh.Places[at]);
        }
    }

    /// <summary>Raises the hold by what the edges still strain. True once every edge keeps its length.</summary>
    public bool Tighten(double[] x)
    {
        bool kept = true;
        for (int i = 0; i < _lengths.Length; i++)
        {
            double e = Strain(x, i);
            kept &= Math.Abs(e) <= Kept;
            _multipliers[i] += _rho * e;
        }
        return kept;
    }

    private double Strain(double[] x, int i)
    {
        int a = 2 * _ends[2 * i], b = 2 * _ends[2 * i + 1];
        double dx = x[b] - x[a], dy = x[b + 1] - x[a + 1];
        return 0.5 * Math.Log((dx * dx + dy * dy) / (_lengths[i] * _lengths[i]));
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;

namespace SurfaceUnroll.Uncertainty;

/// <summary>Places along the edges of a blank at which it is asked how far the edge moves, square to itself.</summary>
/// <remarks>Only the move square to the edge is a move of the edge: which place of a moved edge stands for which does not matter, so that a matching that jumps leaves no trace.</remarks>
internal sealed class EdgePlaces
{
    // Places stand about this far apart, mm, and so many to an edge.
    private const double Pitch = 15;
    private const int Fewest = 5, Most = 61;

    /// <summary>A step aside that tells metal from air, mm; an edge no longer than that has no places.</summary>
    internal const double Aside = 0.2;

    // Places keep this far from corners within an edge, mm.
    private const double Clear = 3;

    // Against rounding where a motion does nothing, such as a turn of a disc; as a share of the others.
    private const double Nothing = 1e-6;

    private readonly ImmutableArray<(string Name, int Run, int Sides)> _edges;

    // Of each place the side of its edge, from corner to corner, on which it lies.
    private readonly ImmutableArray<int> _sides;

    private readonly ImmutableArray<BlankEdge> _lines;

    private readonly Motion[] _motions;

    private readonly DenseCholesky _factor;

    // What the three motions of a blank on the table (right, up, a turn about its middle) do to a place, and the length of edge that it stands for.
    private readonly record struct Motion(double Right, double Up, double Turn, double Weight)
    {
        public double this[int k] => k switch { 0 => Right, 1 => Up, _ => Turn };
    }

    /// <summary>The places of a panel's net edges.</summary>
    public EdgePlaces(PanelDevelopment panel)
    {
        var edges = ImmutableArray.CreateBuilder<(string, int, int)>();
        var sides = ImmutableArray.CreateBuilder<int>();
        var rows = ImmutableArray.CreateBuilder<ImmutableArray<BandPlace>>();
        var lines = ImmutableArray.CreateBuilder<BlankEdge>();
        var net = new CutOutline(panel.Net);
        foreach (BlankEdge edge in panel.Edges)
        {
            if (edge.Flat.Length < 2 || edge.FlatLength <= Aside) continue;
            var line = new EdgeLine(edge.Flat);
            edges.Add((edge.Name, edges.Count(e => e.Item1 == edge.Name), line.Sides));
            (BandPlace Place, int Side)[] row = [.. Row(edge, line, net)];
            rows.Add([.. row.Select(r => r.Place)]);
            sides.AddRange(row.Select(r => r.Side));
            lines.Add(edge);
        }
        (_edges, _sides, _lines, Rows) = (edges.ToImmutable(), sides.ToImmutable(), lines.ToImmutable(), rows.ToImmutable());
        BandPlace[] places = [.. Rows.SelectMany(r => r)];
        double[] weights = [.. Rows.SelectMany(r => r.Select((_, i) => (i == 0 || i == r.Length - 1 ? 0.5 : 1) * r[^1].At / (r.Length - 1)))];
        double total = weights.Sum();
        Vec2 middle = Vec2.Zero;
        for (int i = 0; i < places.Length; i++) middle += weights[i] / total * places[i].Flat;
        double size = places.Select(p => (p.Flat - middle).Length).DefaultIfEmpty().Max();
        _motions = [.. places.Select((p, i) => new Motion(p.Outward.X, p.Outward.Y, size > 0 ? p.Outward.Dot((p.Flat - middle).Left) / size : 0, weights[i]))];
        double[,] normal = new double[3, 3];
        foreach (Motion m in _motions)
            for (int r = 0; r < 3; r++)
                for (int c = 0; c < 3; c++) normal[r, c] += m.Weight * m[r] * m[c];
        for (int r = 0; r < 3; r++) normal[r, r] += Nothing * Math.Max(total, 1);
        _factor = DenseCholesky.Of(normal)!; // Regular by what was just added.
    }

    /// <summary>The edges that have a length.</summary>
    public ImmutableArray<BlankEdge> Edges => _lines;

    /// <summary>Their names.</summary>
    public IEnumerable<string> Names => _edges.Select(e => e.Name);

    /// <summary>The places along each, their bands not known yet.</summary>
    public ImmutableArray<ImmutableArray<BandPlace>> Rows { get; }

    /// <summary>Number of places in all.</summary>
    public int Count => _motions.Length;

    /// <summary>Length of edge that each place stands for, mm.</summary>
    public IEnumerable<double> Weights => _motions.Select(m => m.Weight);

    /// <summary>How far each place of the edges moves, outward, mm, after the motion that lays the other blank best on this one: a blank that is turned on the table is the same blank.</summary>
    /// <param name="other">The piece as it comes out of other readings.</param>
    /// <returns>Row by row; null if it has other edges.</returns>
    public double[]? Moves(PanelDevelopment other)
    {
        double[] moves = new double[Count];
        int k = 0;
        for (int e = 0; e < _edges.Length; e++)
        {
            if (other.Edges.Where(edge => edge.Name == _edges[e].Name).Skip(_edges[e].Run).FirstOrDefault() is not { } edge) return null;
            var line = new EdgeLine(edge.Flat);
            foreach (BandPlace place in Rows[e])
            {
                // With other corners it is not known which side is which.
                double move = line.Crossing(place.Flat, place.Outward, line.Sides == _edges[e].Sides ? _sides[k] : -1);
                if (!double.IsFinite(move)) return null;
                moves[k++] = move;
            }
        }
        return Settled(moves);
    }

    private static IEnumerable<(BandPlace Place, int Side)> Row(BlankEdge edge, EdgeLine line, CutOutline net)
    {
        int gaps = Math.Clamp((int)Math.Ceiling(edge.FlatLength / Pitch), Fewest - 1, Most - 1);
        return Enumerable.Range(0, gaps + 1).Select(i =>
        {
            double share = line.OffCorners((double)i / gaps, Clear);
            (Vec2 at, Vec2 along, int side) = line.At(share);
            // At the very end of an edge a step aside may leave the metal either way; a little way in it does not.
            (Vec2 inside, Vec2 there, _) = line.At(Math.Clamp(share, 0.02, 0.98));
            Vec2 left = along.Left;
            bool metalOnLeft = net.Depth(inside + Aside * there.Left) >= net.Depth(inside - Aside * there.Left);
            return (new BandPlace(edge.FlatLength * share, at, metalOnLeft ? -left : left, 0), side);
        });
    }

    // Less the motion of least squares, which the normal equations give.
    private double[] Settled(double[] moves)
    {
        double[] right = new double[3];
        for (int i = 0; i < moves.Length; i++)
            for (int r = 0; r < 3; r++) right[r] += _motions[i].Weight * _motions[i][r] * moves[i];
        double[] motion = _factor.Solve(right);
        return [.. moves.Select((move, i) => move - _motions[i].Right * motion[0] - _motions[i].Up * motion[1] - _motions[i].Turn * motion[2])];
    }
}

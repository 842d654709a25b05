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

    // An edge that comes out shorter is run on straight, and so is each side of a corner, by at most this, mm.
    private const double RunOn = 50, Past = 10;

    /// <summary>A step aside that tells metal from air, mm; an edge no longer than that has no places.</summary>
    internal const double Aside = 0.2;

    // Places keep this far from corners within an edge, mm.
    private const double Clear = 3;

    // A turn from chord to chord that is a corner, radians; a chord of less than this share of the two is no neighbour to go by.
    private const double Corner = 0.15, LeastShare = 0.1;

    // Against rounding where a motion does nothing, such as a turn of a disc; as a share of the others.
    private const double Nothing = 1e-6;

    private readonly ImmutableArray<(string Name, int Run)> _edges;

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
        var edges = ImmutableArray.CreateBuilder<(string, int)>();
        var rows = ImmutableArray.CreateBuilder<ImmutableArray<BandPlace>>();
        var lines = ImmutableArray.CreateBuilder<BlankEdge>();
        var net = new CutOutline(panel.Net);
        foreach (BlankEdge edge in panel.Edges)
        {
            if (edge.Flat.Length < 2 || edge.FlatLength <= Aside) continue;
            edges.Add((edge.Name, edges.Count(e => e.Item1 == edge.Name)));
            rows.Add(Row(edge, net));
            lines.Add(edge);
        }
        (_edges, _lines, Rows) = (edges.ToImmutable(), lines.ToImmutable(), rows.ToImmutable());
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
            foreach (BandPlace place in Rows[e])
            {
                double move = Move(place, edge.Flat);
                if (!double.IsFinite(move)) return null;
                moves[k++] = move;
            }
        }
        return Settled(moves);
    }

    private static ImmutableArray<BandPlace> Row(BlankEdge edge, CutOutline net)
    {
        int gaps = Math.Clamp((int)Math.Ceiling(edge.FlatLength / Pitch), Fewest - 1, Most - 1);
        return [.. Enumerable.Range(0, gaps + 1).Select(i =>
        {
            double share = OffCorners(edge.Flat, (double)i / gaps);
            (Vec2 at, Vec2 along) = OnCurve(edge.Flat, share);
            // At the very end of an edge a step aside may leave the metal either way; a little way in it does not.
            (Vec2 inside, Vec2 there) = DrawingPlaces.On(edge.Flat, Math.Clamp(share, 0.02, 0.98));
            Vec2 left = along.Left;
            bool metalOnLeft = net.Depth(inside + Aside * there.Left) >= net.Depth(inside - Aside * there.Left);
            return new BandPlace(edge.FlatLength * share, at, metalOnLeft ? -left : left, 0);
        })];
    }

    // The share nearest to one that is clear of the corners within an edge: at a corner it is not one side that moves but the farther of two.
    private static double OffCorners(ImmutableArray<Vec2> line, double share)
    {
        double[] running = PathLength.Running(line.Select(p => new Vec3(p.X, p.Y, 0)));
        double at = share * running[^1];
        for (int i = 1; i < line.Length - 1; i++)
        {
            if (Math.Abs(at - running[i]) >= Clear) continue;
            Vec2 from = line[i] - line[i - 1], to = line[i + 1] - line[i];
            if (Math.Abs(Math.Atan2(from.Cross(to), from.Dot(to))) > Corner) return (at <= running[i] ? running[i] - Clear : running[i] + Clear) / running[^1];
        }
        return share;
    }

    // The place a fraction of the way along an edge, on the curve that its chords stand for, and the direction of that.
    private static (Vec2 At, Vec2 Along) OnCurve(ImmutableArray<Vec2> line, double fraction)
    {
        double total = 0, walked = 0;
        for (int i = 1; i < line.Length; i++) total += (line[i] - line[i - 1]).Length;
        for (int i = 1; i < line.Length; i++)
        {
            Vec2 chord = line[i] - line[i - 1];
            double step = chord.Length;
            if (step > 0 && (walked + step >= fraction * total || i == line.Length - 1))
            {
                double share = Math.Clamp((fraction * total - walked) / step, 0, 1);
                return (line[i - 1] + share * chord + Rise(line, i - 1, share) * chord.Unit.Left, chord.Unit.Rotate((share - 0.5) * TurnOver(line, i - 1)));
            }
            walked += step;
        }
        return (line[^1], Vec2.Zero);
    }

    // Height of the curve over its chord, to the left, mm.
    private static double Rise(ImmutableArray<Vec2> line, int chord, double share) => -0.5 * TurnOver(line, chord) * share * (1 - share) * (line[chord + 1] - line[chord]).Length;

    // How far the curve turns over a chord, radians: as at the end where it turns less. Beside a flat, or between turns to either side, it does not.
    private static double TurnOver(ImmutableArray<Vec2> line, int chord)
    {
        bool closed = (line[0] - line[^1]).Length < 1e-6;
        double? before = Turn(chord), after = Turn(chord + 1);
        return (before, after) switch
        {
            ({ } a, { } b) => a * b <= 0 ? 0 : Math.Abs(a) < Math.Abs(b) ? a : b,
            ({ } a, null) => a,
            (null, { } b) => b,
            _ => 0,
        };

        // Over this chord, by the turn at one of its ends; null at a corner, where the edge ends, and beside a chord of quite another length.
        double? Turn(int at)
        {
            if (!closed && (at == 0 || at == line.Length - 1)) return null;
            Vec2 from = at == 0 ? line[^1] - line[^2] : line[at] - line[at - 1], to = at == line.Length - 1 ? line[1] - line[0] : line[at + 1] - line[at];
            double length = from.Length + to.Length, angle = Math.Atan2(from.Cross(to), from.Dot(to));
            return Math.Abs(angle) > Corner || Math.Min(from.Length, to.Length) < LeastShare * length ? null : angle * 2 * (line[chord + 1] - line[chord]).Length / length;
        }
    }

    // To where the other edge crosses the line square to this one; the nearest crossing counts.
    private static double Move(BandPlace place, ImmutableArray<Vec2> line)
    {
        (Vec2 p, Vec2 n) = (place.Flat, place.Outward);
        double nearest = double.PositiveInfinity;
        bool closed = line.Length > 3 && (line[0] - line[^1]).Length < 1e-6;
        for (int i = 1; i < line.Length; i++)
        {
            Vec2 a = line[i - 1], along = line[i] - a;
            double across = n.Cross(along), length = along.Length;
            if (Math.Abs(across) <= 1e-6 * length) continue;
            double u = (p - a).Cross(n) / -across, before = More(i - 1) / length, after = More(i) / length;
            if (u < -before || u > 1 + after) continue;
            double move = (a - p).Cross(along) / across;
            if (u is > 0 and < 1) move += Rise(line, i - 1, u) / along.Unit.Left.Dot(n);
            if (Math.Abs(move) < Math.Abs(nearest)) nearest = move;
        }
        return nearest;

        // How far the side of a place of the line runs on past it, mm.
        double More(int at)
        {
            bool end = at == 0 || at == line.Length - 1;
            if (end && !closed) return RunOn;
            Vec2 from = at == 0 ? line[^1] - line[^2] : line[at] - line[at - 1], to = at == line.Length - 1 ? line[1] - line[0] : line[at + 1] - line[at];
            return Math.Abs(Math.Atan2(from.Cross(to), from.Dot(to))) > Corner ? Past : 1e-9;
        }
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

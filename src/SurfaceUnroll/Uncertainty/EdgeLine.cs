using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Uncertainty;

/// <summary>A flat edge as drawn by chords, read as the curve that they stand for: arcs over the chords, and corners between its sides.</summary>
internal sealed class EdgeLine
{
    // A turn from chord to chord that is a corner, radians; a chord of less than this share of the two is no neighbour to go by.
    private const double Corner = 0.15, LeastShare = 0.1;

    // An edge that comes out shorter is run on straight, and so is each side of a corner, by at most this, mm; where it is not known which side is meant, by less.
    private const double RunOn = 50, Past = 10;

    private readonly ImmutableArray<Vec2> _line;

    private readonly double[] _running;

    private readonly bool _closed;

    // Of each chord the side that it belongs to; a closed edge that runs smoothly through its seam has the same side before and after.
    private readonly int[] _sides;

    /// <summary>The edge.</summary>
    /// <param name="line">Two places or more.</param>
    public EdgeLine(ImmutableArray<Vec2> line)
    {
        _line = line;
        _running = PathLength.Running(line.Select(p => new Vec3(p.X, p.Y, 0)));
        _closed = line.Length > 3 && (line[0] - line[^1]).Length < 1e-6;
        _sides = new int[line.Length - 1];
        for (int i = 1; i < _sides.Length; i++) _sides[i] = _sides[i - 1] + (IsCorner(i) ? 1 : 0);
        Sides = _sides[^1] + 1;
        if (!_closed || Sides == 1 || IsCorner(0)) return;
        Sides--;
        for (int i = _sides.Length - 1; i > 0 && _sides[i] == Sides; i--) _sides[i] = 0;
    }

    /// <summary>Number of sides: one more than corners within the edge.</summary>
    public int Sides { get; }

    /// <summary>The share of the length nearest to one that is clear of the corners within the edge.</summary>
    /// <param name="share">0 to 1.</param>
    /// <param name="clear">How far from a corner, mm.</param>
    public double OffCorners(double share, double clear)
    {
        double at = share * _running[^1];
        for (int i = 1; i < _line.Length - 1; i++)
        {
            if (Math.Abs(at - _running[i]) < clear && IsCorner(i)) return (at <= _running[i] ? _running[i] - clear : _running[i] + clear) / _running[^1];
        }
        return share;
    }

    /// <summary>The place a fraction of the way along the edge, on the curve that its chords stand for, the direction of that, and its side.</summary>
    public (Vec2 At, Vec2 Along, int Side) At(double fraction)
    {
        for (int i = 1; i < _line.Length; i++)
        {
            Vec2 chord = _line[i] - _line[i - 1];
            double step = chord.Length;
            if (step == 0 || (_running[i] < fraction * _running[^1] && i < _line.Length - 1)) continue;
            double share = Math.Clamp((fraction * _running[^1] - _running[i - 1]) / step, 0, 1);
            return (_line[i - 1] + share * chord + Rise(i - 1, share) * chord.Unit.Left, chord.Unit.Rotate((share - 0.5) * TurnOver(i - 1)), _sides[i - 1]);
        }
        return (_line[^1], Vec2.Zero, _sides[^1]);
    }

    /// <summary>How far along a line square to another edge this one crosses it, mm; the nearest crossing counts, and infinity is none.</summary>
    /// <param name="p">Where that line begins.</param>
    /// <param name="n">Its direction, of length 1.</param>
    /// <param name="side">The side that is meant; −1 for any. A line by a corner crosses both of the sides that meet there, or what they run on to, and the nearer of two is not always the one that moved.</param>
    public double Crossing(Vec2 p, Vec2 n, int side)
    {
        double nearest = double.PositiveInfinity;
        for (int i = 1; i < _line.Length; i++)
        {
            if (side >= 0 && _sides[i - 1] != side) continue;
            Vec2 a = _line[i - 1], along = _line[i] - a;
            double across = n.Cross(along), length = along.Length;
            if (Math.Abs(across) <= 1e-6 * length) continue;
            double u = (p - a).Cross(n) / -across, before = More(i - 1, side >= 0) / length, after = More(i, side >= 0) / length;
            if (u < -before || u > 1 + after) continue;
            double move = (a - p).Cross(along) / across;
            if (u is > 0 and < 1) move += Rise(i - 1, u) / along.Unit.Left.Dot(n);
            if (Math.Abs(move) < Math.Abs(nearest)) nearest = move;
        }
        return nearest;
    }

    // How far the side of a place of the line runs on past it, mm.
    private double More(int at, bool known)
    {
        bool end = at == 0 || at == _line.Length - 1;
        if (end && !_closed) return RunOn;
        return IsCorner(at) ? known ? RunOn : Past : 1e-9;
    }

    private bool IsCorner(int at) => Math.Abs(Angle(at).Turn) > Corner;

    // By how much the line turns at a place that is no end, radians, and the lengths of the chords before and after, mm.
    private (double Turn, double Before, double After) Angle(int at)
    {
        Vec2 from = at == 0 ? _line[^1] - _line[^2] : _line[at] - _line[at - 1], to = at == _line.Length - 1 ? _line[1] - _line[0] : _line[at + 1] - _line[at];
        return (Math.Atan2(from.Cross(to), from.Dot(to)), from.Length, to.Length);
    }

    // Height of the curve over its chord, to the left, mm.
    private double Rise(int chord, double share) => -0.5 * TurnOver(chord) * share * (1 - share) * (_line[chord + 1] - _line[chord]).Length;

    // How far the curve turns over a chord, radians: as at the end where it turns less. Beside a flat, or between turns to either side, it does not.
    private double TurnOver(int chord)
    {
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
            if (!_closed && (at == 0 || at == _line.Length - 1)) return null;
            (double angle, double from, double to) = Angle(at);
            double length = from + to;
            return Math.Abs(angle) > Corner || Math.Min(from, to) < LeastShare * length ? null : angle * 2 * (_line[chord + 1] - _line[chord]).Length / length;
        }
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Patterns.CutPaths;

/// <summary>Splits a dense closed cut line into smooth runs between corners, and finds the direction of the smooth line at every place.</summary>
/// <remarks>
/// A cut line is drawn so densely that a smooth edge leaves its chords by some micrometres. A chord that the turns at its ends would bend by more is therefore straight.
/// A corner is where the line turns sharply, turns far more than its neighbourhood explains, or where two straight chords meet.
/// </remarks>
internal sealed class CornerSplit
{
    // A place this near to the chord between its neighbours does nothing, mm; places are written a thousand times finer.
    private const double Nothing = 1e-6;

    // No smooth edge is drawn with steps that turn more than this, radians.
    private const double Sharp = 15 * Math.PI / 180;

    // A smaller turn (radians) is a corner if it is this many times what the bend on both sides of it explains.
    private const double Slight = 3 * Math.PI / 180, Unexplained = 3;

    // A curve that rises more over a chord (mm) would have been drawn with more places: the chord is straight. The first is the tolerance of a fit, which a smooth line
    // through the places would miss; beside chords several times shorter the gap that smooth edges are drawn with tells it already.
    private const double StraightGap = 0.02, LongGap = 0.005, Longer = 3;

    // Directions are taken over this way to either side, so that the rounding of places close together does not turn them, mm, but over no more turn than that, radians.
    private const double Window = 0.5, WindowTurn = 6 * Math.PI / 180;

    // Arcs may meet every so often along a run, as a share of its length and in turn, radians: near enough to come within a few hundredths of the best places, few enough to try them all.
    private const double NodeShare = 1.0 / 250, NodeTurn = 0.02;

    private readonly Vec2[] _points;
    private readonly double[] _length, _turn;
    private readonly bool[] _straight, _corner;

    private CornerSplit(ImmutableArray<Vec2> loop)
    {
        _points = WithoutIdlePlaces(loop);
        int n = _points.Length;
        _length = [.. Enumerable.Range(0, n).Select(i => Chord(i).Length)];
        _turn = [.. Enumerable.Range(0, n).Select(i => PathArc.Angle(Chord(i - 1), Chord(i)))];
        _corner = [.. Enumerable.Range(0, n).Select(IsSharp)];
        _straight = [.. Enumerable.Range(0, n).Select(IsStraight)];
        for (int i = 0; i < n; i++)
            if (_straight[i] && _straight[Wrap(i - 1)] && Math.Abs(_turn[i]) > RunFitting.LargestBreak) _corner[i] = true;
    }

    /// <summary>The runs of a closed cut line in its order, the first from its first corner on.</summary>
    /// <param name="loop">At least three places, mm; the first is not repeated.</param>
    public static ImmutableArray<SmoothRun> Of(ImmutableArray<Vec2> loop) => new CornerSplit(loop).Runs();

    private ImmutableArray<SmoothRun> Runs()
    {
        int n = _points.Length;
        int[] corners = [.. Enumerable.Range(0, n).Where(i => _corner[i])];
        if (corners.Length > 0) return [.. corners.Select((from, k) => Run(from, k + 1 < corners.Length ? corners[k + 1] : corners[0] + n, loop: false))];
        // Where a straight ends an arc begins: a good place to start round a loop.
        int start = Math.Max(0, Array.IndexOf(_straight, true));
        return [Run(start, start + n, loop: true)];
    }

    private SmoothRun Run(int from, int to, bool loop)
    {
        int[] all = [.. Enumerable.Range(from, to - from + 1)];
        Vec2[] directions = [.. all.Select(i => loop ? Direction(i, int.MinValue, int.MaxValue) : Direction(i, from, to))];
        double length = all.SkipLast(1).Sum(i => _length[Wrap(i)]), since = 0;
        var nodes = ImmutableArray.CreateBuilder<int>();
        foreach (int i in all)
        {
            bool besideStraight = i > from && _straight[Wrap(i - 1)] || i < to && _straight[Wrap(i)];
            since += Math.Abs(_turn[Wrap(i)]) / NodeTurn;
            if (i == from || i == to || besideStraight || since >= 1)
            {
                nodes.Add(i - from);
                since = 0;
            }
            since += _length[Wrap(i)] / (NodeShare * length);
        }
        return new SmoothRun([.. all.Select(Point)], [.. directions], nodes.ToImmutable(), loop);
    }

    // Along a straight beside the place; else along the circle through it and a place on either side, at the end of a run through two on the one side.
    private Vec2 Direction(int i, int from, int to)
    {
        if (i < to && _straight[Wrap(i)]) return Chord(i).Unit;
        if (i > from && _straight[Wrap(i - 1)]) return Chord(i - 1).Unit;
        if (i == from)
        {
            int one = Away(i, 1, to), two = Away(one, 1, to);
            return two == one ? (Point(one) - Point(i)).Unit : PathArc.Through(Point(i), Point(one), Point(two)).Start;
        }
        if (i == to)
        {
            int one = Away(i, -1, from), two = Away(one, -1, from);
            return two == one ? (Point(i) - Point(one)).Unit : PathArc.Through(Point(two), Point(one), Point(i)).End;
        }
        Vec2 back = Point(i) - Point(Away(i, -1, from)), on = Point(Away(i, 1, to)) - Point(i);
        // The tangent of a circle parts the angle between two chords as their lengths.
        return back.Unit.Rotate(back.Length / (back.Length + on.Length) * PathArc.Angle(back, on));
    }

    // A place one window away: not over a straight or past the end of the run, and at least one step where there is one.
    private int Away(int i, int step, int end)
    {
        double way = 0, turned = 0;
        int at = i;
        while (at != end)
        {
            int chord = step > 0 ? at : at - 1;
            if (at != i && (_straight[Wrap(chord)] || way >= Window || turned >= WindowTurn)) break;
            way += _length[Wrap(chord)];
            at += step;
            turned += Math.Abs(_turn[Wrap(at)]);
        }
        return at;
    }

    private bool IsSharp(int i)
    {
        double turn = Math.Abs(_turn[i]);
        if (turn > Sharp) return true;
        return turn > Slight && turn > Unexplained * 0.5 * (Bend(i - 1) * _length[Wrap(i - 1)] + Bend(i + 1) * _length[i]);
    }

    // Curvature at a place, 1/mm.
    private double Bend(int i) => Math.Abs(_turn[Wrap(i)]) / (0.5 * (_length[Wrap(i - 1)] + _length[Wrap(i)]));

    private bool IsStraight(int i)
    {
        double turn = new[] { i, Wrap(i + 1) }.Where(k => !_corner[k]).Select(k => Math.Abs(_turn[k])).DefaultIfEmpty(0).Max();
        double rise = turn * _length[i] / 8, beside = Math.Min(_length[Wrap(i - 1)], _length[Wrap(i + 1)]);
        return _corner[i] && _corner[Wrap(i + 1)] || rise > StraightGap || rise > LongGap && _length[i] > Longer * beside;
    }

    private Vec2 Point(int i) => _points[Wrap(i)];

    private Vec2 Chord(int i) => Point(i + 1) - Point(i);

    private int Wrap(int i) => (i % _points.Length + _points.Length) % _points.Length;

    // Without places that stand on the straight between others, so that a straight edge is one chord.
    private static Vec2[] WithoutIdlePlaces(ImmutableArray<Vec2> loop)
    {
        int n = loop.Length, start = Enumerable.Range(0, n).MaxBy(i => Math.Abs(PathArc.Angle(loop[i] - loop[(i + n - 1) % n], loop[(i + 1) % n] - loop[i])));
        var kept = new List<Vec2> { loop[start] };
        int last = 0;
        for (int k = 1; k < n; k++)
        {
            Vec2 next = loop[(start + k + 1) % n];
            bool idle = Enumerable.Range(last + 1, k - last).All(m => Segment.Distance(loop[(start + m) % n], kept[^1], next) < Nothing);
            if (idle) continue;
            kept.Add(loop[(start + k) % n]);
            last = k;
        }
        return kept.Count >= 3 ? [.. kept] : [.. loop];
    }
}

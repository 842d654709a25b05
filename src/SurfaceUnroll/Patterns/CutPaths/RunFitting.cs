using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Patterns.CutPaths;

/// <summary>The fewest lines, arcs and biarcs that stay within a tolerance of a smooth run and do not break its direction.</summary>
/// <remarks>
/// Arcs meet at places of the run, in its direction there; a span between two such places is one line, one arc or one <see cref="Biarc"/>. Which spans to take is a
/// shortest path over the places, found by dynamic programming as in D. S. Meek and D. J. Walton, Approximation of discrete data by G1 arc splines, Computer-Aided
/// Design 24 (1992), 301–306, who lay the longest biarc that fits again and again. How far the longest reaches is found by doubling and halving.
/// </remarks>
internal sealed class RunFitting
{
    /// <summary>The greatest break of direction between two arcs of a smooth edge, radians. Over 20 mm to either side of it a path that goes straight on would miss by no more than the tolerance of a fit, 0.02 mm.</summary>
    public const double LargestBreak = 1e-3;

    // An arc of almost a whole turn has its ends too near to each other to be well determined, radians.
    private const double LargestTurn = 1.1 * Math.PI;

    // Counts for more segments than any path has.
    private const int Dear = 1_000_000;

    private readonly SmoothRun _run;
    private readonly double _tolerance;
    private readonly Vec2[] _points;
    private readonly int _nodes;

    private RunFitting(SmoothRun run, double tolerance)
    {
        (_run, _tolerance, _nodes) = (run, tolerance, run.Nodes.Length);
        _points = [.. run.Points];
    }

    /// <summary>The segments, end to end along the run.</summary>
    public static ImmutableArray<PathArc> Of(SmoothRun run, double tolerance) => new RunFitting(run, tolerance).Shortest();

    private ImmutableArray<PathArc> Shortest()
    {
        var count = new int[_nodes];
        var next = new int[_nodes];
        for (int i = _nodes - 2; i >= 0; i--)
        {
            // The line as it is, only where nothing else will do.
            (count[i], next[i]) = (count[i + 1] + Dear, i + 1);
            foreach (bool pair in new[] { false, true })
            {
                int reach = Reach(i, pair);
                for (int j = reach; j > i; j--)
                {
                    int total = count[j] + (pair ? 2 : 1);
                    if (total < count[i] && Span(i, j, pair) is not null) (count[i], next[i]) = (total, j);
                }
            }
        }
        var path = ImmutableArray.CreateBuilder<PathArc>();
        for (int i = 0; i < _nodes - 1; i = next[i]) path.AddRange(Span(i, next[i], false) ?? Span(i, next[i], true) ?? [.. Chords(_run.Nodes[i], _run.Nodes[i + 1])]);
        // A coarse line, that stands as it is to within the tolerance nowhere else than on its own chords, is not made better by arcs.
        return path.Count < _points.Length ? path.ToImmutable() : [.. Chords(0, _points.Length - 1)];
    }

    private int Reach(int i, bool pair)
    {
        int step = 1, good = i, bad = _nodes;
        while (good + step < _nodes && Span(i, good + step, pair) is not null)
        {
            good += step;
            step *= 2;
        }
        bad = Math.Min(bad, good + step);
        while (bad - good > 1)
        {
            int middle = (good + bad) / 2;
            if (Span(i, middle, pair) is null) bad = middle;
            else good = middle;
        }
        return good;
    }

    private ImmutableArray<PathArc>? Span(int i, int j, bool pair)
    {
        (int first, int last) = (_run.Nodes[i], _run.Nodes[j]);
        (Vec2 from, Vec2 to) = (_points[first], _points[last]);
        if (pair)
        {
            return Biarc.Between(from, _run.Directions[first], to, _run.Directions[last]) is ({ } a, { } b)
                && Math.Abs(a.Turn) <= LargestTurn && Math.Abs(b.Turn) <= LargestTurn && PathDeviation.Within(_points, first, last, a, b, _tolerance) ? [a, b] : null;
        }
        foreach (PathArc arc in Singles(first, last, from, to))
            if (Math.Abs(arc.Turn) <= LargestTurn && PathDeviation.Within(_points, first, last, arc, _tolerance)) return [arc];
        return null;
    }

    // A line, then an arc. At a corner any direction will do.
    private IEnumerable<PathArc> Singles(int first, int last, Vec2 from, Vec2 to)
    {
        bool freeStart = !_run.Loop && first == 0, freeEnd = !_run.Loop && last == _points.Length - 1;
        double leaving = PathArc.Angle(_run.Directions[first], to - from), arriving = PathArc.Angle(to - from, _run.Directions[last]);
        bool Follows(double angle, bool free) => free || Math.Abs(angle) <= 0.5 * LargestBreak;
        if (Follows(leaving, freeStart) && Follows(arriving, freeEnd)) yield return new PathArc(from, to, 0);
        if (freeStart && freeEnd)
        {
            if (last - first > 1) yield return PathArc.Through(from, _points[(first + last) / 2], to);
            yield break;
        }
        double half = freeStart ? arriving : freeEnd ? leaving : 0.5 * (leaving + arriving);
        if (Follows(half - leaving, freeStart) && Follows(half - arriving, freeEnd)) yield return new PathArc(from, to, Math.Tan(0.5 * half));
    }

    private IEnumerable<PathArc> Chords(int from, int to) => Enumerable.Range(from, to - from).Select(k => new PathArc(_points[k], _points[k + 1], 0));
}

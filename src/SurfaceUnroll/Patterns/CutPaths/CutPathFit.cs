using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Patterns.CutPaths;

/// <summary>A closed cut line as the fewest lines and arcs.</summary>
public static class CutPathFit
{
    /// <summary>Greatest distance between the exact cut line and its lines and arcs, either way, mm.</summary>
    public const double Tolerance = 0.02;

    // The dense cut line is drawn within this of the exact one, mm: the rest of the tolerance is for the fit.
    private const double Drawn = 0.005;

    private const double Fit = Tolerance - Drawn;

    // Starts round a loop without corners, of which the best is taken.
    private const int Starts = 4;

    /// <summary>The segments of a closed cut line, end to end, the last ending where the first begins.</summary>
    /// <param name="loop">Dense closed cut line, mm; the first place is not repeated.</param>
    public static ImmutableArray<PathArc> Of(ImmutableArray<Vec2> loop)
    {
        if (Circle(loop) is { } circle) return circle;
        ImmutableArray<SmoothRun> runs = CornerSplit.Of(loop);
        return runs is [{ Loop: true } round] ? Round(round) : [.. runs.SelectMany(run => RunFitting.Of(run, Fit))];
    }

    // Where arcs begin and end round a smooth loop is free.
    private static ImmutableArray<PathArc> Round(SmoothRun loop) =>
        Enumerable.Range(0, Starts).Select(k => RunFitting.Of(StartingAt(loop, k * (loop.Nodes.Length - 1) / Starts), Fit)).MinBy(path => path.Length);

    private static SmoothRun StartingAt(SmoothRun loop, int node)
    {
        int n = loop.Points.Length - 1, start = loop.Nodes[node];
        ImmutableArray<T> Turned<T>(ImmutableArray<T> around) => [.. Enumerable.Range(0, n + 1).Select(i => around[(start + i) % n])];
        ImmutableArray<int> nodes = [.. loop.Nodes.SkipLast(1).Select(i => (i - start + n) % n).Order(), n];
        return loop with { Points = Turned(loop.Points), Directions = Turned(loop.Directions), Nodes = nodes };
    }

    // Two half circles, where all of the line lies on one circle.
    private static ImmutableArray<PathArc>? Circle(ImmutableArray<Vec2> loop)
    {
        double area = Polygons.SignedArea(loop);
        if (loop.Length < 8 || area == 0) return null;
        Vec2 centre = Centroid(loop, area);
        double radius = loop.Average(p => (p - centre).Length);
        Vec2 start = centre + radius * (loop[0] - centre).Unit, opposite = centre + centre - start;
        for (int i = 0; i < loop.Length; i++)
        {
            Vec2 a = loop[i], b = loop[(i + 1) % loop.Length];
            if (Math.Abs((a - centre).Length - radius) > Fit || radius - Segment.Distance(centre, a, b) > Fit || Math.Sign((a - centre).Cross(b - centre)) != Math.Sign(area)) return null;
        }
        return [new PathArc(start, opposite, Math.Sign(area)), new PathArc(opposite, start, Math.Sign(area))];
    }

    // About the first place, so that a loop far from the origin loses no digits.
    private static Vec2 Centroid(ImmutableArray<Vec2> loop, double area)
    {
        Vec2 sum = Vec2.Zero, origin = loop[0];
        for (int i = 0; i < loop.Length; i++)
        {
            Vec2 a = loop[i] - origin, b = loop[(i + 1) % loop.Length] - origin;
            sum += a.Cross(b) * (a + b);
        }
        return origin + 1 / (6 * area) * sum;
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Curves;

namespace SurfaceUnroll.Lofting.Nearest;

/// <summary>The element lines that a moved edge was made for.</summary>
internal static class KnownLines
{
    /// <summary>Lines from left to right, of a mirrored sheet to its middle, the fixed edge as the front.</summary>
    /// <param name="edge">The fixed edge.</param>
    /// <param name="moved">The moved one.</param>
    /// <param name="stations">Its stations, before the move.</param>
    /// <param name="solution">Where they went, and which planes they lie in.</param>
    /// <param name="end">Coordinate of the last station.</param>
    public static ImmutableArray<Match> Of(FixedEdge edge, SpaceCurve moved, ImmutableArray<EdgeStation> stations, FreedomSolution solution, double end)
    {
        var curve = new Directrix(moved);
        double[] at = Coordinates(curve, moved, stations);
        at[^1] = end;
        (int first, int last) = (solution.Anchors[0], solution.Anchors[^1]);
        var lines = new List<Match> { new(0, 0) };
        if (first > 0) Add(0, at[first]);
        for (int i = first; i <= last; i++)
        {
            (double from, double to) = edge.Coordinates(solution.Stations.Turned[i]);
            Add(from, at[i]);
            Add(to, at[i]);
        }
        Add(end, at[last]);
        Add(end, end);
        return [.. lines];

        void Add(double x, double y)
        {
            Match before = lines[^1], line = new(Math.Max(x, before.Front), Math.Max(y, before.Rear));
            if (line != before) lines.Add(line);
        }
    }

    private static double[] Coordinates(Directrix curve, SpaceCurve moved, ImmutableArray<EdgeStation> stations)
    {
        var at = new double[stations.Length];
        double length = 0;
        for (int i = 1, piece = 0; i < stations.Length; i++)
        {
            if (!stations[i].StartsSpan) length += moved.PieceLengths[piece++];
            at[i] = curve.AtLength(length);
            // Past a corner the place is the same.
            if (stations[i].StartsSpan && curve.Joints.FirstOrDefault(x => x > at[i] + 1e-12) is > 0 and double next && curve.StandsStill(at[i], next)) at[i] = next;
        }
        return at;
    }
}

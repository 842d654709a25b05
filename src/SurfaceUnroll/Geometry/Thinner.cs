using System.Collections.Immutable;

namespace SurfaceUnroll.Geometry;

/// <summary>Leaves out places of a polyline.</summary>
public static class Thinner
{
    /// <summary>The first and the last place and as many between as keep every place within a distance of the line (Douglas and Peucker, Cartographica 10(2), 1973).</summary>
    /// <param name="path">At least one place, mm.</param>
    /// <param name="within">mm.</param>
    public static ImmutableArray<Vec2> Thinned(ImmutableArray<Vec2> path, double within)
    {
        if (path.Length < 3) return path;
        var kept = new bool[path.Length];
        kept[0] = kept[^1] = true;
        var spans = new Stack<(int From, int To)>([(0, path.Length - 1)]);
        while (spans.TryPop(out (int From, int To) span))
        {
            (int farthest, double distance) = (-1, within);
            for (int i = span.From + 1; i < span.To; i++)
            {
                double d = Segment.Distance(path[i], path[span.From], path[span.To]);
                if (d > distance) (farthest, distance) = (i, d);
            }
            if (farthest < 0) continue;
            kept[farthest] = true;
            spans.Push((span.From, farthest));
            spans.Push((farthest, span.To));
        }
        return [.. path.Where((_, i) => kept[i])];
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Drawings;

/// <summary>Crosses by which neighbouring sheets are laid on each other.</summary>
internal static class SeamMarks
{
    /// <summary>Two in the middle of each overlap between printed neighbours, clear of the corners where four tiles meet and of the drawing's words.</summary>
    /// <param name="drawing">As it lies on the paper.</param>
    /// <param name="tiles">Row by row.</param>
    /// <param name="columns">In a row.</param>
    /// <param name="overlap">mm.</param>
    public static IEnumerable<OverlapMark> Of(Drawing drawing, ImmutableArray<Tile> tiles, int columns, double overlap)
    {
        int count = 0;
        Box[] words = [.. drawing.Letterings.Select(text => TextOutline.Of(text).Bounds.Grow(0.5 * overlap))];
        bool Clear(Vec2 p) => !words.Any(w => w.Surrounds(p));
        for (int i = 0; i < tiles.Length; i++)
        {
            if (tiles[i].IsEmpty) continue;
            Box w = tiles[i].Window;
            if (tiles[i].Column + 1 < columns && !tiles[i + 1].IsEmpty)
            {
                double x = w.Max.X - 0.5 * overlap;
                foreach (double end in new[] { 1.0, 0.0 })
                    yield return new OverlapMark(Place(share => new Vec2(x, w.Min.Y + Math.Abs(end - share) * w.Height), Clear), Letter(count++));
            }
            if (i + columns < tiles.Length && !tiles[i + columns].IsEmpty)
            {
                double y = w.Min.Y + 0.5 * overlap;
                foreach (double end in new[] { 0.0, 1.0 })
                    yield return new OverlapMark(Place(share => new Vec2(w.Min.X + Math.Abs(end - share) * w.Width, y), Clear), Letter(count++));
            }
        }
    }

    // A quarter in from an end of the overlap, or the next best place that is clear.
    private static Vec2 Place(Func<double, Vec2> at, Func<Vec2, bool> clear)
    {
        double share = 0.25;
        foreach (double other in new[] { 0.25, 0.29, 0.21, 0.33, 0.17, 0.37 })
        {
            if (!clear(at(other))) continue;
            share = other;
            break;
        }
        return at(share);
    }

    // a … z, aa … : small letters, so that they are not taken for match marks.
    private static string Letter(int n) => (n >= 26 ? Letter(n / 26 - 1) : "") + (char)('a' + n % 26);
}

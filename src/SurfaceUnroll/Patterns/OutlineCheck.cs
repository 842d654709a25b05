using SurfaceUnroll.Flattening;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Patterns;

/// <summary>Checks that a blank can be cut from one piece.</summary>
public static class OutlineCheck
{
    /// <summary>True if a closed outline (first point not repeated) is a simple polygon of nonzero area.</summary>
    public static bool IsSimple(IReadOnlyCollection<Vec2> outline) => Polygons.IsSimple(outline);

    /// <summary>The last element line up to which the blank, taken from its left end, does not overlap itself; null if the whole does not.</summary>
    /// <param name="blank">The blank.</param>
    /// <param name="outline">Its whole outline.</param>
    public static int? FirstOverlap(Blank blank, IReadOnlyCollection<Vec2> outline)
    {
        if (IsSimple(outline)) return null;
        FlatLine[] rulings = [.. blank.FlatRulings];
        int good = 1, bad = blank.Flat.Length;
        while (bad - good > 1)
        {
            int mid = (good + bad) / 2;
            if (IsSimple(BlankOutline.Loop(rulings.Take(2 * mid + 1)))) good = mid; else bad = mid;
        }
        return good;
    }
}

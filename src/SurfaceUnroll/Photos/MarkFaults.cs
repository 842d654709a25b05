using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Photos;

/// <summary>Why taps and measures of marks do not belong together, where they do not contradict each other one by one.</summary>
internal static class MarkFaults
{
    /// <summary>Share to which right angles and ratios of the flat are held.</summary>
    public const double Slack = 0.01;

    // Of the extent: nearer than this to a line through others, a mark tells nothing of what lies beside it.
    private const double InLine = 0.03;

    // Of so many marks all pairs are tried for changed names.
    private const int MostTried = 12, MostNamed = 3;

    /// <summary>An error where no lens sees such marks so, a warning where no usual one does, otherwise null.</summary>
    /// <param name="marks">Marks.</param>
    /// <param name="places">Theirs, mm.</param>
    /// <param name="photo">Photo.</param>
    /// <param name="scale">What they tell; null where not even a homography sees them.</param>
    public static Notice? Of(MarkReference marks, Vec2[] places, GreyPhoto photo, PhotoScale? scale)
    {
        if (scale is null && (AreInLine(places) || AreInLine([.. marks.Taps])))
            return new Notice("photo-marks-in-line", Severity.Error, "marks", "Three of four marks lie on one line, or nearly so.", "Put marks to both sides of the edge, no three on one line.");
        bool never = scale is null || !PlausibleView.Explains(scale, PlausibleView.AnyLens, 1, Slack);
        if (!never && PlausibleView.Explains(scale!, PlausibleView.UsualLens, 1, Slack)) return null;
        (string measures, string one) = marks.IsTaped ? ("distances", "a distance") : ("places", "a place");
        return Changed(marks, photo) ?? new Notice("photo-marks-shape", never ? Severity.Error : Severity.Warning, "marks",
            $"The {measures} and the taps do not belong together: no camera sees such marks so{(never ? "" : ", unless with much zoom or where a part was cut out of the photo")}. Two marks may have changed names, or {one} is wrong.",
            $"Check the names of the taps, then measure the {measures} again.");
    }

    /// <summary>Marks that do not fit, but would if two had each other's names; null if no such two are found.</summary>
    public static Notice? Changed(MarkReference marks, GreyPhoto photo) => ChangedNames(marks, photo) is not { } names
        ? null
        : new Notice("photo-marks-shape", Severity.Error, "marks", $"The {(marks.IsTaped ? "distances" : "places")} and the taps do not belong together. They would if {names} had changed names.", "See which tap is which mark.");

    /// <summary>“A and B”, or more such pairs; null if there are none, or too many to be told.</summary>
    public static string? ChangedNames(MarkReference marks, GreyPhoto photo)
    {
        int n = marks.Marks.Length;
        if (n > MostTried) return null;
        string[] pairs = [.. from i in Enumerable.Range(0, n) from k in Enumerable.Range(i + 1, n - i - 1)
            let changed = marks with { Marks = marks.Marks.SetItem(i, marks.Marks[i] with { Tap = marks.Marks[k].Tap }).SetItem(k, marks.Marks[k] with { Tap = marks.Marks[i].Tap }) }
            where MarkScale.Explains(changed, photo)
            select $"{marks.Marks[i].Name} and {marks.Marks[k].Name}"];
        return pairs.Length is 0 or > MostNamed ? null : string.Join(", or ", pairs);
    }

    /// <summary>Distances of which two together are shorter than the third; null if there are none.</summary>
    public static Notice? Triangles(MarkReference marks)
    {
        int n = marks.Marks.Length;
        var between = new Dictionary<(int, int), TapedDistance>();
        foreach (TapedDistance d in marks.Distances) between[(Math.Min(d.From, d.To), Math.Max(d.From, d.To))] = d;
        List<TapedDistance>? common = null;
        TapedDistance[]? first = null;
        for (int i = 0; i < n; i++)
            for (int j = i + 1; j < n; j++)
                for (int k = j + 1; k < n && between.ContainsKey((i, j)); k++)
                {
                    if (!between.TryGetValue((i, k), out TapedDistance b) || !between.TryGetValue((j, k), out TapedDistance c)) continue;
                    TapedDistance[] three = [between[(i, j)], b, c];
                    // Four times the error of three distances: a slip, and no want of care.
                    if (2 * three.Max(d => d.Length) - three.Sum(d => d.Length) <= 4 * Math.Sqrt(3) * marks.Spread) continue;
                    first ??= three;
                    common = common is null ? [.. three] : [.. common.Intersect(three)];
                }
        if (first is null) return null;
        TapedDistance longest = first.MaxBy(d => d.Length);
        TapedDistance[] others = [.. first.Where(d => d != longest)];
        string Told(TapedDistance d) => $"{MarkNames.Between(marks, d)} ({MarkNames.Mm(d.Length)})";
        return new Notice("photo-distances-apart", Severity.Error, "marks", $"The distances make no figure: {Told(longest)} is longer than {Told(others[0])} and {Told(others[1])} together.",
            common is [var one] ? $"{MarkNames.Between(marks, one)} stands in every triangle that cannot be: measure it again, and see how it was typed." : "Measure these again, and see how they were typed.");
    }

    // All but one of them, or all, within a strip.
    private static bool AreInLine(Vec2[] places)
    {
        double extent = places.Max(p => places.Max(q => (p - q).Length));
        foreach (Vec2 a in places)
            foreach (Vec2 b in places)
                if ((b - a).Length > 0 && places.Count(p => Math.Abs((b - a).Unit.Cross(p - a)) < InLine * extent) >= places.Length - 1) return true;
        return false;
    }
}

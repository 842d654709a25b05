using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Drawings;

/// <summary>One opening, or those of a pattern: alike, and named alike but for a number at the end.</summary>
/// <param name="First">The first of them.</param>
/// <param name="Name">Its name; of a pattern without the number.</param>
/// <param name="Count">How many.</param>
public sealed record OpeningGroup(BlankOpening First, string Name, int Count)
{
    /// <summary>Size, with the count where there are more than one: <c>6 × Ø 5.5</c>.</summary>
    public string Size => Count > 1 ? $"{Count.ToString(CultureInfo.InvariantCulture)} × {First.Size}" : First.Size;

    /// <summary>The openings of a piece by groups, in the order of the first of each.</summary>
    public static ImmutableArray<OpeningGroup> Of(ImmutableArray<BlankOpening> openings) =>
    [
        .. openings.GroupBy(o => (Stem(o.Name), o.Size)).SelectMany(g => g.Key.Item1.Length > 0
            ? [new OpeningGroup(g.First(), g.Count() > 1 ? g.Key.Item1 : g.First().Name, g.Count())]
            : g.Select(o => new OpeningGroup(o, o.Name, 1))),
    ];

    // What stands before the number at the end; the whole name where there is none.
    private static string Stem(string name)
    {
        string stem = name.TrimEnd("0123456789".ToCharArray()).TrimEnd();
        return stem.Length == name.Length ? name : stem;
    }
}

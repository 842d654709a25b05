using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Drawings;

/// <summary>One opening, or those of a pattern: of one size, and named alike but for a number after a space.</summary>
/// <param name="First">The first of them.</param>
/// <param name="Name">Its name; of a pattern without the number.</param>
/// <param name="Count">How many.</param>
/// <param name="OnBlank">What they measure on the blank, where that is not what was asked for; else null.</param>
public sealed partial record OpeningGroup(BlankOpening First, string Name, int Count, string? OnBlank)
{
    /// <summary>Size, with the count where there are more than one: <c>6 × Ø 5.5</c>.</summary>
    public string Size => Count > 1 ? $"{Count.ToString(CultureInfo.InvariantCulture)} × {First.Size}" : First.Size;

    /// <summary>Size, and what it is on the blank where that differs: <c>Ø 60, oval on the blank, 60.0 × 64.3 mm</c>.</summary>
    public string Measures => OnBlank is null ? Size : $"{Size}, {OnBlank}";

    /// <summary>The openings of a piece by groups, in the order of the first of each.</summary>
    /// <param name="panel">The piece.</param>
    /// <param name="job">For what was asked for, and units.</param>
    public static ImmutableArray<OpeningGroup> Of(PanelDevelopment panel, Job job) =>
        [.. panel.Openings.GroupBy(o => (Stem(o.Name), o.Size)).Select(g => Group([.. g], g.Key.Item1, panel, job))];

    private static OpeningGroup Group(BlankOpening[] alike, string stem, PanelDevelopment panel, Job job) =>
        new(alike[0], alike.Length > 1 ? stem : alike[0].Name, alike.Length, OpeningExtents.OnBlank(alike, panel, job));

    // What stands before the number of a pattern; the whole name where there is none. “b2” is a name of its own and no second “b”.
    private static string Stem(string name) => Numbered().Match(name) is { Success: true } match ? match.Groups[1].Value : name;

    [GeneratedRegex(@"^(.*\S) [1-9][0-9]*$", RegexOptions.CultureInvariant)]
    private static partial Regex Numbered();
}

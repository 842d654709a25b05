using System.Globalization;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Jobs;

/// <summary>What the shop's machines and the material cannot do of a forming plan.</summary>
internal static class PlanNotices
{
    /// <summary>Warnings of one piece.</summary>
    /// <param name="job">Sheet, shop and units.</param>
    /// <param name="panel">With its plan.</param>
    /// <param name="where">Path of the panel in the job file.</param>
    public static IEnumerable<Notice> Of(Job job, PanelDevelopment panel, string where)
    {
        if (panel.Plan is not { } plan) yield break;
        string name = panel.Spec.Name;
        RollLine[] rolled = [.. plan.Rolls?.Lines ?? []];
        if (Lines(rolled, RollLimit.TooLong) is { } wide)
            yield return new Notice("roll-too-narrow", Severity.Warning, where, $"{wide} of “{name}” {Are(wide)} longer than the roll, which takes {Size(job, job.Shop.RollWidth!.Value)}.", "Split the panel, bend it over a pipe, or have it rolled elsewhere.");
        if (Lines(rolled, RollLimit.TooTightForRoll) is { } tight)
            yield return new Notice("roll-too-large", Severity.Warning, where, $"{tight} of “{name}” {Are(tight)} to be rolled tighter than the roll goes ({Size(job, job.Shop.RollMinRadius!.Value)}).", "Bend these over a pipe or in small steps on the brake.");
        if (Lines(rolled, RollLimit.TooTightForMaterial) is { } sharp)
            yield return new Notice("roll-below-minimum", Severity.Warning, where, $"{sharp} of “{name}” {Are(sharp)} to be rolled, at one end at least, below the smallest inside radius of the material, {Size(job, plan.Grain.MinimumRadius)}.", "At the tip of a fan dress it by hand over an edge; else give the curve a larger radius there, or take softer sheet.");
        if (plan.Bends.Where(b => b.IsTooLong).Select(b => Number(b.Number)).Distinct().ToArray() is { Length: > 0 } longer)
            yield return new Notice("brake-too-short", Severity.Warning, where, $"{(longer.Length == 1 ? "Bend" : "Bends")} {string.Join(", ", longer)} of “{name}” {(longer.Length == 1 ? "is" : "are")} longer than the brake, {Size(job, job.Shop.BrakeLength!.Value)}.", "Split the panel there, or have it bent elsewhere.");
        if (plan.Blank.IsTooThickToShear)
            yield return new Notice("shear-too-weak", Severity.Note, where, $"The sheet of “{name}” is thicker than the shear cuts, {Size(job, job.Shop.ShearThickness!.Value)}.", "Saw it, or have it cut by plasma, laser or water.");
    }

    // "Line 3", "Lines 3 to 7 and 9"; null if there are none.
    private static string? Lines(RollLine[] rolled, RollLimit limit)
    {
        var runs = new List<(int From, int To)>();
        foreach (int number in rolled.Where(l => l.Limits.Contains(limit)).Select(l => l.Number))
        {
            if (runs.Count > 0 && runs[^1].To == number - 1) runs[^1] = (runs[^1].From, number);
            else runs.Add((number, number));
        }
        if (runs.Count == 0) return null;
        string[] parts = [.. runs.Select(r => r.From == r.To ? Number(r.From) : $"{Number(r.From)} to {Number(r.To)}")];
        string list = parts.Length == 1 ? parts[0] : $"{string.Join(", ", parts[..^1])} and {parts[^1]}";
        return runs is [(var a, var b)] && a == b ? $"Line {list}" : $"Lines {list}";
    }

    private static string Are(string lines) => lines.StartsWith("Lines", StringComparison.Ordinal) ? "are" : "is";

    private static string Number(int n) => n.ToString(CultureInfo.InvariantCulture);

    private static string Size(Job job, double mm) => ShopLength.Print(mm, job.Units, 1);
}

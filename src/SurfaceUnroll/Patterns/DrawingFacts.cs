using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns;

/// <summary>What the pages say of a piece's bends, openings, allowances and joints, as name and value.</summary>
internal static class DrawingFacts
{
    /// <summary>Every one of them, in the order of the work: cut, bend, join.</summary>
    public static ImmutableArray<(string Name, string Value)> Of(PanelDevelopment panel, ImmutableArray<JointFit> joints, Job job) =>
    [
        .. OpeningGroup.Of(panel, job).Select(g => ($"{(g.Count > 1 ? "Openings" : "Opening")} {g.Name}", g.Measures)),
        .. panel.Allowances.Select(a => ($"Allowance {a.Edge}", JointWords.Allowance(a, panel, job.Units))),
        // The parts of a lip that a trim has parted are one bend to the brake.
        .. panel.Bends.Select(b => (BendWords.Heading(b), BendWords.Setting(b, job.Units))).Distinct(),
        .. joints.Select(j => ($"Joint {j.Label}", $"{JointWords.Edges(j)}: {JointWords.Kind(j, job.Units)}; {JointWords.Sentence(j, JointWords.Marks(j, [panel]), job.Units)}")),
    ];

    /// <summary>The same in a line, where it stands on a page of its own.</summary>
    public static (string Name, string Value) Summary(PanelDevelopment panel, ImmutableArray<JointFit> joints)
    {
        string[] parts = [.. new[] { (panel.Openings.Length, "opening"), (panel.Allowances.Length, "allowance"), (panel.Bends.Select(b => b.Number).Distinct().Count(), "bend"), (joints.Length, "joint") }
            .Where(p => p.Item1 > 0).Select(p => $"{p.Item1} {p.Item2}{(p.Item1 > 1 ? "s" : "")}")];
        return ("Bends and joints", $"{string.Join(", ", parts)}: see the last page");
    }
}

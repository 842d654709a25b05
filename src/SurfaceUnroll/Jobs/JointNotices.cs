using System.Collections.Immutable;
using SurfaceUnroll.Patterns.Allowances;
using SurfaceUnroll.Patterns.Joints;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Jobs;

/// <summary>What can be said of joints and allowances, in the words of the shop.</summary>
internal static class JointNotices
{
    // Edges whose lengths differ by more than this share are hardly meant to meet all along.
    private const double PartOnly = 0.1;

    /// <summary>An error where a joint names an edge that is not there.</summary>
    public static Notice NoEdge(EdgeName name, PanelDevelopment? panel, ImmutableArray<PanelInWork> panels, string where)
    {
        string mend = panel is null
            ? $"The panels are: {string.Join(", ", panels.Select(p => p.Panel.Spec.Name))}."
            : $"Its edges are: {string.Join(", ", panel.Mesh.Chains.Where(c => c.Vertices.Length > 1).Select(c => $"{panel.Spec.Name}/{c.Name}").Distinct())}.";
        return new Notice("joint-edge-absent", Severity.Error, where, panel is null ? $"There is no panel “{name.Panel}”." : $"“{name.Panel}” has no edge “{name.Edge}” that could be joined.", mend);
    }

    /// <summary>An error where gaps take all of a panel.</summary>
    public static Notice NothingLeft(PanelDevelopment panel, string where) => new(
        "gap-takes-all", Severity.Error, where, $"The gaps of its joints leave nothing of “{panel.Spec.Name}”.", "Make \"gap\" smaller: half of it is taken off each piece.");

    /// <summary>A warning where two joints name the same edges.</summary>
    public static Notice Twice(JointSpec spec, string first, string where) => new(
        "joint-twice", Severity.Warning, where,
        $"{spec.Edges[0]} and {spec.Edges[1]} are joined by {first} already, so that both pieces are cut for two joints.", "Leave one of them out.");

    /// <summary>A warning where an edge has an allowance already.</summary>
    public static Notice EdgeTwice(EdgeName edge, string label, string other, string where) => new(
        "edge-allowance-twice", Severity.Warning, where,
        $"Joint {label} asks for an allowance on {edge}, which has one from joint {other}; that one stands.", "Leave one of them out, or put it on the other piece.");

    /// <summary>An error where an allowance closes an opening.</summary>
    public static Notice OpeningClosed(PanelDevelopment panel, BlankOpening opening, string where) => new(
        "opening-closed", Severity.Error, where,
        $"The allowance round “{opening.Name}” of “{panel.Spec.Name}” is too wide for it: it would fill it, part it, or run into itself.", "Make the allowance narrower, or the opening larger.");

    /// <summary>What the fit of a joint says.</summary>
    public static IEnumerable<Notice> Of(Job job, JointFit fit, string where)
    {
        string edges = string.Join(" and ", fit.Mates.Select(m => m.Edge.ToString()));
        if (fit.Mates.Length == 2 && Math.Abs(fit.Difference) > JointCheck.Tolerance)
        {
            (JointMate longer, JointMate shorter) = fit.Difference > 0 ? (fit.Mates[1], fit.Mates[0]) : (fit.Mates[0], fit.Mates[1]);
            yield return new Notice(
                "joint-lengths-differ", Severity.Warning, where,
                $"Joint {fit.Label}: {longer.Edge} is {Size(job, longer.Length)} long and {shorter.Edge} {Size(job, shorter.Length)}, {Size(job, Math.Abs(fit.Difference))} apart. The edges part most {Place(job, fit)}.",
                Math.Abs(fit.Difference) > PartOnly * longer.Length
                    ? "Edges are joined whole: if the shorter one meets only part of the longer, measure that one as two curves, so that it has an edge for each part."
                    : "Let both follow one curve, or measure again there.");
        }
        else if (fit.Mates.Length == 2 && !fit.Fits)
        {
            yield return new Notice(
                "joint-gap", Severity.Warning, where,
                $"Joint {fit.Label}: {edges} are equally long, but do not lie on each other: {Size(job, fit.LargestGap)} apart {Place(job, fit)}.",
                "Let both follow one curve, check where the curves stand, and on which face each piece was measured (\"measured\").");
        }
    }

    /// <summary>What the cut line of a panel says.</summary>
    public static IEnumerable<Notice> Of(PanelDevelopment panel, string where, CutLine line)
    {
        foreach (string edge in line.OverPiece)
            yield return new Notice("allowance-on-piece", Severity.Warning, where, $"The allowance along {panel.Spec.Name}/{edge} would lie on the piece itself, so that part of it is missing on the blank.", "Make it narrower, put it on the other piece of the joint, or split the panel.");
        foreach ((string first, string second) in line.Meeting)
        {
            string which = first == second ? $"Parts of the allowance along {panel.Spec.Name}/{first} would lie on each other" : $"The allowances along {panel.Spec.Name}/{first} and {panel.Spec.Name}/{second} would lie on each other";
            yield return new Notice("allowances-meet", Severity.Warning, where, $"{which}, so that both cannot be had from one blank.", first == second ? "Make it narrower." : "Make one narrower, or put it on the other piece of the joint.");
        }
        if (line.LeftOver > 0)
            yield return new Notice("gap-parts-piece", Severity.Warning, where, $"The gaps of its joints cut “{panel.Spec.Name}” in {line.LeftOver + 1} parts; only the largest is kept.", "Make \"gap\" smaller: half of it is taken off each piece.");
        if (!line.Inner.IsEmpty)
            yield return new Notice("allowance-encloses", Severity.Warning, where, $"The allowances of “{panel.Spec.Name}” close round a gap of its outline.", "The gap is cut as a hole. Make an allowance narrower if the piece must stay open there.");
    }

    private static string Place(Job job, JointFit fit) =>
        $"{Size(job, fit.GapAt)} along {fit.Mates[0].Edge}, at x {Size(job, fit.GapPlace.X)}, y {Size(job, fit.GapPlace.Y)}, z {Size(job, fit.GapPlace.Z)}";

    private static string Size(Job job, double mm) => ShopLength.Print(mm, job.Units, 2);
}

using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Patterns.Allowances;
using SurfaceUnroll.Patterns.Joints;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Jobs;

/// <summary>What can be said of joints and allowances, in the words of the shop.</summary>
internal static class JointNotices
{
    // An angle that changes by more than this along a lip, radians, is told.
    private const double ChangingAngle = 2 * Math.PI / 180;

    /// <summary>An error where a joint names an edge that is not there.</summary>
    public static Notice NoEdge(EdgeName name, PanelDevelopment? panel, ImmutableArray<PanelInWork> panels, string where)
    {
        string mend = panel is null
            ? $"The panels are: {string.Join(", ", panels.Select(p => p.Panel.Spec.Name))}."
            : $"Its edges are: {string.Join(", ", panel.Mesh.Chains.Where(c => c.Vertices.Length > 1).Select(c => $"{panel.Spec.Name}/{c.Name}").Distinct())}.";
        return new Notice("joint-edge-absent", Severity.Error, where, panel is null ? $"There is no panel “{name.Panel}”." : $"“{name.Panel}” has no edge “{name.Edge}” that could be joined.", mend);
    }

    /// <summary>An error where the bend of a lip takes all of its width.</summary>
    public static Notice LipTooNarrow(Job job, JointSpec spec, string label, string where, LipLayout lip) => new(
        "lip-too-narrow", Severity.Error, where + ".width",
        $"The lip of joint {label} is {Size(job, spec.Width)} wide, and its bend alone takes {Size(job, lip.Bend.Length.Deduction)}.", "Make it wider, or its bend sharper.");

    /// <summary>An error where gaps take all of a panel.</summary>
    public static Notice NothingLeft(PanelDevelopment panel, string where) => new(
        "gap-takes-all", Severity.Error, where, $"The gaps of its joints leave nothing of “{panel.Spec.Name}”.", "Make \"gap\" smaller: half of it is taken off each piece.");

    /// <summary>A warning where an edge has an allowance already.</summary>
    public static Notice EdgeTwice(EdgeName edge, string label, string other, string where) => new(
        "edge-allowance-twice", Severity.Warning, where,
        $"Joint {label} asks for an allowance on {edge}, which has one from joint {other}; that one stands.", "Leave one of them out, or put it on the other piece.");

    /// <summary>A warning where an allowance closes an opening.</summary>
    public static Notice OpeningClosed(PanelDevelopment panel, BlankOpening opening, string where) => new(
        "opening-closed", Severity.Warning, where,
        $"The allowance round “{opening.Name}” of “{panel.Spec.Name}” would fill it; it is cut without.", "Make the allowance narrower, or the opening larger.");

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
                "Let both follow one curve, or measure again there.");
        }
        else if (fit.Mates.Length == 2 && fit.LargestGap > JointCheck.Tolerance)
        {
            yield return new Notice(
                "joint-gap", Severity.Warning, where,
                $"Joint {fit.Label}: {edges} are equally long, but do not lie on each other: {Size(job, fit.LargestGap)} apart {Place(job, fit)}.",
                "Let both follow one curve, check where the curves stand, and on which face each piece was measured (\"measured\").");
        }
        JointMate? carrier = fit.Mates.FirstOrDefault(m => m.Lip is not null);
        if (carrier?.Lip is not { } lip) yield break;
        if (fit.Spec.Lip!.Angle is null && fit.Dihedral is { } angles && angles.Greatest - angles.Least > ChangingAngle)
        {
            yield return new Notice(
                "lip-angle-changes", Severity.Note, where,
                $"The lip of joint {fit.Label} on {carrier.Edge} is bent through {SheetNotices.Degrees(Math.PI - angles.Greatest)} at one place and {SheetNotices.Degrees(Math.PI - angles.Least)} at another; the blank goes by the mean.",
                "Bend it to the mean and close it on the other piece while tacking.");
        }
        if (lip.MaxStretch > 0.001 || lip.MaxShrink > 0.001)
        {
            string asks = string.Join(" and ", new[] { lip.MaxStretch > 0.001 ? $"stretches by up to {SheetNotices.Percent(lip.MaxStretch)}" : "", lip.MaxShrink > 0.001 ? $"shrinks by up to {SheetNotices.Percent(lip.MaxShrink)}" : "" }.Where(s => s.Length > 0));
            string relief = lip.Notches > 0 ? $"{lip.Notches.ToString(CultureInfo.InvariantCulture)} relief notches are laid out." : "It is laid out without notches.";
            yield return new Notice(
                "lip-curved", Severity.Note, where, $"The free edge of the lip of joint {fit.Label} on {carrier.Edge} {asks} when it is bent along its curve. {relief}",
                lip.Notches > 0 ? "File their roots round, so that they cannot tear on." : "Work it over a former in small steps, or ask for notches (\"relief\").");
        }
    }

    /// <summary>What the cut line of a panel says.</summary>
    public static IEnumerable<Notice> Of(PanelDevelopment panel, string where, CutLine line)
    {
        foreach (string edge in line.OverPiece)
            yield return new Notice("allowance-on-piece", Severity.Warning, where, $"The allowance along {panel.Spec.Name}/{edge} would lie on the piece itself, so that part of it is missing on the blank.", "Make it narrower, put it on the other piece of the joint, or split the panel.");
        foreach ((string first, string second) in line.Meeting)
            yield return new Notice("allowances-meet", Severity.Warning, where, $"The allowances along {panel.Spec.Name}/{first} and {panel.Spec.Name}/{second} would lie on each other, so that both cannot be had from one blank.", "Make one narrower, or put it on the other piece of the joint.");
        if (!line.Inner.IsEmpty)
            yield return new Notice("allowance-encloses", Severity.Warning, where, $"The allowances of “{panel.Spec.Name}” close round a gap of its outline.", "The gap is cut as a hole. Make an allowance narrower if the piece must stay open there.");
    }

    private static string Place(Job job, JointFit fit) =>
        $"{Size(job, fit.GapAt)} along {fit.Mates[0].Edge}, at x {Size(job, fit.GapPlace.X)}, y {Size(job, fit.GapPlace.Y)}, z {Size(job, fit.GapPlace.Z)}";

    private static string Size(Job job, double mm) => ShopLength.Print(mm, job.Units, 2);
}

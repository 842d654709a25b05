using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Drawings;

/// <summary>Joints and allowances in the words of the shop.</summary>
public static class JointWords
{
    private const string FitLabel = "Fit";

    /// <summary>Label, edges and kind: <c>Joint A  cover/front – front plate/arch  lip 12 mm on front plate</c>.</summary>
    public static string Heading(JointFit joint, LengthUnit units) => $"Joint {joint.Label}  {Edges(joint)}  {Kind(joint, units)}";

    /// <summary>Joint and number: <c>A3</c>; with a dash where the name of the joint is more than a letter or two.</summary>
    public static string Label(MatchMark mark) =>
        mark.Joint + (mark.Joint.Length > 2 || mark.Joint.Any(char.IsDigit) ? "-" : "") + mark.Number.ToString(CultureInfo.InvariantCulture);

    /// <summary>The edges, in the order of the job.</summary>
    public static string Edges(JointFit joint) => string.Join(" – ", joint.Mates.Select(m => m.Edge.ToString()));

    /// <summary>How they meet: <c>lip 12 mm on front plate</c>.</summary>
    public static string Kind(JointFit joint, LengthUnit units)
    {
        string width = (joint.Spec.Auto ? "up to " : "") + ShopLength.Print(joint.Spec.Width, units);
        if (joint.Spec.Kind == JointKind.Butt) return joint.Spec.Width > 0 ? $"butt, gap {width}" : "butt";
        string on = joint.Mates.Length > 1 && joint.Spec.On < joint.Mates.Length ? $" on {joint.Mates[joint.Spec.On].Edge.Panel}" : "";
        return $"{Word(joint.Spec.Kind)} {width}{on}";
    }

    /// <summary>What else is to say of a joint, as label and value.</summary>
    /// <param name="joint">The joint.</param>
    /// <param name="marks">Its match marks on one edge.</param>
    /// <param name="units">Units of the job.</param>
    public static IEnumerable<(string Label, string Value)> Rows(JointFit joint, int marks, LengthUnit units)
    {
        if (!joint.Mates.IsEmpty) yield return (joint.Mates.Length > 1 ? "Lengths" : "Length", Lengths(joint, units));
        if (joint.Mates.Length > 1) yield return (FitLabel, Fit(joint, units));
        if (joint.Dihedral is { } between) yield return ("Between the sheets", BendWords.Degrees(between.Least, between.Greatest, 0.5 * (between.Least + between.Greatest)));
        foreach (JointMate mate in joint.Mates)
            if (mate.Lip is { } lip) yield return ("Edge of the lip", Lip(lip));
        yield return ("Match marks", marks == 0 ? "none" : marks.ToString(CultureInfo.InvariantCulture));
    }

    /// <summary>The same in one line.</summary>
    public static string Sentence(JointFit joint, int marks, LengthUnit units) =>
        string.Join("; ", Rows(joint, marks, units).Select(row => row.Label == FitLabel ? row.Value : $"{char.ToLowerInvariant(row.Label[0])}{row.Label[1..]} {row.Value}"));

    /// <summary>What stands on an edge: <c>lip, 11.2 mm, joint A, square corners</c>.</summary>
    /// <param name="allowance">The allowance.</param>
    /// <param name="panel">The piece that it is on.</param>
    /// <param name="units">Units of the job.</param>
    public static string Allowance(EdgeAllowance allowance, PanelDevelopment panel, LengthUnit units)
    {
        string width = !allowance.Steps.IsEmpty ? ErrorWords.Steps(allowance.Edge, allowance.Steps, panel, units) : allowance.Width < 0 ? $"{BendWords.FineLength(-allowance.Width, units)} taken off" : BendWords.FineLength(allowance.Width, units);
        string corners = allowance.Width > 0 ? $", {Word(allowance.Corners)} corners" : "";
        return $"{Word(allowance.Kind)}, {width}{(allowance.Joint.Length > 0 ? $", joint {allowance.Joint}" : "")}{corners}";
    }

    /// <summary>In one word.</summary>
    public static string Word(JointKind kind) => kind switch { JointKind.Butt => "butt", JointKind.Lap => "lap", JointKind.Lip => "lip", _ => "trim" };

    /// <summary>In one word.</summary>
    public static string Word(CornerStyle corners) => corners switch { CornerStyle.Mitre => "mitre", CornerStyle.Square => "square", _ => "round" };

    /// <summary>Number of match marks of a joint on one of its edges.</summary>
    public static int Marks(JointFit joint, IEnumerable<PanelDevelopment> panels) =>
        panels.SelectMany(p => p.Marks).Where(m => m.Joint == joint.Label).Select(m => m.Number).Distinct().Count();

    /// <summary>The joints that a panel has a part in.</summary>
    public static ImmutableArray<JointFit> Of(PanelDevelopment panel, ImmutableArray<JointFit> joints) =>
        [.. joints.Where(j => j.Mates.Any(m => m.Edge.Panel == panel.Spec.Name) || panel.Marks.Any(m => m.Joint == j.Label) || panel.Allowances.Any(a => a.Joint == j.Label))];

    private static string Lengths(JointFit joint, LengthUnit units)
    {
        string all = string.Join(" and ", joint.Mates.Select(m => ShopLength.Print(m.Length, units)));
        return joint.Mates.Length > 1 ? $"{all}, difference {BendWords.FineLength(joint.Difference, units)}" : all;
    }

    private static string Fit(JointFit joint, LengthUnit units) => joint.Fits
        ? "fits"
        : $"DOES NOT FIT: largest gap {BendWords.FineLength(joint.LargestGap, units)}, {ShopLength.Print(joint.GapAt, units)} along {joint.Mates[0].Edge}";

    private static string Lip(LipStrain lip)
    {
        string strain = (lip.MaxStretch, lip.MaxShrink) switch
        {
            ( < 5e-5, < 5e-5) => "straight",
            (_, < 5e-5) => $"stretches {Percent(lip.MaxStretch)}",
            ( < 5e-5, _) => $"shrinks {Percent(lip.MaxShrink)}",
            _ => $"stretches {Percent(lip.MaxStretch)}, shrinks {Percent(lip.MaxShrink)}",
        };
        return lip.Notches == 0 ? strain : $"{strain}, {lip.Notches.ToString(CultureInfo.InvariantCulture)} {(lip.Notches == 1 ? "notch" : "notches")}";
    }

    private static string Percent(double fraction) => (100 * fraction).ToString("0.##", CultureInfo.InvariantCulture) + " %";
}

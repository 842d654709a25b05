using System.Globalization;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Drawings;

/// <summary>What is said of a panel, as label and value, in the job's units.</summary>
public static class PanelRows
{
    // Below this, formed and flat length are one number to a tape measure.
    private const double SameLength = 0.05;

    private const double NoLength = 1e-6;

    /// <summary>The rows from the verdict's reasons to the bends, which come last since they are made last.</summary>
    public static IEnumerable<(string Label, string Value)> Of(PanelDevelopment panel, Job job)
    {
        LengthUnit units = job.Units;
        if (panel.Spec.Loft.Length == 2) yield return ("Twist of the sheet", Twist(panel.Twist));
        if (panel.Spec is { Elements: ElementMatching.BendOnly, Loft.Length: 2 }) yield return ("  if lines were evenly spaced", Twist(panel.EvenTwist));
        if (panel.Verdict != Verdict.BendsOnly)
        {
            StrainSummary strain = panel.JudgedStrain;
            string tips = panel.ClearOfTips is null ? "" : " away from the tips of the cuts";
            yield return ("Stretch, shrink", $"largest {Percent(strain.MaxStretch)}, {Percent(strain.MaxShrink)}{tips}; limit {Percent(panel.Limit)}");
        }
        if (panel is { Freedom: { } freedom, Piece: null or { Number: 1 } })
            foreach ((string, string) row in FreedomWords.Rows(freedom, panel.Verdict, panel.JudgedStrain, units)) yield return row;
        foreach (PieceChoice choice in panel.Piece is null or { Number: 1 } ? panel.Choices : [])
        {
            string pieces = choice.Pieces == 1 ? "  in one piece" : $"  in {choice.Pieces.ToString(CultureInfo.InvariantCulture)} pieces";
            string weld = choice.WeldLength > 0 ? $", {ShopLength.Print(choice.WeldLength, units)} of weld" : "";
            yield return (pieces, $"about {Percent(choice.MaxStretch)}, {Percent(choice.MaxShrink)}{weld}");
        }
        Box blank = Box.Around(panel.Cut);
        yield return ("Blank, across × along", $"{ShopLength.Print(blank.Width, units)} × {ShopLength.Print(blank.Height, units)}");
        yield return ("Area", AreaWords.Of(panel.FlatArea, units));
        foreach ((BlankEdge edge, string name) in panel.Edges.Zip(EdgeWords.Names(panel)))
        {
            if (edge.FormedLength < NoLength)
            {
                yield return ($"Edge, {name}", "none, the curves meet");
                continue;
            }
            (string flat, string formed) = (ShopLength.Print(edge.FlatLength, units), ShopLength.Print(edge.FormedLength, units));
            bool same = Math.Abs(edge.FormedLength - edge.FlatLength) < SameLength || formed == flat;
            yield return ($"Edge, {name}", same ? flat : $"{flat} (formed {formed})");
        }
        if (panel.Error is { Readings.IsEmpty: false } error)
        {
            foreach (EdgeError edge in error.Edges) yield return ($"Error, {edge.Name}", $"{ErrorWords.Band(edge, units)}: {ErrorWords.Leave(edge, panel, units)}");
            yield return ("Measure again first", ErrorWords.First(error.Readings[0]));
        }
        if (!panel.Elements.IsEmpty)
        {
            int drawn = panel.Elements.Count(e => e.Number > 0);
            string from = panel.Spec.Kind == "bent" ? "front" : "left";
            yield return ("Element lines", drawn == 0 ? "none drawn" : $"{drawn}, numbered from the {from}");
        }
        foreach (OpeningGroup group in OpeningGroup.Of(panel, job))
            yield return ($"{(group.Count > 1 ? "Openings" : "Opening")}, {group.Name}", group.Measures);
        foreach (EdgeAllowance allowance in panel.Allowances) yield return ($"Allowance, {allowance.Edge}", JointWords.Allowance(allowance, panel, units));
        // The parts of a lip that a trim has parted are one bend to the brake.
        foreach ((string, string) row in panel.Bends.Select(b => (BendWords.Heading(b), BendWords.Setting(b, units))).Distinct())
            yield return row;
    }

    private static string Twist(TwistSummary twist) => $"largest {Degrees(twist.Max)}, mean {Degrees(twist.Mean)}";

    /// <summary>An angle to a thousandth of a degree.</summary>
    /// <param name="radians">The angle.</param>
    public static string Degrees(double radians)
    {
        double degrees = radians * 180 / Math.PI;
        return (degrees is > 0 and < 0.001 ? "under 0.001" : degrees.ToString("0.###", CultureInfo.InvariantCulture)) + "°";
    }

    private static string Percent(double fraction) => (100 * fraction).ToString("0.##", CultureInfo.InvariantCulture) + " %";
}

using System.Globalization;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Cli;

/// <summary>What is said of a panel, as label and value, in the job's units.</summary>
internal static class PanelRows
{
    // Below this, formed and flat length are one number to a tape measure.
    private const double SameLength = 0.05;

    private const double NoLength = 1e-6;

    /// <summary>The rows from the verdict's reasons to the bends, which come last since they are made last.</summary>
    public static IEnumerable<(string Label, string Value)> Of(PanelDevelopment panel, LengthUnit units)
    {
        if (panel.Spec.Loft.Length == 2) yield return ("Twist of the sheet", Twist(panel.Twist));
        if (panel.Spec is { Elements: ElementMatching.BendOnly, Loft.Length: 2 }) yield return ("  if lines were evenly spaced", Twist(panel.EvenTwist));
        if (panel.Verdict != Verdict.BendsOnly)
        {
            StrainSummary strain = panel.JudgedStrain;
            string tips = panel.ClearOfTips is null ? "" : " away from the tips of the cuts";
            yield return ("Stretch, shrink", $"largest {Percent(strain.MaxStretch)}, {Percent(strain.MaxShrink)}{tips}; limit {Percent(panel.Limit)}");
        }
        foreach (PieceChoice choice in panel.Piece is null or { Number: 1 } ? panel.Choices : [])
        {
            string pieces = choice.Pieces == 1 ? "  in one piece" : $"  in {choice.Pieces.ToString(CultureInfo.InvariantCulture)} pieces";
            string weld = choice.WeldLength > 0 ? $", {ShopLength.Print(choice.WeldLength, units)} of weld" : "";
            yield return (pieces, $"about {Percent(choice.MaxStretch)}, {Percent(choice.MaxShrink)}{weld}");
        }
        Box blank = Box.Around(panel.Cut);
        yield return ("Blank, across × along", $"{ShopLength.Print(blank.Width, units)} × {ShopLength.Print(blank.Height, units)}");
        yield return ("Area", Area(panel.FlatArea, units));
        foreach (BlankEdge edge in panel.Edges)
        {
            if (edge.FormedLength < NoLength)
            {
                yield return ($"Edge, {edge.Name}", "none, the curves meet");
                continue;
            }
            string formed = Math.Abs(edge.FormedLength - edge.FlatLength) < SameLength
                ? "" : $" (formed {ShopLength.Print(edge.FormedLength, units)})";
            yield return ($"Edge, {edge.Name}", ShopLength.Print(edge.FlatLength, units) + formed);
        }
        if (!panel.Elements.IsEmpty)
        {
            int drawn = panel.Elements.Count(e => e.Number > 0);
            string from = panel.Spec.Kind == "bent" ? "front" : "left";
            yield return ("Element lines", drawn == 0 ? "none drawn" : $"{drawn}, numbered from the {from}");
        }
        foreach (OpeningGroup group in OpeningGroup.Of(panel.Openings))
            yield return ($"{(group.Count > 1 ? "Openings" : "Opening")}, {group.Name}", group.Size);
        foreach (EdgeAllowance allowance in panel.Allowances) yield return ($"Allowance, {allowance.Edge}", JointWords.Allowance(allowance, units));
        // The parts of a lip that a trim has parted are one bend to the brake.
        foreach ((string, string) row in panel.Bends.Select(b => ($"Bend {BendWords.Label(b)}{(b.Lip is null ? "" : $", lip {b.Lip}")}", BendWords.Setting(b, units))).Distinct())
            yield return row;
    }

    private static string Twist(TwistSummary twist) => $"largest {Degrees(twist.Max)}, mean {Degrees(twist.Mean)}";

    private static string Degrees(double radians)
    {
        double degrees = radians * 180 / Math.PI;
        return (degrees is > 0 and < 0.001 ? "under 0.001" : degrees.ToString("0.###", CultureInfo.InvariantCulture)) + "°";
    }

    private static string Percent(double fraction) => (100 * fraction).ToString("0.##", CultureInfo.InvariantCulture) + " %";

    private static string Area(double mm2, LengthUnit units)
    {
        const double inch2 = ShopLength.MillimetresPerInch * ShopLength.MillimetresPerInch;
        return (units, mm2) switch
        {
            (LengthUnit.Inch, _) => (mm2 / inch2).ToString("0.#", CultureInfo.InvariantCulture) + " sq in",
            (_, < 1e4) => (mm2 / 1e2).ToString("0.##", CultureInfo.InvariantCulture) + " cm²",
            _ => (mm2 / 1e6).ToString("0.####", CultureInfo.InvariantCulture) + " m²",
        };
    }
}

using System.Globalization;
using SurfaceUnroll.Fitness;
using SurfaceUnroll.Forming;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Lofting;
using SurfaceUnroll.Patterns;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Jobs;

/// <summary>What can be wrong with a sheet or its blank, in the words of the shop.</summary>
internal static class SheetNotices
{
    // Inside radius over thickness below which the middle surface is not the fibre that keeps its length (DIN 6935: k = 1 only for r/s > 5).
    private const double SharpBend = 5;

    /// <summary>An error where the sheet turns inside out, so that its element lines cross; null where it does not.</summary>
    public static Notice? Crossing(Job job, PanelSpec spec, string where, RuledSheet measured)
    {
        double front = 0, rear = 0;
        foreach (Strip strip in measured.Strips)
        {
            Station? worst = new[] { strip.Left, strip.Middle, strip.Right }.Where(s => s.Twist > Math.PI / 2).Cast<Station?>().FirstOrDefault();
            if (worst is not null)
            {
                return new Notice(
                    "element-lines-cross", Severity.Error, where,
                    $"The element lines of “{spec.Name}” cross on the sheet: {Place(job, front, rear)} the sheet would turn inside out ({Degrees(worst.Value.Twist)} of twist along one line).",
                    $"Check that “{spec.Loft[0]}” and “{spec.Loft[^1]}” stand where they should (lean, turn, roll, origin) and run the same way; or split the panel there with a curve in between.");
            }
            front += (strip.Right.Front - strip.Left.Front).Length;
            rear += (strip.Right.Rear - strip.Left.Rear).Length;
        }
        return null;
    }

    /// <summary>An error where a bend is tighter than the sheet is thick, so that the middle surface runs backwards.</summary>
    public static Notice? Backward(Job job, PanelSpec spec, string where, RuledSheet measured, RuledSheet middle)
    {
        double front = 0, rear = 0, frontRun = 0, rearRun = 0;
        for (int i = 0; i < measured.Strips.Length; i++)
        {
            Strip was = measured.Strips[i], now = middle.Strips[i];
            Vec3 frontStep = was.Right.Front - was.Left.Front, rearStep = was.Right.Rear - was.Left.Rear;
            frontRun = was.FrontStill ? 0 : Run(frontRun, frontStep, now.Right.Front - now.Left.Front);
            rearRun = was.RearStill ? 0 : Run(rearRun, rearStep, now.Right.Rear - now.Left.Rear);
            if (Math.Max(frontRun, rearRun) > RuledSheet.Tip)
            {
                return new Notice(
                    "bend-tighter-than-sheet", Severity.Error, where,
                    $"“{spec.Name}” bends more tightly than half the sheet's thickness {Place(job, front, rear)}.",
                    OfScan(job, spec) + "Measure a larger radius there, use thinner sheet, or give the curves at the middle of the sheet (\"measured\": \"middle\").");
            }
            front += frontStep.Length;
            rear += rearStep.Length;
        }
        return null;

        // How far it runs backward already, before or after it is moved to the middle.
        static double Run(double before, Vec3 was, Vec3 now) => was.Dot(now) < 0 ? before + Math.Max(was.Length, now.Length) : 0;
    }

    // A curve that follows the scatter of a scan bends to and fro.
    private static string OfScan(Job job, PanelSpec spec)
    {
        string[] sections = [.. job.Curves.Where(c => c.Spec is SectionSpec && spec.CurveNames.Contains(c.Name)).Select(c => $"“{c.Name}”")];
        return sections.Length == 0 ? "" : $"If the scan of {string.Join(" and ", sections)} is rougher than its \"noise\" says, the curve follows the scatter: give a larger \"noise\". Else: ";
    }

    /// <summary>An error where the blank overlaps itself, with the place to split; null where it can be cut in one piece.</summary>
    public static Notice? Overlap(Job job, PanelSpec spec, string where, Blank blank, IReadOnlyCollection<Vec2> cut)
    {
        if (OutlineCheck.FirstOverlap(blank, cut) is not { } line) return null;
        Strip[] before = [.. blank.Sheet.Strips.Take(line)];
        double front = before.Sum(s => (s.Right.Front - s.Left.Front).Length), rear = before.Sum(s => (s.Right.Rear - s.Left.Rear).Length);
        return new Notice(
            "blank-overlaps-itself", Severity.Error, where,
            $"“{spec.Name}” laid flat would lie over itself, so it cannot be cut from one piece.",
            $"Split it into two panels no later than {Place(job, front, rear)}: end both curves there and start a second pair of curves from the same places.");
    }

    /// <summary>An error where a mesh laid flat lies over itself.</summary>
    public static Notice MeshOverlap(PanelSpec spec, string where) => new(
        "blank-overlaps-itself", Severity.Error, where,
        $"“{spec.Name}” laid flat would lie over itself, so it cannot be cut from one piece.",
        "Cut the mesh into two or more along lines of your choice and give each as a panel of its own.");

    /// <summary>An error where a stretched sheet laid flat lies over itself.</summary>
    public static Notice GridOverlap(PanelSpec spec, string where) => new(
        "blank-overlaps-itself", Severity.Error, where,
        $"“{spec.Name}” laid flat would lie over itself, so it cannot be cut from one piece.",
        $"Split it: \"pieces\": {(spec.Pieces + 1).ToString(CultureInfo.InvariantCulture)}.");

    /// <summary>An error where the curves of a sheet meet or cross so that it is not one surface.</summary>
    public static Notice Folded(PanelSpec spec, string where) => new(
        "sheet-not-one-surface", Severity.Error, where,
        $"The curves of “{spec.Name}” meet or cross so that the sheet between them is not one surface.",
        "Check where the curves stand (lean, turn, roll, origin); curves of one sheet may meet at their ends only.");

    /// <summary>An error where a relief cut does not start and end on the sheet.</summary>
    public static Notice SlitTooDeep(Job job, PanelSpec spec, string where, SheetGrid grid)
    {
        IEnumerable<string> sizes = SheetGrid.EdgeNames.Select(edge =>
        {
            (double length, Func<double, double> reach) = SlitSearch.Measure(grid, edge);
            return $"{edge}: {ShopLength.Print(length, job.Units)} long, {ShopLength.Print(reach(0.5 * length), job.Units)} deep at its middle";
        });
        return new Notice(
            "slit-off-the-sheet", Severity.Error, where + ".slits",
            $"A relief cut of “{spec.Name}” does not start on its edge or runs through to the far side. The edges are, {string.Join("; ", sizes)}.",
            "Give \"at\" between the two ends of the edge and a \"depth\" short of the far side.");
    }

    /// <summary>An error where two relief cuts meet, so that metal would fall out.</summary>
    public static Notice SlitsMeet(PanelSpec spec, string where) => new(
        "slits-meet", Severity.Error, where + ".slits",
        $"Two relief cuts of “{spec.Name}” meet, or run in from the same place, so that a piece would fall out.",
        "Move one of them, or make it shorter.");

    /// <summary>Warnings and notes about a sheet that can be laid out.</summary>
    public static IEnumerable<Notice> Advice(Job job, string where, PanelDevelopment panel)
    {
        Material material = job.Sheet.Metal;
        bool known = material.IsOwn || Materials.Of(job.Sheet.Material).Known;
        StrainSummary strain = panel.JudgedStrain;
        double worst = Math.Max(strain.MaxStretch, strain.MaxShrink);
        string asks = $"{Percent(strain.MaxStretch)} of stretch and {Percent(strain.MaxShrink)} of shrink";
        string limit = $"{Percent(panel.Limit)}, the uniform elongation of {material.Name}{(known ? "" : " (taken because the job's material is not in the table)")}";
        switch (panel.Verdict)
        {
            case Verdict.PastTheLimit:
                yield return new Notice(
                    "past-the-limit", Severity.Warning, where,
                    $"“{panel.Spec.Name}” cannot be formed from one blank without tearing or buckling: even the best blank asks for {asks} at the worst places, and the limit is {limit}.",
                    PiecesAdvice(panel) + "Or cut relief slits (\"slits\": \"auto\"), add a curve in between, or change a profile.");
                break;
            case Verdict.NeedsStretching when worst > 0.5 * panel.Limit:
                yield return new Notice(
                    "strain-near-limit", Severity.Warning, where,
                    $"“{panel.Spec.Name}” asks for {asks} at the worst places, more than half of {limit}.",
                    PiecesAdvice(panel) + "Work in small steps, soften the sheet between passes where the material allows it, and try the worst place on a scrap.");
                break;
            case Verdict.NeedsStretching:
                yield return new Notice(
                    "sheet-needs-stretching", Severity.Warning, where,
                    $"“{panel.Spec.Name}” cannot be made by bending only: the best blank asks for {asks} at the worst places.",
                    "The strain page of the pattern shows where, and which way to work.");
                break;
            default:
                break;
        }
        if (panel.Unheld is { } free)
        {
            yield return new Notice(
                "held-edges-cost", Severity.Note, where,
                $"Holding {string.Join(" and ", panel.Spec.Hold)} of “{panel.Spec.Name}” at true length takes {asks}, and {Percent(panel.Strain.Energy / free.Energy - 1)} more forming work in all; without it the best blank would ask for {Percent(free.MaxStretch)} and {Percent(free.MaxShrink)}.",
                "Leave out \"hold\" where an edge may be trimmed to fit.");
        }
        foreach (SlitOpening slit in panel.Slits)
        {
            string place = $"the relief cut at {ShopLength.Print(slit.At, job.Units)} along the {slit.Edge} edge of “{panel.Spec.Name}”, {ShopLength.Print(slit.Depth, job.Units)} deep,";
            yield return slit.Width >= 0
                ? new Notice("slit-opens", Severity.Note, where + ".slits", $"On the blank {place} is {ShopLength.Print(slit.Width, job.Units, 2)} wide at the edge; it closes when the part is formed.", "Drill a small hole at its tip so that it cannot tear on.")
                : new Notice(
                    "slit-overlaps", Severity.Warning, where + ".slits",
                    $"The two sides of {place} would overlap by {ShopLength.Print(-slit.Width, job.Units, 2)} on the blank: the part opens there when it is formed. It is cut along the middle of the overlap.",
                    $"Weld in a gusset {ShopLength.Print(-slit.Width, job.Units, 2)} wide at the edge, running out to nothing at the tip; or leave this cut out.");
        }
        ElementLine? line = panel.Elements.MinBy(e => Sharpness(job, e));
        if (line is not null && Sharpness(job, line) < SharpBend)
        {
            yield return new Notice(
                "sharp-bend", Severity.Warning, where,
                $"“{panel.Spec.Name}” bends to an inside radius of less than {SharpBend.ToString(CultureInfo.InvariantCulture)} times the thickness {Place(job, line.FrontLength, line.RearLength)}; the blank is laid out on the middle of the sheet and comes out slightly long for so sharp a bend.",
                "Try the bend on a scrap of the same sheet first, or leave metal to trim.");
        }
    }

    // The fewest pieces that stay within half of the limit, or else the limit.
    private static string PiecesAdvice(PanelDevelopment panel)
    {
        foreach (double share in new[] { 0.5, 1 })
            foreach (PieceChoice choice in panel.Choices.Where(c => c.Pieces > 1))
                if (Math.Max(choice.MaxStretch, choice.MaxShrink) <= share * panel.Limit)
                    return $"Split into {choice.Pieces.ToString(CultureInfo.InvariantCulture)} pieces (\"pieces\": {choice.Pieces.ToString(CultureInfo.InvariantCulture)}) it asks for {Percent(choice.MaxStretch)} and {Percent(choice.MaxShrink)}. ";
        return "";
    }

    // By the gentler end: near the tip of a fan every sheet bends sharply, over a few millimetres that no one rolls.
    private static double Sharpness(Job job, ElementLine e) => job.Sheet.Thickness > 0
        ? (Math.Max(e.BendRadiusFront, e.BendRadiusRear) - 0.5 * job.Sheet.Thickness) / job.Sheet.Thickness
        : double.PositiveInfinity;

    private static string Place(Job job, double front, double rear) =>
        $"at {ShopLength.Print(front, job.Units)} from the left end of the front edge and {ShopLength.Print(rear, job.Units)} from the left end of the rear edge";

    /// <summary>An angle to a tenth of a degree.</summary>
    internal static string Degrees(double radians) => (radians * 180 / Math.PI).ToString("0.#", CultureInfo.InvariantCulture) + "°";

    /// <summary>A strain to a tenth of a percent.</summary>
    internal static string Percent(double fraction) => (100 * fraction).ToString("0.0", CultureInfo.InvariantCulture) + " %";
}

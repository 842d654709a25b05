using System.Globalization;
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
        double front = 0, rear = 0;
        for (int i = 0; i < measured.Strips.Length; i++)
        {
            Strip was = measured.Strips[i], now = middle.Strips[i];
            Vec3 frontStep = was.Right.Front - was.Left.Front, rearStep = was.Right.Rear - was.Left.Rear;
            bool backward = (!was.FrontStill && frontStep.Dot(now.Right.Front - now.Left.Front) < 0)
                || (!was.RearStill && rearStep.Dot(now.Right.Rear - now.Left.Rear) < 0);
            if (backward)
            {
                return new Notice(
                    "bend-tighter-than-sheet", Severity.Error, where,
                    $"“{spec.Name}” bends more tightly than half the sheet's thickness {Place(job, front, rear)}.",
                    "Measure a larger radius there, use thinner sheet, or give the curves at the middle of the sheet (\"measured\": \"middle\").");
            }
            front += frontStep.Length;
            rear += rearStep.Length;
        }
        return null;
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

    /// <summary>Warnings and notes about a sheet that can be laid out.</summary>
    public static IEnumerable<Notice> Advice(Job job, string where, PanelDevelopment panel)
    {
        if (panel.Verdict != Verdict.BendsOnly)
        {
            yield return new Notice(
                "sheet-needs-stretching", Severity.Warning, where,
                $"“{panel.Spec.Name}” cannot be made by bending only: its element lines twist by up to {Degrees(panel.Twist.Max)}, and about {Percent(panel.Strain.MaxShrink)} must be shrunk out of the middle of the worst line (or stretched into its ends). The pattern is laid out strip by strip with both edges at their true length; it is a start for stretching into place, not an exact blank.",
                "Leave metal to trim, or change a profile so that it can bend: see the twist along the element lines for where.");
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

    // By the gentler end: near the tip of a fan every sheet bends sharply, over a few millimetres that no one rolls.
    private static double Sharpness(Job job, ElementLine e) => job.Sheet.Thickness > 0
        ? (Math.Max(e.BendRadiusFront, e.BendRadiusRear) - 0.5 * job.Sheet.Thickness) / job.Sheet.Thickness
        : double.PositiveInfinity;

    private static string Place(Job job, double front, double rear) =>
        $"at {ShopLength.Print(front, job.Units)} from the left end of the front edge and {ShopLength.Print(rear, job.Units)} from the left end of the rear edge";

    private static string Degrees(double radians) => (radians * 180 / Math.PI).ToString("0.#", CultureInfo.InvariantCulture) + "°";

    private static string Percent(double fraction) => (100 * fraction).ToString("0.0", CultureInfo.InvariantCulture) + " %";
}

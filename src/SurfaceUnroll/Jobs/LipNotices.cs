using System.Globalization;
using SurfaceUnroll.Patterns.Joints;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Jobs;

/// <summary>What can be said of lips, in the words of the shop.</summary>
internal static class LipNotices
{
    private const double Degree = Math.PI / 180;

    // An angle that changes by more than this along a lip, or differs by more from the one that is asked for, is told.
    private const double TellingAngle = 2 * Degree;

    // A sheet that runs on as straight as this has no flange to bend; past the other, its bend would stand too far inside the edge where both faces, run on, meet.
    private const double LeastBend = 3 * Degree, GreatestBend = 160 * Degree;

    /// <summary>Errors where a lip cannot be had.</summary>
    public static IEnumerable<Notice> Faults(Job job, JointSpec spec, string label, string where, IReadOnlyCollection<LipLayout> lips)
    {
        if (lips.Count == 0) yield break;
        (double angle, double greatest) = (lips.Min(l => l.Bend.Angle), lips.Max(l => l.Bend.Angle));
        if (angle < LeastBend)
        {
            yield return new Notice(
                "lip-no-bend", Severity.Error, where,
                $"The lip of joint {label} would be bent through {SheetNotices.Degrees(angle)} only: both pieces run on straight into each other there.", "Make the joint a \"lap\", or give the lip an \"angle\".");
            yield break;
        }
        if (greatest > GreatestBend && lips.Any(l => l.Along is not null))
        {
            yield return new Notice(
                "lip-closed", Severity.Error, where,
                $"The lip of joint {label} would be bent through {SheetNotices.Degrees(greatest)}: folded back on its own piece that is a hem, and no lip.", $"Give it an \"angle\" of {SheetNotices.Degrees(GreatestBend)} or less.");
            yield break;
        }
        LipLayout narrow = lips.MinBy(l => l.Flange)!, tight = lips.MinBy(l => l.Widest)!;
        if (narrow.Flange <= 0)
        {
            yield return new Notice(
                "lip-too-narrow", Severity.Error, where + ".width",
                $"The lip of joint {label} is {Size(job, spec.Width)} wide, and its bend alone takes {Size(job, narrow.Bend.Length.Setback)} of that.", "Make it wider, or its bend sharper.");
        }
        if (spec.Width > tight.Widest)
        {
            yield return new Notice(
                "lip-too-wide", Severity.Error, where + ".width",
                $"The lip of joint {label} is {Size(job, spec.Width)} wide, more than the edge, which curves inward, leaves room for on the blank.", $"Make it {Size(job, Math.Floor(10 * tight.Widest) / 10)} wide or less.");
        }
    }

    /// <summary>What a lip asks of the shop.</summary>
    public static IEnumerable<Notice> Of(Job job, JointFit fit, IReadOnlyCollection<LipLayout> lips, string where)
    {
        if (fit.Mates.FirstOrDefault(m => m.Lip is not null) is not { Lip: { } lip } carrier) yield break;
        LipAngles[] along = [.. lips.Select(l => l.Along).OfType<LipAngles>()];
        if (along.Length > 0)
        {
            (double least, double mean, double greatest) = (along.Min(a => a.Least), along.Average(a => a.Mean), along.Max(a => a.Greatest));
            if (fit.Spec.Lip!.Angle is { } asked && Math.Abs(asked - mean) > TellingAngle)
            {
                yield return new Notice(
                    "lip-angle-differs", Severity.Warning, where,
                    $"The lip of joint {fit.Label} on {carrier.Edge} is asked to be bent through {SheetNotices.Degrees(asked)}; to lie along the other piece it would be {SheetNotices.Degrees(mean)}.",
                    "Leave \"angle\" out, so that it follows the other piece; or check how the curves stand.");
            }
            else if (greatest - least > TellingAngle)
            {
                yield return new Notice(
                    "lip-angle-changes", Severity.Note, where,
                    $"To lie along the other piece the lip of joint {fit.Label} on {carrier.Edge} is bent through {SheetNotices.Degrees(least)} at one place and {SheetNotices.Degrees(greatest)} at another; the blank goes by {(fit.Spec.Lip!.Angle is null ? "the mean" : "the angle that is asked for")}.",
                    fit.Spec.Lip!.Angle is null ? "Bend it to the mean and close it on the other piece while tacking." : "Close it on the other piece while tacking.");
            }
        }
        if (lip.MaxStretch <= 0.001 && lip.MaxShrink <= 0.001) yield break;
        double bears = job.Sheet.Metal.UniformElongation;
        bool without = fit.Spec.Lip!.Relief == LipRelief.None, notched = !without && lip.Notches > 0, torn = without && lip.MaxStretch > bears;
        string asks = string.Join(" and ", new[] { lip.MaxStretch > 0.001 ? $"stretches by up to {SheetNotices.Percent(lip.MaxStretch)}" : "", lip.MaxShrink > 0.001 ? $"shrinks by up to {SheetNotices.Percent(lip.MaxShrink)}" : "" }.Where(s => s.Length > 0));
        string relief = notched ? (lip.Notches == 1 ? "One relief notch is laid out." : $"{lip.Notches.ToString(CultureInfo.InvariantCulture)} relief notches are laid out.")
            : torn ? $"{job.Sheet.Material} bears {SheetNotices.Percent(bears)}: without notches it will tear." : "It is laid out without notches.";
        yield return new Notice(
            torn ? "lip-past-limit" : "lip-curved", torn ? Severity.Warning : Severity.Note, where,
            $"The free edge of the lip of joint {fit.Label} on {carrier.Edge} {(notched ? "would be strained" : "is strained")} when it is bent along its curve: it {asks}. {relief}",
            notched ? "File their roots round, so that they cannot tear on." : "Work it over a former in small steps, or ask for notches (\"relief\").");
    }

    private static string Size(Job job, double mm) => ShopLength.Print(mm, job.Units, 2);
}

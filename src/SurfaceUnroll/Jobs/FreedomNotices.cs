using SurfaceUnroll.Drawings;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Jobs;

/// <summary>What came of a curve that may move, in the words of the shop.</summary>
internal static class FreedomNotices
{
    /// <summary>A sheet that only bends exists as measured.</summary>
    public static Notice NotNeeded(PanelSpec spec, FreedomSpec freedom, string where) => new(
        "freedom-not-needed", Severity.Note, where,
        $"“{spec.Name}” only bends between its curves as measured, so “{freedom.Curve}” was left where it is.",
        "Nothing to do; \"freedom\" may be left out.");

    /// <summary>A curve was moved.</summary>
    public static Notice Moved(Job job, PanelSpec spec, FreedomFit fit, string where) => new(
        "freedom-moved", Severity.Note, where,
        $"“{fit.Spec.Curve}” was moved so that “{spec.Name}” only bends: {FreedomWords.Largest(fit, job.Units)}. Every piece that uses this curve follows it.",
        $"Cut the part that meets “{spec.Name}” there to the moved edge.");

    /// <summary>An edge exists, but farther away.</summary>
    public static Notice TooSmall(Job job, PanelSpec spec, FreedomSpec freedom, string where, double least) => new(
        "freedom-too-small", Severity.Warning, where,
        $"Within {ShopLength.Print(freedom.Most, job.Units, 2)} no place of “{freedom.Curve}” was found from which “{spec.Name}” bends without any twist; it stays as measured.",
        $"The smallest freedom that would do is {FreedomWords.RoundedUp(least, job.Units)}.");

    /// <summary>No edge was found.</summary>
    public static Notice None(PanelSpec spec, FreedomSpec freedom, string where) => new(
        "freedom-none", Severity.Warning, where,
        $"However far “{freedom.Curve}” moves along its normal, its ends kept, no sheet without any twist was found for “{spec.Name}”; it stays as measured.",
        "Take out what is only error of readings (\"fit\": \"fair\" with \"within\"), give the freedom to the other curve, check where the curves stand, or split the sheet where it twists most.");

    /// <summary>The curve lies in no plane, or in many.</summary>
    public static Notice NoPlane(FreedomSpec freedom, string where) => new(
        "freedom-no-plane", Severity.Error, where,
        $"“{freedom.Curve}” does not lie in one plane to within 0.01 mm, so it has no normal to move along.",
        "Give the freedom to the other curve, or measure this one in a plane: as points, a run or a chord with \"at\".");
}

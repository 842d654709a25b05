using System.Globalization;
using SurfaceUnroll.Bench.Desk;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Bench.Views;

/// <summary>The verdict on a job in a few words.</summary>
public static class VerdictWords
{
    /// <summary>The verdict, or why there is none.</summary>
    public static string Of(DeskState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        if (state.Looked == state.Version && !state.IsSound) return state.Faults.Count() is 1 ? "One thing to mend" : string.Create(CultureInfo.InvariantCulture, $"{state.Faults.Count()} things to mend");
        return state.Development is { } development ? Of(Worst(development)) : "Working it out …";
    }

    /// <summary>A verdict in words.</summary>
    public static string Of(Verdict verdict) => verdict switch
    {
        Verdict.BendsOnly => "Bends only",
        Verdict.NeedsStretching => "Needs stretching",
        _ => "Past the limit",
    };

    /// <summary>Class of its look: good, some, bad or none.</summary>
    public static string Look(DeskState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        if (state.Looked == state.Version && !state.IsSound) return "bad";
        return state.Development is { } development ? Look(Worst(development)) : "none";
    }

    /// <summary>Class of the look of a verdict.</summary>
    public static string Look(Verdict verdict) => verdict switch { Verdict.BendsOnly => "good", Verdict.NeedsStretching => "some", _ => "bad" };

    /// <summary>The largest stretch or shrink of all pieces; null where there is nothing to show.</summary>
    public static string? Worst(DeskState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        if (state.Development is not { } development || development.Panels.IsEmpty) return null;
        double stretch = development.Panels.Max(p => p.JudgedStrain.MaxStretch), shrink = development.Panels.Max(p => p.JudgedStrain.MaxShrink);
        if (Math.Max(stretch, shrink) < 0.001) return "no stretch";
        return stretch >= shrink ? $"stretch {Percent(stretch)}" : $"shrink {Percent(shrink)}";
    }

    /// <summary>A fraction in percent.</summary>
    public static string Percent(double fraction) => (100 * fraction).ToString("0.#", CultureInfo.InvariantCulture) + " %";

    private static Verdict Worst(Development development) => development.Panels.IsEmpty ? Verdict.BendsOnly : development.Panels.Max(p => p.Verdict);
}

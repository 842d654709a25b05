using System.Collections.Immutable;
using System.Globalization;

namespace SurfaceUnroll.Bench.Stops.Measuring;

/// <summary>Names that a curve may have.</summary>
public static class CurveNaming
{
    private static readonly string[] Usual = ["front", "rear"];

    /// <summary>Why a name cannot be used; null if it can.</summary>
    /// <param name="name">The new name.</param>
    /// <param name="old">The name it has.</param>
    /// <param name="all">All curves of the job.</param>
    public static string? Refusal(string name, string old, ImmutableArray<MeasuredShape> all)
    {
        ArgumentNullException.ThrowIfNull(name);
        if (name.Length == 0) return "Give it a name, such as front.";
        // They part the words of a place in the job.
        if (name.AsSpan().IndexOfAny(".[]") >= 0) return "Leave out full stops and square brackets.";
        return name != old && all.Any(s => s.Name == name) ? $"There is a curve called {name} already. Choose another name." : null;
    }

    /// <summary>A name that is free.</summary>
    public static string Free(ImmutableArray<MeasuredShape> all) =>
        Usual.Concat(Enumerable.Range(3, 1000).Select(i => string.Create(CultureInfo.InvariantCulture, $"curve {i}"))).First(n => all.All(s => s.Name != n));
}

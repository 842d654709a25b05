using System.Collections.Immutable;

namespace SurfaceUnroll.Jobs;

/// <summary>How well the readings of a curve, or of a bent plate, were taken: the standard error of each.</summary>
/// <param name="Each">Of every reading that has none of its own, mm; 0: taken as exact. An angle is off by as much as moves its far end by this.</param>
/// <param name="Own">Of single readings in place of that, mm, by their path within the curve: <c>points[3]</c>, <c>run[1]</c>, <c>at</c>; of an angle that was given one in degrees
/// <c>run[1].turn</c>, radians.</param>
public sealed record ReadingErrors(double Each, ImmutableSortedDictionary<string, double> Own)
{
    /// <summary>Every reading is taken as exact.</summary>
    public static ReadingErrors None { get; } = new(0, ImmutableSortedDictionary.Create<string, double>(StringComparer.Ordinal));

    /// <summary>Some reading has an error.</summary>
    public bool Any => Each > 0 || Own.Values.Any(error => error > 0);

    /// <summary>Of the reading at a path within the curve, mm.</summary>
    public double Of(string part) => Own.GetValueOrDefault(part, Each);
}

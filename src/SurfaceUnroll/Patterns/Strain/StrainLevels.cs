using System.Collections.Immutable;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Strain;

/// <summary>The strains at which lines are drawn.</summary>
public static class StrainLevels
{
    /// <summary>Less than this, as a fraction, is not shown anywhere.</summary>
    public const double Least = 0.0005;

    private const int Fewest = 4, Most = 8;

    // A place at the very top of its range is drawn though its strain is smaller than the level by rounding.
    private const double Rounding = 1e-9;

    private static readonly ImmutableArray<double> Steps = [0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2];

    /// <summary>A round step that gives four to eight levels over both ranges together, or as near to that as a round one can.</summary>
    /// <param name="maxStretch">≥ 0, as a fraction.</param>
    /// <param name="maxShrink">≥ 0, as a fraction.</param>
    public static double Step(double maxStretch, double maxShrink) =>
        Steps.MinBy(step => Outside(Count(maxStretch, step) + Count(maxShrink, step)));

    /// <summary>The levels from the largest shrink, negative, to the largest stretch; 0 is none of them.</summary>
    public static ImmutableArray<double> Of(StrainMap map)
    {
        (double stretch, double shrink) = Largest(map);
        double step = Step(stretch, shrink);
        int below = Count(shrink, step), above = Count(stretch, step);
        // Dividing by a whole number keeps 0.003 from becoming 0.0030000000000000005.
        double perUnit = Math.Round(1 / step);
        return [.. Enumerable.Range(-below, below + above + 1).Where(k => k != 0).Select(k => k / perUnit)];
    }

    /// <summary>Largest stretch and shrink of a map.</summary>
    internal static (double Stretch, double Shrink) Largest(StrainMap map) =>
        map.Vertices.IsEmpty ? (0, 0) : (map.Vertices.Max(v => v.Stretch), map.Vertices.Max(v => v.Shrink));

    private static int Count(double largest, double step) => (int)Math.Floor(largest / step + Rounding);

    private static int Outside(int count) => Math.Max(0, Fewest - count) + Math.Max(0, count - Most);
}

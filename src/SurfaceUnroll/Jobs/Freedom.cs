using System.Collections.Immutable;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Lofting;
using SurfaceUnroll.Lofting.Nearest;

namespace SurfaceUnroll.Jobs;

/// <summary>A curve of a loft that may move in its plane.</summary>
/// <param name="Curve">Name of one of the loft's two curves.</param>
/// <param name="Most">Largest move along its normal, mm, &gt; 0.</param>
public sealed record FreedomSpec(string Curve, double Most);

/// <summary>How a curve was moved so that the sheet only bends.</summary>
/// <param name="Spec">What was allowed.</param>
/// <param name="Edge">The moved curve, in the direction of the loft.</param>
/// <param name="Plane">Plane in which it moved.</param>
/// <param name="Moves">Along it from left to right: to the outside of the sheet positive.</param>
/// <param name="Twist">Of the sheet as measured.</param>
/// <param name="Strain">Of the sheet as measured; null where that is no one surface.</param>
public sealed record FreedomFit(FreedomSpec Spec, SpaceCurve Edge, EdgePlane Plane, ImmutableArray<EdgeMove> Moves, TwistSummary Twist, StrainSummary? Strain)
{
    /// <summary>The place that moved farthest.</summary>
    public EdgeMove Largest => Moves.MaxBy(m => Math.Abs(m.Move));

    /// <summary>Root of the mean square of the moves, each by the length of edge that it stands for, mm.</summary>
    public double Mean
    {
        get
        {
            double sum = 0, length = 0;
            for (int i = 1; i < Moves.Length; i++)
            {
                double step = Moves[i].Length - Moves[i - 1].Length, a = Moves[i - 1].Move, b = Moves[i].Move;
                sum += step * (a * a + a * b + b * b) / 3;
                length += step;
            }
            return length > 0 ? Math.Sqrt(sum / length) : 0;
        }
    }

    /// <summary>Both curves of the loft, front and rear, one of them moved.</summary>
    internal ImmutableArray<SpaceCurve> Curves { get; init; } = [];

    /// <summary>The element lines that the curve was moved for.</summary>
    internal ImmutableArray<Match> Lines { get; init; } = [];
}

/// <summary>Which panels lie elsewhere because a freedom moved a curve.</summary>
internal static class MovedCurves
{
    /// <summary>True of panels that use a curve that was moved, and of those that such a panel trims.</summary>
    public static Func<PanelSpec, bool> Reach(ImmutableArray<PanelInWork> panels)
    {
        HashSet<string> moved = [.. panels.Select(p => p.Panel.Freedom?.Spec.Curve).OfType<string>()];
        HashSet<string> trimming = [.. panels.Where(p => Uses(p.Source)).SelectMany(p => new[] { p.Source.Name, p.Panel.Spec.Name })];
        return panel => Uses(panel) || panel.Trims.Any(t => t.By is { } by && trimming.Contains(by));

        bool Uses(PanelSpec panel) => panel.CurveNames.Any(moved.Contains);
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;

namespace SurfaceUnroll.Bench.Desk;

/// <summary>Lays the patterns of a development on its paper.</summary>
internal static class PaperPlans
{
    /// <summary>The plans in the order of the panels. Takes its time.</summary>
    public static ImmutableArray<TilePlan> Of(Development development) =>
        [.. development.Panels.Select(p => TileLayout.Plan(PatternDrawing.Of(p, development.Job, development.Joints), development.Job.Paper))];
}

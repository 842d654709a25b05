using System.Collections.Immutable;
using SurfaceUnroll.Forming;
using SurfaceUnroll.Patterns;
using SurfaceUnroll.Patterns.Strain;

namespace SurfaceUnroll.Jobs;

/// <summary>How finished pieces are formed.</summary>
internal static class PlanStage
{
    /// <summary>The plan of a piece.</summary>
    /// <param name="job">Sheet, shop and units.</param>
    /// <param name="panel">With its cut lines.</param>
    public static FormingPlan Of(Job job, PanelDevelopment panel)
    {
        (ImmutableArray<TapeMark> marks, ImmutableArray<TapeCheck> checks) = TapePlanner.Of(panel, MeshBorders.Of(panel.Mesh)[0]);
        return new FormingPlan(
            RollPlanner.Of(panel, job.Sheet, job.Shop), [.. panel.Bends.Select(b => BendPlanner.Of(b, panel.Bends.Where(o => o.Number == b.Number), job.Sheet, job.Shop))], [.. Stretch(job, panel)],
            GrainPlanner.Of(panel, job.Sheet), marks, checks, BlankPlanner.Of(panel, job.Sheet, job.Shop));
    }

    private static IEnumerable<StretchStep> Stretch(Job job, PanelDevelopment panel) => panel.DrawnMap is not { } map ? []
        : StrainSpots.Of(panel.Mesh, map, panel.Edges, panel.Elements, job.Units).Select(s => new StretchStep(s.Number, s.Flat, s.Formed, s.Kind.Signed(s.Size), s.Where));
}

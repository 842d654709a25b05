namespace SurfaceUnroll.Jobs;

/// <summary>The seams between the pieces of split panels, as joints that need not be asked for.</summary>
internal static class Seams
{
    /// <summary>A butt joint between each two neighbours whose edges no joint of the job names.</summary>
    public static IEnumerable<(JointSpec Spec, string Where)> Of(Job job, IEnumerable<PanelInWork> panels)
    {
        HashSet<EdgeName> named = [.. job.Joints.SelectMany(j => j.Edges)];
        PanelInWork? before = null;
        foreach (PanelInWork work in panels)
        {
            if (before is not null && work.Panel.Piece is { Number: > 1 } && ReferenceEquals(before.Source, work.Source))
            {
                (string last, string first) = work.Source.Along == SeamDirection.Across ? ("rear", "front") : ("right", "left");
                EdgeName[] edges = [new(before.Panel.Spec.Name, last), new(work.Panel.Spec.Name, first)];
                if (!edges.Any(named.Contains)) yield return (new JointSpec(null, [.. edges], JointKind.Butt, 0, 0, null, null, null), work.Where);
            }
            before = work;
        }
    }
}

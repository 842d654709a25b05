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
            // A trim may have taken a piece between two others.
            if (before?.Panel.Piece is { } one && work.Panel.Piece?.Number == one.Number + 1 && ReferenceEquals(before.Source, work.Source))
            {
                (string last, string first) = work.Source.Along == SeamDirection.Across ? ("rear", "front") : ("right", "left");
                EdgeName[] edges = [new(before.Panel.Spec.Name, last), new(work.Panel.Spec.Name, first)];
                // Or the seam itself.
                bool stands = before.Panel.Mesh.HasEdge(last) && work.Panel.Mesh.HasEdge(first);
                if (stands && !edges.Any(named.Contains)) yield return (new JointSpec(null, [.. edges], JointKind.Butt, 0, 0, null, null, null), work.Where);
            }
            before = work;
        }
    }
}

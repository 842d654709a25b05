using System.Collections.Immutable;
using SurfaceUnroll.Fitness;
using SurfaceUnroll.Flattening;
using SurfaceUnroll.Forming;
using SurfaceUnroll.Lofting;
using SurfaceUnroll.Patterns;

namespace SurfaceUnroll.Jobs;

/// <summary>Panels of a formed sheet that is laid out by least forming energy: whole, in pieces, or with relief cuts.</summary>
internal static class SheetPanels
{
    /// <summary>Develops a sheet.</summary>
    /// <param name="job">Material and units.</param>
    /// <param name="spec">What is asked of it.</param>
    /// <param name="where">The panel's path in the job file.</param>
    /// <param name="grid">The middle surface.</param>
    /// <param name="twist">Twist of the lines and of evenly spaced ones where they are known; else they are taken from the grid.</param>
    /// <param name="cancellation">Stops between steps.</param>
    public static PanelResult Develop(
        Job job, PanelSpec spec, string where, SheetGrid grid, (TwistSummary Own, TwistSummary Even)? twist, CancellationToken cancellation)
    {
        if (!DiscCheck.Check(GridMesh.Of(grid).Mesh).IsEmpty) return PanelResult.Failed(SheetNotices.Folded(spec, where));
        var notices = ImmutableArray.CreateBuilder<Notice>();
        var pieces = ImmutableArray.CreateBuilder<PanelDevelopment>();
        var search = new PieceSearch(grid, spec.Along, spec.ShrinkCost, cancellation);
        ImmutableArray<PieceChoice> choices = [];
        foreach ((PanelSpec piece, SheetGrid part, PieceOfPanel? of) in Parts(spec, grid, search))
        {
            if (Slits(job, spec, where, part, cancellation) is not { } slits) return PanelResult.Failed(SheetNotices.SlitTooDeep(job, spec, where, part));
            PanelDevelopment panel = Flattened(piece, slits.Grid, slits.Cuts, cancellation) with { Piece = of };
            if (twist is { } known) panel = panel with { Twist = known.Own, EvenTwist = known.Even };
            panel = Judged(job, panel);
            if (!OutlineCheck.IsSimple(panel.Cut)) return PanelResult.Failed(SheetNotices.GridOverlap(spec, where));
            pieces.Add(panel);
        }
        if (pieces.Any(p => p.Verdict != Verdict.BendsOnly) || spec.Pieces > 1) choices = search.Table(grid);
        foreach (PanelDevelopment panel in pieces) notices.AddRange(SheetNotices.Advice(job, where, panel with { Choices = choices }));
        return new PanelResult([.. pieces.Select(p => p with { Choices = choices })], notices.ToImmutable());
    }

    /// <summary>A panel with its verdict by the material of the job.</summary>
    public static PanelDevelopment Judged(Job job, PanelDevelopment panel)
    {
        double limit = Materials.Of(job.Sheet.Material).Material.UniformElongation;
        return panel with { Limit = limit, Verdict = SheetFitness.Judge(panel.ClearOfTips ?? panel.Strain, limit) };
    }

    private static IEnumerable<(PanelSpec Spec, SheetGrid Grid, PieceOfPanel? Of)> Parts(PanelSpec spec, SheetGrid grid, PieceSearch search)
    {
        if (spec.Pieces == 1) return [(spec, grid, null)];
        bool across = spec.Along == SeamDirection.Across;
        int[] lines = [0, .. search.Split(spec.Pieces), (across ? grid.Rows : grid.Columns) - 1];
        int count = lines.Length - 1;
        // An edge is held only on the piece that has it.
        (string first, string last) = across ? ("front", "rear") : ("left", "right");
        return Enumerable.Range(0, count).Select(k => (
            spec with
            {
                Name = $"{spec.Name} {k + 1} of {count}",
                Hold = [.. spec.Hold.Where(e => (e != first || k == 0) && (e != last || k == count - 1))],
            },
            across ? grid.BetweenRows(lines[k], lines[k + 1]) : grid.BetweenColumns(lines[k], lines[k + 1]),
            (PieceOfPanel?)new PieceOfPanel(spec.Name, k + 1, count)));
    }

    // The cuts of the job on the grid, its lines moved to where they are; null where a cut does not end on the sheet.
    private static (SheetGrid Grid, ImmutableArray<(GridSlit Cut, double At, double Depth)> Cuts)? Slits(
        Job job, PanelSpec spec, string where, SheetGrid grid, CancellationToken cancellation)
    {
        var cuts = ImmutableArray.CreateBuilder<(GridSlit, double, double)>();
        foreach (SlitSpec slit in spec.Slits)
        {
            (string edge, double at, double depth) = SlitSearch.Choose(grid, slit, spec.ShrinkCost, cancellation);
            (double length, Func<double, double> reach) = SlitSearch.Measure(grid, edge);
            if (at <= 0 || at >= length || depth >= reach(at)) return null;
            (grid, GridSlit cut) = SlitSearch.Place(grid, edge, at, depth);
            cuts.Add((cut, at, depth));
        }
        return (grid, cuts.ToImmutable());
    }

    private static PanelDevelopment Flattened(
        PanelSpec spec, SheetGrid grid, ImmutableArray<(GridSlit Cut, double At, double Depth)> cuts, CancellationToken cancellation)
    {
        FlattenedGrid free = GridFlattening.Flatten(grid, spec.ShrinkCost, [], cancellation);
        if (!cuts.IsEmpty)
        {
            SlitGrid cut = SlitGrid.Of(free, [.. cuts.Select(c => c.Cut)], spec.ShrinkCost, cancellation);
            return SlitPanel.Of(spec, cut, cuts);
        }
        if (spec.Hold.IsEmpty) return GridPanel.Of(spec, free, null);
        FlattenedGrid held = GridFlattening.Flatten(grid, spec.ShrinkCost, spec.Hold, cancellation);
        return GridPanel.Of(spec, held, null) with { Unheld = new StrainSummary(free.Blank.MaxStretch, free.Blank.MaxShrink, free.Blank.Energy) };
    }
}

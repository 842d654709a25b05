using System.Collections.Immutable;
using SurfaceUnroll.Fitness;
using SurfaceUnroll.Flattening;
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
        ImmutableArray<SlitPlace> slits = [.. spec.Slits.Select(slit => SlitSearch.Choose(grid, slit, spec.ShrinkCost, cancellation))];
        if (slits.Any(slit => !SlitSearch.Fits(grid, slit))) return PanelResult.Failed(SheetNotices.SlitTooDeep(job, spec, where, grid));
        foreach ((PanelSpec piece, SheetGrid part, PieceOfPanel? of) in Parts(spec, grid, search))
        {
            ImmutableArray<SlitPlace> own = of is null ? slits : PieceSlits.Of(slits, grid, part, of, spec.Along);
            if (own.Any(slit => !SlitSearch.Fits(part, slit))) return PanelResult.Failed(SheetNotices.SlitTooDeep(job, piece, where, part));
            (SheetGrid cutGrid, ImmutableArray<(GridSlit Cut, double At, double Depth)> cuts) = Placed(part, own);
            if (SlitGrid.Meet(cutGrid, [.. cuts.Select(c => c.Cut)])) return PanelResult.Failed(SheetNotices.SlitsMeet(piece, where));
            PanelDevelopment panel = Flattened(piece, cutGrid, cuts, job.Shop.LinePitch, cancellation) with { Piece = of };
            if (twist is { } known) panel = panel with { Twist = known.Own, EvenTwist = known.Even };
            panel = Judged(job, panel);
            if (!OutlineCheck.IsSimple(panel.Cut)) return PanelResult.Failed(SheetNotices.GridOverlap(spec, where));
            pieces.Add(panel);
        }
        if (!job.EdgesOnly && (pieces.Any(p => p.Verdict != Verdict.BendsOnly) || spec.Pieces > 1)) choices = search.Table(grid);
        foreach (PanelDevelopment panel in pieces) notices.AddRange(SheetNotices.Advice(job, where, panel with { Choices = choices }));
        return new PanelResult([.. pieces.Select(p => p with { Choices = choices })], notices.ToImmutable());
    }

    /// <summary>A panel with its verdict by the material of the job.</summary>
    public static PanelDevelopment Judged(Job job, PanelDevelopment panel)
    {
        double limit = job.Sheet.Metal.UniformElongation;
        return panel with { Limit = limit, Verdict = SheetFitness.Judge(panel.JudgedStrain, limit) };
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

    // The cuts on the grid, its lines moved to where they are.
    private static (SheetGrid Grid, ImmutableArray<(GridSlit Cut, double At, double Depth)> Cuts) Placed(SheetGrid grid, ImmutableArray<SlitPlace> slits)
    {
        var cuts = ImmutableArray.CreateBuilder<(GridSlit, double, double)>();
        var taken = new FixedLines([], []);
        foreach (SlitPlace slit in slits)
        {
            (grid, GridSlit cut) = SlitSearch.Place(grid, slit.Edge, slit.At, slit.Depth, taken);
            cuts.Add((cut, slit.At, slit.Depth));
        }
        return (grid, cuts.ToImmutable());
    }

    private static PanelDevelopment Flattened(
        PanelSpec spec, SheetGrid grid, ImmutableArray<(GridSlit Cut, double At, double Depth)> cuts, double? pitch, CancellationToken cancellation)
    {
        ImmutableArray<GridSlit> slits = [.. cuts.Select(c => c.Cut)];
        FlattenedGrid uncut = GridFlattening.Flatten(grid, spec.ShrinkCost, [], cancellation);
        PanelDevelopment free = Panel([]);
        if (spec.Hold.IsEmpty) return free;
        return Panel(spec.Hold) with { Unheld = free.JudgedStrain };

        PanelDevelopment Panel(ImmutableArray<string> held)
        {
            if (!cuts.IsEmpty) return SlitPanel.Of(spec, SlitGrid.Of(uncut, slits, spec.ShrinkCost, held, cancellation), cuts, pitch);
            return GridPanel.Of(spec, held.IsEmpty ? uncut : GridFlattening.Flatten(grid, spec.ShrinkCost, held, cancellation), null, pitch);
        }
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Patterns.Openings;
using SurfaceUnroll.Plates;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Jobs;

/// <summary>A panel on its way to the cut line.</summary>
/// <param name="Where">Path of the panel in the job file.</param>
/// <param name="Source">The panel as asked for; of a split panel its pieces share it.</param>
/// <param name="Panel">So far.</param>
internal sealed record PanelInWork(string Where, PanelSpec Source, PanelDevelopment Panel);

/// <summary>Puts the openings of a job through its panels.</summary>
/// <param name="job">Openings, curves and units.</param>
/// <param name="curves">Measured curves by name.</param>
internal sealed class OpeningStage(Job job, IReadOnlyDictionary<string, SpaceCurve> curves)
{
    private readonly ImmutableArray<Notice>.Builder _notices = ImmutableArray.CreateBuilder<Notice>();

    /// <summary>What was found; errors where an opening does not lie on its panel.</summary>
    public ImmutableArray<Notice> Notices => _notices.ToImmutable();

    /// <summary>The panels with their own openings and those of the job.</summary>
    public ImmutableArray<PanelInWork> Open(ImmutableArray<PanelInWork> panels)
    {
        foreach (IGrouping<PanelSpec, PanelInWork> pieces in panels.GroupBy(p => p.Source).ToArray())
        {
            string where = pieces.First().Where;
            IEnumerable<(OpeningSpec, string)> own = pieces.Key.Openings.Select((o, i) => (o, Path(pieces.Key, where, i)));
            IEnumerable<(OpeningSpec, string)> shared = job.Openings.Select((o, i) => (o, $"openings[{i}]")).Where(o => o.o.Through.Contains(pieces.Key.Name));
            PanelInWork[] opened = [.. pieces];
            Dictionary<int, List<OpenedPanel.Laid>> laid = [];
            (OpeningSpec, string)[] all = [.. own, .. shared];
            SheetPiercing[] sheets = all.Length == 0 ? [] : [.. opened.Select(p => new SheetPiercing(p.Panel))];
            foreach ((OpeningSpec spec, string place) in all) Lay(pieces.Key, sheets, spec, place, laid);
            foreach ((int piece, List<OpenedPanel.Laid> openings) in laid) opened[piece] = opened[piece] with { Panel = Opened(opened[piece], where, openings) };
            panels = [.. panels.Select(p => Array.Find(opened, o => o.Panel.Spec.Name == p.Panel.Spec.Name) ?? p)];
        }
        return panels;
    }

    // Holes stand before the openings in one list.
    private static string Path(PanelSpec panel, string where, int index)
    {
        int holes = panel.Openings.Count(o => o.At is null && o.Shape is not CurveShape);
        return index < holes ? $"{where}.holes[{index}]" : $"{where}.openings[{index - holes}]";
    }

    private PanelDevelopment Opened(PanelInWork work, string where, List<OpenedPanel.Laid> openings)
    {
        if (OpenedPanel.Meeting(work.Panel, openings) is { } pair)
        {
            _notices.Add(new Notice("openings-meet", Severity.Error, where, $"“{pair.First}” and “{pair.Second}” of “{work.Panel.Spec.Name}” run into each other.", "Move one of them, or make them one opening."));
            return work.Panel;
        }
        return OpenedPanel.Of(work.Panel, openings);
    }

    private void Lay(PanelSpec panel, SheetPiercing[] sheets, OpeningSpec spec, string place, Dictionary<int, List<OpenedPanel.Laid>> laid)
    {
        bool onBlank = spec.At is null && panel.Bent is { Width: not null };
        if (Plane(panel, spec) is not { } plane)
        {
            _notices.Add(new Notice("hole-no-plane", Severity.Error, place, $"“{spec.Name}” is given in the plane of the plate, but its first curve is measured in space and has no across and up.",
                "Give it under \"openings\" with \"at\": where its plane stands."));
            return;
        }
        foreach (OpeningOutline outline in OpeningShapes.Of(spec, plane, curves, job.Units))
        {
            SheetPiercing.Result[] results = [.. sheets.Select(s => onBlank ? s.Lay(outline) : s.Project(outline))];
            int best = Enumerable.Range(0, results.Length).MinBy(i => (results[i].Missed, results[i].Edge.IsEmpty ? 0 : (results[i].Edge[0].Formed - outline.Outline[0]).Length));
            var opening = new OpenedPanel.Laid(outline, results[best]);
            if (results[best].Missed > 0 || !sheets[best].Holds(opening.Edge)) _notices.Add(OffSheet(panel, outline, results[best], place));
            else if (laid.TryGetValue(best, out List<OpenedPanel.Laid>? others)) others.Add(opening);
            else laid[best] = [opening];
        }
    }

    // The plane of a hole that is given in the plate's own.
    private Frame? Plane(PanelSpec panel, OpeningSpec spec)
    {
        if (spec.At is { } at) return Frame.Of(at);
        if (spec.Shape is CurveShape) return Frame.Identity;
        if (panel.Bent is { } bent)
        {
            return bent.Width is not null ? Frame.Identity : Flat(PlateBuilder.Stands(job, bent));
        }
        if (panel.Flat is not { } flat) return Frame.Identity;
        return job.Curves.First(c => c.Name == flat.Curves[0]).Spec switch
        {
            SpaceSpec => null,
            PlanSideSpec both => Flat(both.At),
            CurveSpec profile => Frame.Of(profile.At),
        };
    }

    private static Frame Flat(Placement at) => Frame.Of(at).After(Frame.LaidFlat);

    private Notice OffSheet(PanelSpec panel, OpeningOutline opening, SheetPiercing.Result result, string place)
    {
        string how = result.Missed >= 1 ? "meets no metal at all" : result.Missed > 0 ? $"runs off the metal with {100 * result.Missed:0} % of its edge" : "reaches over the edge of the metal";
        Vec3 c = opening.Centre;
        return new Notice(
            "opening-off-the-sheet", Severity.Error, place,
            $"“{opening.Name}” ({opening.Size}) {how} of “{panel.Name}”; its centre stands at x {Show(c.X)}, y {Show(c.Y)}, z {Show(c.Z)}.",
            panel.Pieces > 1 ? "Move it, make it smaller, or choose another number of pieces: it must lie on one of them." : "Move it or make it smaller; to cut away an edge, use \"trims\".");

        string Show(double mm) => ShopLength.Print(mm, job.Units, 1);
    }
}

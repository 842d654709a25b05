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
    // So many pairs of openings that meet are told of a piece.
    private const int MostTold = 5;

    // Sine of the angle between a curve's plane and the plate within which it lies in it.
    private const double InPlane = 0.01;

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
            foreach ((OpeningSpec spec, string place) in all) Lay(opened[0], sheets, spec, place, laid);
            foreach ((int piece, List<OpenedPanel.Laid> openings) in laid) opened[piece] = opened[piece] with { Panel = Opened(opened[piece], openings) };
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

    private PanelDevelopment Opened(PanelInWork work, List<OpenedPanel.Laid> openings)
    {
        OpenedPanel.Laid[][] meeting = [.. OpenedPanel.Meeting(openings).Select(p => new[] { p.First, p.Second })];
        if (meeting.Length == 0) return OpenedPanel.Of(work.Panel, openings);
        foreach (OpenedPanel.Laid[] pair in meeting.Take(MostTold))
        {
            string more = meeting.Length > MostTold && pair == meeting[MostTold - 1] ? $" So do {meeting.Length - MostTold} pairs more." : "";
            _notices.Add(new Notice(
                "openings-meet", Severity.Error, pair[1].Where, $"“{pair[0].Outline.Name}” and “{pair[1].Outline.Name}” of “{work.Panel.Spec.Name}” run into each other.{more}", "Move one of them, or make them one opening."));
        }
        return work.Panel;
    }

    private void Lay(PanelInWork work, SheetPiercing[] sheets, OpeningSpec spec, string place, Dictionary<int, List<OpenedPanel.Laid>> laid)
    {
        PanelSpec panel = work.Source;
        bool onBlank = spec.At is null && spec.Shape is not CurveShape && panel.Bent is { Width: not null };
        if (Plane(panel, spec, work.Panel.Mesh) is not { } plane)
        {
            _notices.Add(new Notice("hole-no-plane", Severity.Error, place, $"“{spec.Name}” is given in the plane of the plate, but none of its curves is measured in that plane, with an across and an up of its own.",
                "Give it under \"openings\" with \"at\": where its plane stands."));
            return;
        }
        foreach (OpeningOutline outline in OpeningShapes.Of(spec, plane, curves, job.Units))
        {
            SheetPiercing.Result[] results = [.. sheets.Select(s => onBlank ? s.Lay(outline) : s.Project(outline))];
            int best = Enumerable.Range(0, results.Length).MinBy(i => (results[i].Missed, results[i].Edge.IsEmpty ? 0 : (results[i].Edge[0].Formed - outline.Outline[0]).Length));
            var opening = new OpenedPanel.Laid(outline, results[best], place);
            if (results[best].Missed > 0 || results[best].IsTorn || !sheets[best].Holds(opening.Edge)) _notices.Add(OffSheet(panel, outline, results, onBlank, place));
            else if (laid.TryGetValue(best, out List<OpenedPanel.Laid>? others)) others.Add(opening);
            else laid[best] = [opening];
        }
    }

    // The plane of a hole that is given in the plate's own: of a flat one that of its first curve which was measured in it.
    private Frame? Plane(PanelSpec panel, OpeningSpec spec, SheetMesh plate)
    {
        if (spec.At is { } at) return Frame.Of(at);
        if (spec.Shape is CurveShape) return Frame.Identity;
        if (panel.Bent is { } bent) return bent.Width is not null ? Frame.Identity : Flat(PlateBuilder.Stands(job, bent));
        if (panel.Flat is not { } flat) return Frame.Identity;
        (int a, int b, int c) = plate.Faces[0];
        Vec3 normal = (plate.Face[b] - plate.Face[a]).Cross(plate.Face[c] - plate.Face[a]).Unit;
        IEnumerable<Frame?> planes = flat.Curves.Select(name => job.Curves.First(c => c.Name == name).Spec switch
        {
            SpaceSpec => null,
            PlanSideSpec both => Flat(both.At),
            CurveSpec profile => (Frame?)Frame.Of(profile.At),
        });
        return planes.FirstOrDefault(p => p is { } own && own.X.Cross(normal).Length < InPlane);
    }

    private static Frame Flat(Placement at) => Frame.Of(at).After(Frame.LaidFlat);

    private Notice OffSheet(PanelSpec panel, OpeningOutline opening, SheetPiercing.Result[] results, bool onBlank, string place)
    {
        double missed = results.Min(r => r.Missed);
        bool parted = results.Count(r => r.Missed < 1) > 1;
        string how = parted ? "lies across the seam of two pieces" : results.Any(r => r.IsTorn) ? "lies across the seam where the sheet meets itself" : missed >= 1 ? "meets no metal at all"
            : missed > 0 ? $"runs off the metal with {100 * missed:0} % of its edge" : "reaches over the edge of the metal";
        Vec3 c = opening.Centre;
        return new Notice(
            "opening-off-the-sheet", Severity.Error, place,
            $"“{opening.Name}” ({opening.Size}) {how} of “{panel.Name}”; its centre stands at {(onBlank ? $"across {Show(c.Y)}, up {Show(c.Z)} on the blank" : $"x {Show(c.X)}, y {Show(c.Y)}, z {Show(c.Z)}")}.",
            panel.Pieces > 1 ? "Move it, make it smaller, or choose another number of pieces: it must lie on one of them." : "Move it or make it smaller; to cut away an edge, use \"trims\".");

        string Show(double mm) => ShopLength.Print(mm, job.Units, 1);
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Forming;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Patterns.Allowances;
using SurfaceUnroll.Patterns.Joints;

namespace SurfaceUnroll.Jobs;

/// <summary>Fits the edges of a job's panels to each other: compares mates, lays out lips and match marks, and sums up what each edge is left.</summary>
/// <param name="job">Joints, sheet and units.</param>
/// <param name="panels">Net, with their openings.</param>
internal sealed class JointStage(Job job, ImmutableArray<PanelInWork> panels)
{
    private readonly ImmutableArray<Notice>.Builder _notices = ImmutableArray.CreateBuilder<Notice>();
    private readonly ImmutableArray<JointFit>.Builder _fits = ImmutableArray.CreateBuilder<JointFit>();
    private readonly ImmutableArray<TackPlan>.Builder _tacks = ImmutableArray.CreateBuilder<TackPlan>();
    private readonly Dictionary<string, PanelDetails> _details = panels.ToDictionary(p => p.Panel.Spec.Name, _ => new PanelDetails());

    // What the joints add to one panel.
    private sealed class PanelDetails
    {
        public List<MatchMark> Marks { get; } = [];

        public List<EdgeAllowance> Allowances { get; } = [];

        public List<LipLayout> Lips { get; } = [];
    }

    /// <summary>What was found.</summary>
    public ImmutableArray<Notice> Notices => _notices.ToImmutable();

    /// <summary>How the edges fit.</summary>
    public ImmutableArray<JointFit> Fits => _fits.ToImmutable();

    /// <summary>How they are tacked: those of two edges that are to be joined for good.</summary>
    public ImmutableArray<TackPlan> Tacks => _tacks.ToImmutable();

    /// <summary>The panels with marks, bends of lips, allowances and cut lines.</summary>
    public ImmutableArray<PanelInWork> Fit()
    {
        (JointSpec Spec, string Where)[] joints = [.. job.Joints.Select((j, i) => (j, $"joints[{i}]")), .. Seams.Of(job, panels)];
        for (int i = 0; i < joints.Length; i++)
        {
            JointSpec spec = joints[i].Spec;
            int twin = Array.FindIndex(joints, 0, i, j => spec.Edges.Length == 2 && j.Spec.Edges.ToHashSet().SetEquals(spec.Edges));
            if (twin >= 0) _notices.Add(JointNotices.Twice(spec, joints[twin].Where, joints[i].Where));
        }
        for (int i = 0; i < joints.Length; i++) Fit(joints[i].Spec, joints[i].Spec.Name ?? JointSpec.Letters(i), joints[i].Where);
        foreach (PanelInWork work in panels.Where(p => p.Source.AutoTrim)) LeaveBands(work);
        return [.. panels.Select(p => p with { Panel = Cut(p) })];
    }

    // What the bands of free edges ask for.
    private void LeaveBands(PanelInWork work)
    {
        if (work.Panel.Error is not { } error)
        {
            _notices.Add(ErrorNotices.NoBand(work.Panel.Spec.Name, null, $"{work.Where}.trim"));
            return;
        }
        PanelDetails details = _details[work.Panel.Spec.Name];
        foreach (string edge in error.Edges.Select(e => e.Name).Distinct())
        {
            ImmutableArray<LeaveStep> steps = Steps(new EdgeName(work.Panel.Spec.Name, edge));
            double widest = steps.Max(s => s.Width);
            if (widest > 0 && !details.Allowances.Exists(a => a.Edge == edge)) details.Allowances.Add(new EdgeAllowance(edge, "", JointKind.Trim, widest, CornerStyle.Mitre) { Steps = steps });
        }
    }

    // A trim that follows the band, as wide as it is at most; null where no band is known.
    private JointSpec? Banded(JointSpec spec, string label, string where)
    {
        ImmutableArray<LeaveStep> steps = Steps(spec.Edges[spec.On]);
        if (!steps.IsEmpty) return spec with { Width = steps.Max(s => s.Width) };
        _notices.Add(ErrorNotices.NoBand(spec.Edges[spec.On].ToString(), label, $"{where}.extra"));
        return null;
    }

    // Of an edge that a trim parted each run has its own: the wider counts for both.
    private ImmutableArray<LeaveStep> Steps(EdgeName name)
    {
        PanelDevelopment panel = panels.First(p => p.Panel.Spec.Name == name.Panel).Panel;
        EdgeError[] runs = [.. (panel.Error?.Edges ?? []).Where(e => e.Name == name.Edge)];
        return runs.Length < 2 ? runs.FirstOrDefault()?.Leave ?? [] : [new LeaveStep(0, runs.Max(r => r.Leave[^1].To), runs.SelectMany(r => r.Leave).Max(s => s.Width))];
    }

    private void Fit(JointSpec spec, string label, string where)
    {
        ImmutableArray<EdgeTrack>[] tracks = [.. spec.Edges.Select((e, i) => Tracks(e, $"{where}.edges[{i}]"))];
        if (tracks.Any(t => t.IsEmpty)) return;
        if (spec.Auto)
        {
            if (Banded(spec, label, where) is not { } banded) return;
            spec = banded;
        }
        JointCheck? check = tracks.Length == 2 ? JointCheck.Of(tracks[0], tracks[1]) : null;
        LipLayout[] lips = spec.Kind == JointKind.Lip ? Lips(spec, tracks[spec.On], tracks.Length == 2 ? tracks[1 - spec.On] : []) : [];
        Notice[] faults = [.. LipNotices.Faults(job, spec, label, where, lips)];
        if (faults.Length > 0)
        {
            _notices.AddRange(faults);
            return;
        }
        if (check is not null) Mark(spec, label, check);
        double[] widths = [.. spec.Edges.Select((_, i) => Width(spec, i, lips) is var width && Allow(spec, label, i, width, lips, where) ? width : 0)];
        if (widths[spec.On] == 0) lips = [];
        JointMate[] mates = [.. spec.Edges.Select((e, i) => new JointMate(e, tracks[i].Sum(r => r.Length), widths[i], i == spec.On && lips.Length > 0 ? LipLayout.Strains(lips) : null))];
        double difference = mates.Length == 2 ? mates[1].Length - mates[0].Length : 0, bears = JointCheck.Tolerance + spec.Edges.Max(Clearance);
        var fit = new JointFit(
            spec, label, [.. mates], difference, check?.LargestGap ?? 0, check?.GapAt ?? 0, check?.GapPlace ?? Vec3.Zero,
            check is null ? null : (check.LeastAngle, check.GreatestAngle), Math.Abs(difference) <= JointCheck.Tolerance && (check is null || check.LargestGap <= bears));
        _fits.Add(fit);
        if (mates.Length == 2 && spec.Kind != JointKind.Trim) _tacks.Add(TackPlanner.Of(label, tracks[0].Select(run => (run.Length, run.IsClosed, (Func<double, Vec3>)(at => run.At(at).Joint))), job.Shop.TackPitch ?? TackPlanner.Pitch(job.Sheet.Thickness)));
        _notices.AddRange(JointNotices.Of(job, fit, where).Concat(LipNotices.Of(job, fit, lips, where)));
    }

    // A trim may be asked to keep clear of what it meets.
    private double Clearance(EdgeName edge) => panels.Where(p => p.Panel.Spec.Name == edge.Panel).SelectMany(p => p.Source.Trims).Where(t => t.Name == edge.Edge).Select(t => Math.Abs(t.Clearance)).FirstOrDefault();

    private ImmutableArray<EdgeTrack> Tracks(EdgeName name, string where)
    {
        PanelInWork? panel = panels.FirstOrDefault(p => p.Panel.Spec.Name == name.Panel);
        ImmutableArray<EdgeTrack> runs = panel is null ? [] : EdgeTrack.Of(panel.Panel.Mesh, name.Edge);
        if (runs.IsEmpty) _notices.Add(JointNotices.NoEdge(name, panel?.Panel, panels, where));
        return runs;
    }

    private LipLayout[] Lips(JointSpec spec, ImmutableArray<EdgeTrack> runs, ImmutableArray<EdgeTrack> mates)
    {
        PanelDevelopment panel = panels.First(p => p.Panel.Spec.Name == spec.Edges[spec.On].Panel).Panel;
        LipAngles? along = LipAngles.Along(runs, mates);
        return [.. runs.Select(run => LipLayout.Of(job.Sheet, run, spec.Edges[spec.On].Edge, spec.Width, spec.Lip!, along, panel.Bends))];
    }

    private static double Width(JointSpec spec, int side, LipLayout[] lips) => spec.Kind switch
    {
        JointKind.Butt => -0.5 * spec.Width,
        _ when side != spec.On => 0,
        JointKind.Lip => lips[0].Width,
        _ => spec.Width,
    };

    // Numbered on from run to run.
    private void Mark(JointSpec spec, string label, JointCheck check)
    {
        int number = 0;
        foreach ((TrackPlace first, TrackPlace second) in check.Runs.SelectMany(run => run.Mates(spec.MarkPitch)))
        {
            number++;
            _details[spec.Edges[0].Panel].Marks.Add(MarkLayout.Mark(label, number, spec.Edges[0].Edge, first));
            _details[spec.Edges[1].Panel].Marks.Add(MarkLayout.Mark(label, number, spec.Edges[1].Edge, second));
        }
    }

    // False where the edge has another already.
    private bool Allow(JointSpec spec, string label, int side, double width, LipLayout[] lips, string where)
    {
        if (width == 0) return true;
        PanelDetails details = _details[spec.Edges[side].Panel];
        string edge = spec.Edges[side].Edge;
        if (details.Allowances.FirstOrDefault(a => a.Edge == edge) is { } other)
        {
            _notices.Add(JointNotices.EdgeTwice(spec.Edges[side], label, other.Joint, where));
            return false;
        }
        ImmutableArray<LeaveStep> steps = spec.Auto ? Steps(spec.Edges[side]) : [];
        details.Allowances.Add(new EdgeAllowance(edge, label, spec.Kind, width, spec.Corners ?? (spec.Kind == JointKind.Lip ? CornerStyle.Square : CornerStyle.Mitre)) { Steps = steps });
        details.Lips.AddRange(lips);
        return true;
    }

    private PanelDevelopment Cut(PanelInWork work)
    {
        PanelDevelopment panel = work.Panel with { Net = work.Panel.Cut };
        PanelDetails details = _details[panel.Spec.Name];
        Dictionary<string, RunAllowance> given = details.Allowances.ToDictionary(
            a => a.Edge, a => new RunAllowance(a.Width, a.Kind, a.Corners, details.Lips.Where(l => l.Bend.Lip == a.Edge).Select(l => l.Bend.Length.Setback).DefaultIfEmpty().Max()) { Varying = VaryingWidth.Of(panel, a) });
        ImmutableArray<LipNotch> notches = [.. details.Lips.SelectMany(l => l.Notches)];
        if (given.Count > 0)
        {
            if (CutLine.Of(panel, given, notches.Where(n => panel.FindEdge(n.Edge) is not null), job.Sheet.Thickness) is not { } line)
            {
                _notices.Add(JointNotices.NothingLeft(panel, work.Where));
                return panel;
            }
            _notices.AddRange(JointNotices.Of(panel, work.Where, line));
            panel = panel with
            {
                Cut = line.Outline,
                InnerCuts = line.Inner,
                Openings = [.. panel.Openings.Select(o => given.TryGetValue(o.Name, out RunAllowance own) ? Opening(o, own) : o)],
            };
        }
        // Lips are bent while the sheet is still flat, bends across it after them (common practice).
        string[] order = [.. details.Lips.Select(l => l.Bend.Lip!).Distinct()];
        // A trim may have taken some of the others.
        int[] left = [.. panel.Bends.Select(b => b.Number).Distinct().Order()];
        BendLine[] bends = [.. details.Lips.Select(l => l.Bend with { Number = Array.IndexOf(order, l.Bend.Lip) + 1 }), .. panel.Bends.Select(b => b with { Number = Array.IndexOf(left, b.Number) + 1 + order.Length })];
        panel = panel with { Marks = [.. details.Marks], Allowances = [.. details.Allowances], Notches = notches, Bends = [.. bends] };
        return panel with { Areas = Areas.Of(panel) };

        BlankOpening Opening(BlankOpening opening, RunAllowance allowance)
        {
            ImmutableArray<Vec2> cut = CutLine.OfOpening(opening, allowance, notches.Where(n => n.Edge == opening.Name), job.Sheet.Thickness);
            if (cut.IsEmpty) _notices.Add(JointNotices.OpeningClosed(panel, opening, work.Where));
            return opening with { Cut = cut.IsEmpty ? opening.Flat : cut };
        }
    }
}

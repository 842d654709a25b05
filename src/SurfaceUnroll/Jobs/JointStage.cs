using System.Collections.Immutable;
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

    /// <summary>The panels with marks, bends of lips, allowances and cut lines.</summary>
    public ImmutableArray<PanelInWork> Fit()
    {
        (JointSpec Spec, string Where)[] joints = [.. job.Joints.Select((j, i) => (j, $"joints[{i}]")), .. Seams.Of(job, panels)];
        for (int i = 0; i < joints.Length; i++) Fit(joints[i].Spec, joints[i].Spec.Name ?? Letters(i), joints[i].Where);
        return [.. panels.Select(p => p with { Panel = Cut(p) })];
    }

    // A … Z, AA, AB …
    private static string Letters(int index) => (index >= 26 ? Letters(index / 26 - 1) : "") + (char)('A' + index % 26);

    private void Fit(JointSpec spec, string label, string where)
    {
        ImmutableArray<EdgeTrack>[] tracks = [.. spec.Edges.Select((e, i) => Tracks(e, $"{where}.edges[{i}]"))];
        if (tracks.Any(t => t.IsEmpty)) return;
        ImmutableArray<JointCheck> checks = tracks.Length == 2 ? JointCheck.Of(tracks[0], tracks[1]) : [];
        LipLayout[] lips = spec.Kind == JointKind.Lip ? [.. tracks[spec.On].Select(run => Lip(spec, run, checks))] : [];
        if (lips.FirstOrDefault(l => l.Width <= 0) is { } narrow)
        {
            _notices.Add(JointNotices.LipTooNarrow(job, spec, label, where, narrow));
            return;
        }
        double[] widths = [.. spec.Edges.Select((_, i) => Width(spec, i, lips))];
        Mark(spec, label, checks);
        for (int i = 0; i < spec.Edges.Length; i++) Allow(spec, label, i, widths[i], lips, where);
        double[] lengths = [.. tracks.Select(runs => runs.Sum(r => r.Length))];
        LipStrain? strain = lips.Length == 0 ? null : new LipStrain(lips.Max(l => l.Strain.MaxStretch), lips.Max(l => l.Strain.MaxShrink), lips.Sum(l => l.Notches.Length));
        JointCheck? worst = checks.MaxBy(c => c.LargestGap);
        double difference = lengths.Length == 2 ? lengths[1] - lengths[0] : 0;
        var fit = new JointFit(
            spec, label, [.. spec.Edges.Select((e, i) => new JointMate(e, lengths[i], widths[i], i == spec.On ? strain : null))],
            difference, worst?.LargestGap ?? 0, worst?.GapAt ?? 0, worst?.GapPlace ?? Vec3.Zero,
            worst is null ? null : (checks.Min(c => c.LeastAngle), checks.Max(c => c.GreatestAngle)), Math.Abs(difference) <= JointCheck.Tolerance && checks.All(c => c.Fits));
        _fits.Add(fit);
        _notices.AddRange(JointNotices.Of(job, fit, where));
    }

    private ImmutableArray<EdgeTrack> Tracks(EdgeName name, string where)
    {
        PanelInWork? panel = panels.FirstOrDefault(p => p.Panel.Spec.Name == name.Panel);
        ImmutableArray<EdgeTrack> runs = panel is null ? [] : EdgeTrack.Of(panel.Panel.Mesh, name.Edge);
        if (runs.IsEmpty) _notices.Add(JointNotices.NoEdge(name, panel?.Panel, panels, where));
        return runs;
    }

    // A lip lies along the other piece; where there is none it stands square.
    private LipLayout Lip(JointSpec spec, EdgeTrack run, ImmutableArray<JointCheck> checks)
    {
        LipSpec lip = spec.Lip!;
        EdgeTrack? mate = checks.Select(c => spec.On == 0 ? c.Second : c.First).MinBy(other => other.Nearest(run.At(0.5 * run.Length).Joint).Distance);
        (double Angle, bool Up)[] along = mate is null ? [] : [.. Enumerable.Range(0, 101).Select(k =>
        {
            TrackPlace place = run.At(run.Length * k / 100);
            return LipLayout.Along(place, mate.Nearest(place.Joint).Place.Inward);
        })];
        const double square = 0.5 * Math.PI;
        (double least, double mean, double greatest) = lip.Angle is { } asked ? (asked, asked, asked)
            : along.Length == 0 ? (square, square, square) : (along.Min(a => a.Angle), along.Average(a => a.Angle), along.Max(a => a.Angle));
        bool up = lip.Up ?? (along.Length == 0 || along.Count(a => a.Up) * 2 > along.Length);
        return LipLayout.Of(job.Sheet, run, spec.Edges[spec.On].Edge, spec.Width, lip, (least, mean, greatest), up);
    }

    private static double Width(JointSpec spec, int side, LipLayout[] lips) => spec.Kind switch
    {
        JointKind.Butt => -0.5 * spec.Width,
        _ when side != spec.On => 0,
        JointKind.Lip => lips.Average(l => l.Width),
        _ => spec.Width,
    };

    // Numbered on from run to run.
    private void Mark(JointSpec spec, string label, ImmutableArray<JointCheck> checks)
    {
        int number = 0;
        foreach (JointCheck check in checks)
        {
            foreach (double at in MarkLayout.Distances(check.First, spec.MarkPitch))
            {
                number++;
                _details[spec.Edges[0].Panel].Marks.Add(MarkLayout.Mark(label, number, spec.Edges[0].Edge, check.First.At(at)));
                _details[spec.Edges[1].Panel].Marks.Add(MarkLayout.Mark(label, number, spec.Edges[1].Edge, check.Second.At(at)));
            }
        }
    }

    private void Allow(JointSpec spec, string label, int side, double width, LipLayout[] lips, string where)
    {
        if (width == 0) return;
        PanelDetails details = _details[spec.Edges[side].Panel];
        string edge = spec.Edges[side].Edge;
        if (details.Allowances.FirstOrDefault(a => a.Edge == edge) is { } other)
        {
            _notices.Add(JointNotices.EdgeTwice(spec.Edges[side], label, other.Joint, where));
            return;
        }
        details.Allowances.Add(new EdgeAllowance(edge, label, spec.Kind, width, spec.Corners ?? (spec.Kind == JointKind.Lip ? CornerStyle.Square : CornerStyle.Mitre)));
        details.Lips.AddRange(lips);
    }

    private PanelDevelopment Cut(PanelInWork work)
    {
        PanelDevelopment panel = work.Panel with { Net = work.Panel.Cut };
        PanelDetails details = _details[panel.Spec.Name];
        Dictionary<string, RunAllowance> given = details.Allowances.ToDictionary(a => a.Edge, a => new RunAllowance(a.Width, a.Kind, a.Corners));
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
        BendLine[] bends = [.. details.Lips.Select(l => l.Bend with { Number = Array.IndexOf(order, l.Bend.Lip) + 1 }), .. panel.Bends.Select(b => b with { Number = b.Number + order.Length })];
        panel = panel with { Marks = [.. details.Marks], Allowances = [.. details.Allowances], Notches = notches, Bends = [.. bends] };
        return panel with { Areas = Areas.Of(panel) };

        BlankOpening Opening(BlankOpening opening, RunAllowance allowance)
        {
            ImmutableArray<Vec2> cut = CutLine.OfOpening(opening.Flat, allowance, notches.Where(n => n.Edge == opening.Name));
            if (cut.IsEmpty) _notices.Add(JointNotices.OpeningClosed(panel, opening, work.Where));
            return opening with { Cut = cut.IsEmpty ? opening.Flat : cut };
        }
    }
}

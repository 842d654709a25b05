using System.Collections.Immutable;
using System.Diagnostics;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Patterns.Nesting;

namespace SurfaceUnroll.Jobs;

/// <summary>Runs a whole job: measured curves → curves moved where they may → sheets → blanks → pieces that fit up.</summary>
public static class Developer
{
    /// <summary>Develops every panel of a job.</summary>
    /// <param name="job">As read from its file.</param>
    /// <param name="progress">Told the name of each step as it begins.</param>
    /// <param name="cancellation">Stops between steps.</param>
    /// <returns>Panels and notices. Where a notice is an error the panels are left out and every fault found is listed.</returns>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public static Development Develop(Job job, IProgress<string>? progress = null, CancellationToken cancellation = default) => Run(job, null, progress, cancellation);

    /// <summary>The same of a job that is just being changed, in a small part of the time where its readings have errors: what they do to its edges is taken over from what was developed last, until
    /// <see cref="Develop"/> works it out.</summary>
    /// <param name="job">As read from its file.</param>
    /// <param name="last">What was developed of it last; null if nothing was.</param>
    /// <param name="progress">Told the name of each step as it begins.</param>
    /// <param name="cancellation">Stops between steps.</param>
    /// <returns>As of <see cref="Develop"/>, with <see cref="Development.ErrorsAwaited"/> where anything was taken over.</returns>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public static Development Follow(Job job, Development? last, IProgress<string>? progress = null, CancellationToken cancellation = default) =>
        Run(job, ErrorStage.Any(job) ? new LastErrors(last) : null, progress, cancellation);

    // What errors do is worked out unless it is taken over.
    private static Development Run(Job job, LastErrors? errors, IProgress<string>? progress, CancellationToken cancellation)
    {
        var notices = ImmutableArray.CreateBuilder<Notice>();
        var timings = ImmutableArray.CreateBuilder<(string, double)>();
        var clock = Stopwatch.StartNew();
        Dictionary<string, SpaceCurve> curves = Measured(job, progress, notices);
        notices.AddRange(UnusedCurves(job));
        timings.Add(("curves", clock.Elapsed.TotalMilliseconds));
        clock.Restart();
        var freedom = new FreedomStage(job, cancellation);
        freedom.Move(curves, progress);
        notices.AddRange(freedom.Notices);
        if (job.Panels.Any(p => p.Freedom is not null)) timings.Add(("freedom", clock.Elapsed.TotalMilliseconds));

        var panels = ImmutableArray.CreateBuilder<PanelInWork>();
        for (int i = 0; i < job.Panels.Length; i++)
        {
            PanelSpec spec = job.Panels[i];
            cancellation.ThrowIfCancellationRequested();
            clock.Restart();
            progress?.Report($"Developing {spec.Name}");
            string where = $"panels[{i}]";
            PanelResult? result = Panel(job, spec, where, curves, freedom.Fits.GetValueOrDefault(i), notices, cancellation);
            if (result is null) continue;
            notices.AddRange(result.Notices);
            panels.AddRange(result.Panels.Select(p => new PanelInWork(where, spec, p)));
            timings.Add((spec.Name, clock.Elapsed.TotalMilliseconds));
        }
        if (notices.Any(n => n.Severity == Severity.Error)) return new Development(job, [], notices.ToImmutable()) { Timings = timings.ToImmutable() };

        cancellation.ThrowIfCancellationRequested();
        clock.Restart();
        Development development = FittedUp(job, panels.ToImmutable(), curves, errors, notices, progress, cancellation);
        timings.Add(("fitting up", clock.Elapsed.TotalMilliseconds));
        return development with { Timings = timings.ToImmutable() };
    }

    /// <summary>The net panels of a job, trimmed, for their edges alone: nothing is told of them, and nothing fitted to them.</summary>
    /// <param name="job">The job.</param>
    /// <param name="fitted">Fits the curves of the job to each other for one panel.</param>
    /// <param name="cancellation">Stops between steps.</param>
    /// <returns>Empty if any of them cannot be developed.</returns>
    internal static ImmutableArray<PanelInWork> Net(Job job, Func<PanelSpec, IReadOnlyDictionary<string, SpaceCurve>, IReadOnlyDictionary<string, SpaceCurve>> fitted, CancellationToken cancellation)
    {
        var notices = ImmutableArray.CreateBuilder<Notice>();
        Job bare = job with { EdgesOnly = true };
        Dictionary<string, SpaceCurve> curves = Measured(bare, null, notices);
        if (curves.Count < bare.Curves.Length) return [];
        var panels = ImmutableArray.CreateBuilder<PanelInWork>();
        for (int i = 0; i < bare.Panels.Length; i++)
        {
            string where = $"panels[{i}]";
            if (Panel(bare, bare.Panels[i], where, fitted(bare.Panels[i], curves), null, notices, cancellation) is not { } result) return [];
            notices.AddRange(result.Notices);
            panels.AddRange(result.Panels.Select(p => new PanelInWork(where, bare.Panels[i], p)));
        }
        if (notices.Any(n => n.Severity == Severity.Error)) return [];
        var trims = new TrimStage();
        ImmutableArray<PanelInWork> trimmed = trims.Trim(panels.ToImmutable());
        return trims.Notices.Any(n => n.Severity == Severity.Error) ? [] : trimmed;
    }

    /// <summary>The curves of a job that could be measured, by name.</summary>
    internal static Dictionary<string, SpaceCurve> Measured(Job job, IProgress<string>? progress, ImmutableArray<Notice>.Builder notices)
    {
        var curves = new Dictionary<string, SpaceCurve>();
        foreach (NamedCurve named in job.Curves)
        {
            progress?.Report($"Measuring {named.Name}");
            CurveReading reading = MeasuredCurve.Build(named.Spec, $"curves.{named.Name}", job.Units);
            notices.AddRange(reading.Notices);
            if (reading.Curve is { } curve) curves[named.Name] = curve;
        }
        return curves;
    }

    // Net panels → trimmed → with the errors of their edges → with openings → with lips, match marks and cut lines → with forming plans → laid out on sheets. Each step needs the
    // one before it whole.
    private static Development FittedUp(
        Job job, ImmutableArray<PanelInWork> panels, Dictionary<string, SpaceCurve> curves, LastErrors? errors, ImmutableArray<Notice>.Builder notices, IProgress<string>? progress,
        CancellationToken cancellation)
    {
        var trims = new TrimStage();
        panels = trims.Trim(panels);
        ImmutableArray<PanelInWork> net = panels;
        if (!trims.Notices.Any(n => n.Severity == Severity.Error))
        {
            if (errors is null && ErrorStage.Any(job)) progress?.Report("Working out how far edges may be off");
            panels = errors?.Over(panels, job.Units, notices) ?? ErrorStage.Of(job, panels, notices, cancellation);
        }
        progress?.Report("Fitting up");
        var openings = new OpeningStage(job, curves);
        panels = openings.Open(panels);
        notices.AddRange(trims.Notices.Concat(openings.Notices));
        if (notices.Any(n => n.Severity == Severity.Error)) return new Development(job, [], notices.ToImmutable());
        var joints = new JointStage(job, panels);
        panels = joints.Fit();
        notices.AddRange(joints.Notices);
        foreach (PanelInWork work in panels) notices.AddRange(PlateNotices.Of(job, work));
        if (notices.Any(n => n.Severity == Severity.Error)) return new Development(job, [], notices.ToImmutable());
        panels = [.. panels.Select(p => p with { Panel = p.Panel with { Plan = PlanStage.Of(job, p.Panel) } })];
        foreach (PanelInWork work in panels) notices.AddRange(PlanNotices.Of(job, work.Panel, work.Where).Concat(KerfNotices.Of(job, work.Panel, work.Where)));
        ImmutableArray<BuiltCheck> built = errors?.Built ?? BuiltStage.Of(job, panels, net, notices, cancellation);
        (NestLayout? nest, ImmutableArray<Notice> nesting) = NestStage.Of(job, [.. panels.Select(p => p.Panel)]);
        notices.AddRange(nesting);
        return new Development(job, [.. panels.Select(p => p.Panel)], notices.ToImmutable()) { Joints = joints.Fits, Tacks = joints.Tacks, Nest = nest, Built = built, ErrorsAwaited = errors is not null };
    }

    // Null where a curve of the panel has faults of its own.
    private static PanelResult? Panel(
        Job job, PanelSpec spec, string where, IReadOnlyDictionary<string, SpaceCurve> curves, FreedomFit? fit, ImmutableArray<Notice>.Builder notices, CancellationToken cancellation)
    {
        if (spec.Mesh is not null) return PanelDeveloper.Develop(job, spec, where, cancellation);
        if (!spec.CurveNames.All(curves.ContainsKey)) return null;
        if (spec.Loft.IsEmpty) return PanelDeveloper.Develop(job, spec, where, curves);
        var aligned = ImmutableArray.Create(curves[spec.Loft[0]]);
        for (int k = 1; k < spec.Loft.Length; k++)
        {
            (SpaceCurve front, SpaceCurve rear, Notice? turned) = CurveAlignment.Of(spec.Loft[k - 1], spec.Loft[k], aligned[^1], curves[spec.Loft[k]]);
            if (turned is not null) notices.Add(turned);
            // Once two curves run the same way, a third is turned to them and not they to it.
            aligned = k == 1 ? [front, rear] : aligned.Add(ReferenceEquals(front, aligned[^1]) ? rear : curves[spec.Loft[k]].Reversed());
        }
        return fit is null ? PanelDeveloper.Develop(job, spec, where, aligned, cancellation) : PanelDeveloper.Develop(job, spec, where, fit, cancellation);
    }

    private static IEnumerable<Notice> UnusedCurves(Job job) =>
        job.Curves
            .Where(c => !job.Panels.Any(p => p.CurveNames.Contains(c.Name)) && !job.Openings.Any(o => o.Shape is CurveShape shape && shape.Curve == c.Name))
            .Select(c => new Notice("curve-unused", Severity.Note, $"curves.{c.Name}", $"No panel uses the curve “{c.Name}”.", "Name it in a panel's loft, or leave it out."));
}

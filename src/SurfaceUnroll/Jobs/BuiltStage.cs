using System.Collections.Immutable;
using SurfaceUnroll.Uncertainty;

namespace SurfaceUnroll.Jobs;

/// <summary>Compares what was measured on finished pieces with what was wanted. The method is told in docs/errors.md.</summary>
internal static class BuiltStage
{
    /// <summary>The comparisons, in the order of the job.</summary>
    /// <param name="job">The job.</param>
    /// <param name="panels">Pieces with their plans.</param>
    /// <param name="net">The same, trimmed, before anything was fitted to them.</param>
    /// <param name="notices">Where to say what cannot be compared, and what is off.</param>
    /// <param name="cancellation">Stops between steps.</param>
    public static ImmutableArray<BuiltCheck> Of(Job job, ImmutableArray<PanelInWork> panels, ImmutableArray<PanelInWork> net, ImmutableArray<Notice>.Builder notices, CancellationToken cancellation)
    {
        var checks = ImmutableArray.CreateBuilder<BuiltCheck>();
        foreach (BuiltSpec spec in job.Built)
        {
            if (panels.FirstOrDefault(p => p.Panel.Spec.Name == spec.Panel) is not { } work)
            {
                notices.Add(BuiltNotices.NoPiece(spec, spec.Where));
                continue;
            }
            BuiltCheck check = Compared(job, spec, work, net, notices, cancellation);
            // What was not compared tells nothing.
            if (check.Differences.IsEmpty) continue;
            if (check.Finding != BuiltFinding.Within) notices.Add(BuiltNotices.Beyond(check, spec.Where));
            checks.Add(check);
        }
        return checks.ToImmutable();
    }

    private static BuiltCheck Compared(Job job, BuiltSpec spec, PanelInWork work, ImmutableArray<PanelInWork> net, ImmutableArray<Notice>.Builder notices, CancellationToken cancellation)
    {
        PanelDevelopment panel = work.Panel;
        var places = new BuiltPlaces(panel);
        var readings = new List<BuiltReading>();
        foreach (BuiltReading reading in spec.Readings)
        {
            if (BuiltNotices.Problem(reading, panel, [.. places.Letters]) is { } problem) notices.Add(problem);
            else readings.Add(reading);
        }
        double[] design = Design(job, work, net, panel => [.. readings.Select(r => places.Length(panel, r))], readings.Count, cancellation);
        ImmutableArray<BuiltDifference> differences = [.. readings.Select((r, i) => new BuiltDifference(r, places.Length(panel, r), spec.Error, design[i]))];
        if (differences.All(d => d.IsWithin)) return new BuiltCheck(spec.Panel, differences, [], BuiltFinding.Within);
        (ImmutableArray<EdgeCorrection> edges, bool either) = new EdgeFit(panel, differences).Find();
        bool forming = edges.IsEmpty && differences.All(d => d.IsWithin || d.Reading.Kind == BuiltKind.Part) && differences.Any(d => d.Reading.Kind != BuiltKind.Part);
        return new BuiltCheck(spec.Panel, differences, edges, !edges.IsEmpty ? BuiltFinding.Edges : forming ? BuiltFinding.Forming : BuiltFinding.Untold) { Either = either };
    }

    // Standard error of each length from the errors of the job's own readings; 0 where they have none, or are not carried.
    private static double[] Design(Job job, PanelInWork work, ImmutableArray<PanelInWork> net, Func<PanelDevelopment, double[]> lengths, int count, CancellationToken cancellation)
    {
        double[] none = new double[count];
        if (work.Panel.Error is null || count == 0) return none;
        PanelInWork[] own = [.. net.Where(p => p.Source.Name == work.Source.Name)];
        double[] asDrawn = lengths(own[0].Panel);
        var jobs = new MovedJobs(job, [.. own], cancellation) { Lengths = panel => [.. lengths(panel).Zip(asDrawn, (moved, drawn) => moved - drawn)] };
        int edges = jobs.Places(work.Source.Name).Count;
        double[] all = LinearErrors.Of(jobs, cancellation)[work.Source.Name].Standard;
        return [.. all[edges..].Select(e => double.IsFinite(e) ? e : 0)];
    }
}

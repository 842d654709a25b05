using System.Collections.Immutable;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Fitness;

namespace SurfaceUnroll.Jobs;

/// <summary>Runs a whole job: measured curves → sheets → blanks.</summary>
public static class Developer
{
    /// <summary>Develops every panel of a job.</summary>
    /// <param name="job">As read from its file.</param>
    /// <param name="progress">Told the name of each step as it begins.</param>
    /// <param name="cancellation">Stops between steps.</param>
    /// <returns>Panels and notices. Where a notice is an error the panels are left out and every fault found is listed.</returns>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public static Development Develop(Job job, IProgress<string>? progress = null, CancellationToken cancellation = default)
    {
        var notices = ImmutableArray.CreateBuilder<Notice>();
        var curves = new Dictionary<string, SpaceCurve>();
        foreach (NamedCurve named in job.Curves)
        {
            progress?.Report($"Measuring {named.Name}");
            CurveReading reading = MeasuredCurve.Build(named.Spec, $"curves.{named.Name}", job.Units);
            notices.AddRange(reading.Notices);
            if (reading.Curve is { } curve) curves[named.Name] = curve;
        }
        notices.AddRange(UnusedCurves(job));

        var panels = ImmutableArray.CreateBuilder<PanelDevelopment>();
        for (int i = 0; i < job.Panels.Length; i++)
        {
            PanelSpec spec = job.Panels[i];
            cancellation.ThrowIfCancellationRequested();
            if (spec.Mesh is not null) continue;
            if (!curves.TryGetValue(spec.Loft[0], out SpaceCurve? front) || !curves.TryGetValue(spec.Loft[^1], out SpaceCurve? rear)) continue;
            progress?.Report($"Developing {spec.Name}");
            (front, rear, Notice? turned) = Aligned(spec, front, rear);
            if (turned is not null) notices.Add(turned);
            PanelResult result = PanelDeveloper.Develop(job, spec, $"panels[{i}]", front, rear);
            notices.AddRange(result.Notices);
            if (result.Panel is { } panel) panels.Add(panel);
        }
        bool failed = notices.Any(n => n.Severity == Severity.Error);
        return new Development(job, failed ? [] : panels.ToImmutable(), notices.ToImmutable());
    }

    private static IEnumerable<Notice> UnusedCurves(Job job) =>
        job.Curves
            .Where(c => !job.Panels.Any(p => p.Loft.Contains(c.Name)))
            .Select(c => new Notice("curve-unused", Severity.Note, $"curves.{c.Name}", $"No panel uses the curve “{c.Name}”.", "Name it in a panel's loft, or leave it out."));

    // Turns round the curve that runs against left → right, or the rear one if that does not tell.
    private static (SpaceCurve Front, SpaceCurve Rear, Notice? Turned) Aligned(PanelSpec spec, SpaceCurve front, SpaceCurve rear)
    {
        if (!CurveDirection.Opposed(front, rear)) return (front, rear, null);
        bool turnFront = CurveDirection.Rightward(front) < 0 && CurveDirection.Rightward(rear) >= 0;
        string name = turnFront ? spec.Loft[0] : spec.Loft[^1];
        var notice = new Notice(
            "curve-turned-round", Severity.Note, $"curves.{name}",
            $"“{spec.Loft[0]}” and “{spec.Loft[^1]}” were measured in opposite directions; “{name}” was turned round.",
            "Nothing to do if that is right. To be rid of this note, list its points from left to right.");
        return turnFront ? (front.Reversed(), rear, notice) : (front, rear.Reversed(), notice);
    }
}

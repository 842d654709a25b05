using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Uncertainty;

/// <summary>All readings of a job that have an error.</summary>
internal static class JobReadings
{
    // Nobody reads more points than this one by one (common practice, no source): they were traced, and what is off is off smoothly.
    private const int MostPoints = 40;

    /// <summary>The job with the sections of scans, and long tables of points, as the lines that they come to, so that these can be moved like drawn ones; one that cannot be had stays.</summary>
    public static Job Drawn(Job job) => job with
    {
        Curves = [.. job.Curves.Select(c => IsLine(c.Spec) && c.Spec.Errors.Any && MeasuredCurve.Drawn(c.Spec, c.Name) is { } drawn ? c with { Spec = drawn } : c)],
    };

    private static bool IsLine(CurveSpec spec) => spec is SectionSpec or PointsSpec { Points.Length: > MostPoints } or PointsSpec { Traced: true };

    /// <summary>The readings, in the order of the job.</summary>
    public static ImmutableArray<Reading> Of(Job job) => [.. job.Curves.SelectMany(OfCurve), .. job.Panels.SelectMany(OfPanel)];

    private static IEnumerable<Reading> OfCurve(NamedCurve named, int index) =>
        CurveReadings.Of(named.Spec).Where(r => r.Error > 0).Select(r => new Reading($"curves.{named.Name}.{r.Part}", Words(r.Words, named.Name), r.Error, r.IsAngle,
            (job, by) => job with { Curves = job.Curves.SetItem(index, named with { Spec = r.Moved(job.Curves[index].Spec, by) }) })
        {
            Curve = named.Name,
        });

    private static IEnumerable<Reading> OfPanel(PanelSpec panel, int index)
    {
        if (panel.Bent is not { } bent) yield break;
        string where = $"panels[{CurveReadings.Count(index)}].bent";
        foreach (PartReading<BentSpec> r in PlateReadings.Of(bent).Where(r => r.Error > 0))
            yield return new Reading($"{where}.{r.Part}", Words(r.Words, panel.Name), r.Error, r.IsAngle, (job, by) => Changed(job, plate => r.Moved(plate, by))) { Panel = index };
        for (int k = 0; k < bent.Plan.Length; k++)
        {
            if (bent.Plan[k].Own is not { } own) continue;
            int at = k;
            foreach (PartReading<CurveSpec> r in CurveReadings.Of(own).Where(r => r.Error > 0))
            {
                yield return new Reading($"{where}.plan.{r.Part}", Words(r.Words.Replace("{0}", "the plan of {0}", StringComparison.Ordinal), panel.Name), r.Error, r.IsAngle,
                    (job, by) => Changed(job, plate => plate with { Plan = plate.Plan.SetItem(at, plate.Plan[at] with { Own = r.Moved(plate.Plan[at].Own!, by) }) }))
                {
                    Panel = index,
                };
            }
        }

        Job Changed(Job job, Func<BentSpec, BentSpec> change) =>
            job with { Panels = job.Panels.SetItem(index, job.Panels[index] with { Bent = change(job.Panels[index].Bent!) }) };
    }

    private static string Words(string words, string name) => string.Format(CultureInfo.InvariantCulture, words, $"“{name}”");
}

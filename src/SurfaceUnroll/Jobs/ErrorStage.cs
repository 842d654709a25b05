using System.Collections.Immutable;
using SurfaceUnroll.Uncertainty;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Jobs;

/// <summary>Carries the errors of the readings to the edges of the blanks. The method is told in docs/errors.md.</summary>
internal static class ErrorStage
{
    // Of the fallback: by themselves so many tell a standard error within 5 % (of a normal sample: 1/√(2n)), with the slopes as a control far better.
    private const int RandomJobs = 200;

    private const ulong Seed = 1;

    // A share of random jobs that cannot be developed from which the readings do not tell a band.
    private const double MostFailed = 0.05;

    /// <summary>True if any reading has an error.</summary>
    public static bool Any(Job job) => job.Curves.Any(c => Any(c.Spec)) || job.Panels.Any(p => p.Bent is { } bent && (bent.Errors.Any || bent.Plan.Any(c => c.Own is { } own && Any(own))));

    /// <summary>The panels with what errors do to them.</summary>
    /// <param name="job">The job.</param>
    /// <param name="panels">Net, trimmed.</param>
    /// <param name="notices">Where to say what was not in proportion, or not told.</param>
    /// <param name="cancellation">Stops between jobs.</param>
    public static ImmutableArray<PanelInWork> Of(Job job, ImmutableArray<PanelInWork> panels, ImmutableArray<Notice>.Builder notices, CancellationToken cancellation)
    {
        if (!Any(job)) return panels;
        var jobs = new MovedJobs(job, panels, cancellation);
        notices.AddRange(ErrorNotices.Split(panels).Concat(ErrorNotices.Moved(panels)));
        Dictionary<string, EdgeSlopes> slopes = LinearErrors.Of(jobs, cancellation);
        return [.. panels.Select(work => slopes.TryGetValue(work.Source.Name, out EdgeSlopes? own) && work.Panel.Piece is null ? work with { Panel = work.Panel with { Error = Error(work, own) } } : work)];

        BlankError? Error(PanelInWork work, EdgeSlopes own)
        {
            EdgePlaces places = jobs.Places(work.Source.Name);
            if (LinearErrors.Hold(own)) return BlankErrors(ErrorMethod.Linear, 0, places, own.Standard, own, jobs, job.Units);
            ImmutableArray<double[]?> moves = RandomErrors.Moves(jobs, work.Source.Name, RandomJobs, Seed, cancellation);
            double failed = moves.Count(m => m is null) / (double)moves.Length;
            notices.Add(failed > MostFailed ? ErrorNotices.NotTold(work, failed) : ErrorNotices.NotLinear(work));
            return failed > MostFailed ? null : BlankErrors(
                ErrorMethod.Random, failed, places, RandomErrors.Standard(moves, own, Seed), own, jobs, job.Units);
        }
    }

    private static bool Any(CurveSpec spec) => spec.Errors.Any || (spec is PlanSideSpec both && both.Plan.Errors.Any);

    private static BlankError BlankErrors(ErrorMethod method, double failed, EdgePlaces places, double[] standard, EdgeSlopes slopes, MovedJobs jobs, LengthUnit units)
    {
        int k = 0;
        ImmutableArray<BandPlace>[] rows = [.. places.Rows.Select(row => (ImmutableArray<BandPlace>)[.. row.Select(p => p with { Band = BlankError.Coverage * standard[k++] })])];
        ImmutableArray<EdgeError> edges = [.. rows.Zip(places.Names, (row, name) => new EdgeError(name, row, LeaveSteps.Of(row, units)))];
        return new BlankError(method, edges, [.. Shares(places, slopes, jobs)]) { Failed = failed };
    }

    // Of the variance of all edges, each place weighted by the length of edge that it stands for.
    private static IEnumerable<ReadingShare> Shares(EdgePlaces places, EdgeSlopes slopes, MovedJobs jobs)
    {
        double[] weights = [.. places.Weights], parts = [.. slopes.Slopes.Select(slope => slope.Zip(weights, (move, weight) => weight * move * move).Sum())];
        string[] names = [.. places.Rows.Zip(places.Names, (row, name) => Enumerable.Repeat(name, row.Length)).SelectMany(n => n)];
        double total = parts.Sum();
        return slopes.Readings.Select((number, i) =>
        {
            Reading reading = jobs.Readings[number];
            int most = Enumerable.Range(0, names.Length).MaxBy(p => Math.Round(Math.Abs(slopes.Slopes[i][p]), 6));
            return new ReadingShare(reading.Where, reading.Words, reading.Error, reading.IsAngle, total > 0 ? parts[i] / total : 0, Math.Abs(slopes.Slopes[i][most]), names[most]);
        }).OrderByDescending(r => Math.Round(r.Share, 6));
    }
}

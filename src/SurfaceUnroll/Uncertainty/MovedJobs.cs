using System.Collections.Immutable;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Uncertainty;

/// <summary>Develops a job with some of its readings off, and says how far the edges of its pieces move.</summary>
internal sealed class MovedJobs
{
    private readonly Job _job;

    private readonly CancellationToken _cancellation;

    private readonly ImmutableDictionary<string, EdgePlaces> _places;

    private readonly ImmutableDictionary<string, SharedEnds> _ends;

    /// <summary>The job as it stands.</summary>
    /// <param name="job">The job.</param>
    /// <param name="panels">Its net panels, trimmed.</param>
    /// <param name="cancellation">Stops between jobs.</param>
    public MovedJobs(Job job, ImmutableArray<PanelInWork> panels, CancellationToken cancellation)
    {
        _cancellation = cancellation;
        // Where a slit stands was settled once, and so it stays.
        _job = JobReadings.Drawn(job) with
        {
            Joints = [],
            Openings = [],
            Panels = [.. job.Panels.Select(spec => spec with
            {
                Openings = [],
                Slits = panels.FirstOrDefault(p => p.Source.Name == spec.Name)?.Panel is { Piece: null } panel ? [.. panel.Slits.Select(s => new SlitSpec(s.Edge, s.At, s.Depth))] : spec.Slits,
            })],
        };
        Readings = JobReadings.Of(_job);
        Dictionary<string, SpaceCurve> curves = Developer.Measured(_job, null, ImmutableArray.CreateBuilder<Notice>());
        _ends = _job.Panels.ToImmutableDictionary(p => p.Name, p => new SharedEnds(p.CurveNames.Distinct(), curves));
        // Where a curve that a freedom moved lies does not follow from its readings one by one.
        Func<PanelSpec, bool> moved = MovedCurves.Reach(panels);
        _places = panels.Where(p => p.Panel.Piece is null && !moved(p.Source) && Of(p.Source.Name).Any()).ToImmutableDictionary(p => p.Source.Name, p => new EdgePlaces(p.Panel));
    }

    /// <summary>By how much lengths of a piece change that are asked for besides, mm; none if left out.</summary>
    public Func<PanelDevelopment, double[]> Lengths { get; init; } = _ => [];

    /// <summary>All readings with an error, in the order of the job.</summary>
    public ImmutableArray<Reading> Readings { get; }

    /// <summary>Names of the panels that depend on any of them, split ones left out: their seams are chosen anew for every job.</summary>
    public IEnumerable<string> Panels => _job.Panels.Select(p => p.Name).Where(_places.ContainsKey);

    /// <summary>Places along the edges of a panel.</summary>
    public EdgePlaces Places(string panel) => _places[panel];

    /// <summary>Numbers of the readings that a panel depends on.</summary>
    public IEnumerable<int> Of(string panel) => Enumerable.Range(0, Readings.Length).Where(i => Touched(Readings[i]).Contains(panel));

    /// <summary>How far the edges of panels move where some readings are off.</summary>
    /// <param name="off">Numbers of the readings, and by how much each is off.</param>
    /// <param name="wanted">The panels that are asked for.</param>
    /// <returns>By panel, the changes of lengths behind the places; a panel that cannot be developed so, or gets other edges, is left out.</returns>
    public Dictionary<string, double[]> Moves(IEnumerable<(int Reading, double By)> off, IReadOnlyCollection<string> wanted)
    {
        _cancellation.ThrowIfCancellationRequested();
        Job moved = off.Aggregate(_job, (job, reading) => Readings[reading.Reading].Moved(job, reading.By));
        ImmutableArray<PanelInWork> panels = Developer.Net(Only(moved, wanted), (panel, curves) => _ends[panel.Name].Closed(curves), _cancellation);
        var moves = new Dictionary<string, double[]>();
        foreach (string name in wanted)
        {
            if (panels.FirstOrDefault(p => p.Source.Name == name) is { } work && _places[name].Moves(work.Panel) is { } own) moves[name] = [.. own, .. Lengths(work.Panel)];
        }
        return moves;
    }

    /// <summary>Panels of <see cref="Panels"/> that a reading moves: those made of its curve, and those trimmed by them.</summary>
    public HashSet<string> Touched(Reading reading)
    {
        HashSet<string> touched = [.. _job.Panels.Where((p, i) => i == reading.Panel || (reading.Curve is { } curve && p.CurveNames.Contains(curve))).Select(p => p.Name)];
        // A trim goes by a panel as it is before any trim of its own.
        touched.UnionWith([.. _job.Panels.Where(p => p.Trims.Any(t => t.By is { } by && touched.Contains(by))).Select(p => p.Name)]);
        return touched;
    }

    // Those panels, what trims them, and their curves.
    private static Job Only(Job job, IReadOnlyCollection<string> wanted)
    {
        HashSet<string> needed = [.. wanted, .. job.Panels.Where(p => wanted.Contains(p.Name)).SelectMany(p => p.Trims).Select(t => t.By).OfType<string>()];
        ImmutableArray<PanelSpec> panels = [.. job.Panels.Where(p => needed.Contains(p.Name)).Select(p => wanted.Contains(p.Name) ? p : p with { Trims = [] })];
        HashSet<string> curves = [.. panels.SelectMany(p => p.CurveNames)];
        return job with { Panels = panels, Curves = [.. job.Curves.Where(c => curves.Contains(c.Name))] };
    }
}

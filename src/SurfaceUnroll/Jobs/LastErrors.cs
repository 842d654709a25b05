using System.Collections.Immutable;
using SurfaceUnroll.Uncertainty;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Jobs;

/// <summary>What errors did to the edges of a job that has been changed a little since: taken over until it is worked out anew.</summary>
/// <param name="last">What was developed last; null: nothing is known yet.</param>
internal sealed class LastErrors(Development? last)
{
    /// <summary>How finished pieces compared.</summary>
    public ImmutableArray<BuiltCheck> Built => last?.Built ?? [];

    /// <summary>The panels with the bands that they had, at the same shares of their edges.</summary>
    /// <param name="panels">Net, trimmed.</param>
    /// <param name="units">Of the job.</param>
    /// <param name="notices">Where to say again what was said of errors and of finished pieces.</param>
    public ImmutableArray<PanelInWork> Over(ImmutableArray<PanelInWork> panels, LengthUnit units, ImmutableArray<Notice>.Builder notices)
    {
        notices.AddRange((last?.Notices ?? []).Where(n => ErrorNotices.IsOne(n) || BuiltNotices.IsOne(n)));
        return [.. panels.Select(p => p.Panel.Piece is null ? p with { Panel = p.Panel with { Error = Over(p.Panel, units) } } : p)];
    }

    // Of a panel that is new no band is known; so that an allowance which follows it is not refused, it is none.
    private BlankError? Over(PanelDevelopment panel, LengthUnit units)
    {
        PanelDevelopment? before = last?.Panels.FirstOrDefault(p => p.Spec.Name == panel.Spec.Name && p.Piece is null);
        if (before is { Error: null }) return null;
        var places = new EdgePlaces(panel);
        var edges = ImmutableArray.CreateBuilder<EdgeError>();
        foreach ((string name, ImmutableArray<BandPlace> row) in places.Names.Zip(places.Rows))
        {
            EdgeError? own = before?.Error?.Edges.Where(e => e.Name == name).Skip(edges.Count(e => e.Name == name)).FirstOrDefault();
            ImmutableArray<BandPlace> banded = [.. row.Select(p => p with { Band = own is null ? 0 : Band(own.Places, p.At / row[^1].At) })];
            edges.Add(new EdgeError(name, banded, LeaveSteps.Of(banded, units)));
        }
        return before?.Error is { } error ? error with { Edges = edges.ToImmutable() } : new BlankError(ErrorMethod.Linear, edges.ToImmutable(), []);
    }

    // At a share of the edge, between the places that were asked in proportion.
    private static double Band(ImmutableArray<BandPlace> places, double share)
    {
        double at = share * places[^1].At;
        int i = 1;
        while (i < places.Length - 1 && places[i].At < at) i++;
        double part = Math.Clamp((at - places[i - 1].At) / Math.Max(places[i].At - places[i - 1].At, 1e-9), 0, 1);
        return places[i - 1].Band + part * (places[i].Band - places[i - 1].Band);
    }
}

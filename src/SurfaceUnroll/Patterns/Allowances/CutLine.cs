using System.Collections.Immutable;
using NetTopologySuite.Geometries;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Allowances;

/// <summary>A net outline with its allowances.</summary>
/// <param name="Outline">Cut line, counter-clockwise, simple.</param>
/// <param name="Inner">Cut lines round gaps that allowances enclose, clockwise.</param>
/// <param name="OverPiece">Edges whose allowance would lie on the piece itself.</param>
/// <param name="Meeting">Pairs of edges whose allowances would lie on each other.</param>
internal sealed record CutLine(ImmutableArray<Vec2> Outline, ImmutableArray<ImmutableArray<Vec2>> Inner, ImmutableArray<string> OverPiece, ImmutableArray<(string, string)> Meeting)
{
    // An enclosed gap smaller than this, mm², is no gap to cut.
    private const double SmallestGap = 1;

    // Share of a band that may lie on other metal at a corner before it is told.
    private const double MostOverlap = 0.02;

    /// <summary>The cut line of a panel's outline.</summary>
    /// <param name="panel">Its net outline and edges.</param>
    /// <param name="allowances">By edge.</param>
    /// <param name="notches">Taken out of the allowances.</param>
    /// <param name="thickness">Of the sheet, mm.</param>
    /// <returns>Null if what is taken off leaves nothing.</returns>
    public static CutLine? Of(PanelDevelopment panel, IReadOnlyDictionary<string, RunAllowance> allowances, IEnumerable<LipNotch> notches, double thickness)
    {
        ImmutableArray<NetRun> runs = NetRing.Of(panel);
        RunAllowance[] given = [.. runs.Select(r => r.Edge is { } edge ? allowances.GetValueOrDefault(edge, RunAllowance.None) : RunAllowance.None)];
        return Of(Polygons.Of(panel.Net), runs, given, notches, thickness);
    }

    /// <summary>The cut line of an opening: the same, with the metal outside.</summary>
    /// <param name="edge">Net edge, clockwise, so that the metal lies on its left.</param>
    /// <param name="allowance">Along the whole of it.</param>
    /// <param name="notches">Taken out of the allowance.</param>
    /// <returns>Clockwise; empty if the allowance closes the opening.</returns>
    public static ImmutableArray<Vec2> OfOpening(ImmutableArray<Vec2> edge, RunAllowance allowance, IEnumerable<LipNotch> notches)
    {
        ImmutableArray<Vec2> closed = [.. edge, edge[0]];
        Vec2 before = -(edge[0] - edge[^1]).Unit.Left, after = -(edge[1] - edge[0]).Unit.Left;
        var band = Polygons.Union([.. AllowanceBands.Along(closed, allowance), .. AllowanceBands.Corner(edge[0], before, after, allowance, allowance)]);
        foreach (LipNotch notch in notches) band = Polygons.Without(band, Polygons.Of(notch.Outline));
        NetTopologySuite.Geometries.Geometry hole = Polygons.Of(edge);
        hole = allowance.Width > 0 ? Polygons.Without(hole, band) : Polygons.Union([hole, band]);
        return Polygons.Parts(hole) is [var largest, ..] ? Polygons.Turned(Polygons.Outline(largest), counterClockwise: false) : [];
    }

    private static CutLine? Of(Polygon net, ImmutableArray<NetRun> runs, RunAllowance[] given, IEnumerable<LipNotch> notches, double thickness)
    {
        var added = new List<(string Edge, NetTopologySuite.Geometries.Geometry Band)>();
        var taken = new List<NetTopologySuite.Geometries.Geometry>();
        var corners = new List<NetTopologySuite.Geometries.Geometry>();
        for (int i = 0; i < runs.Length; i++)
        {
            int next = (i + 1) % runs.Length;
            ImmutableArray<Vec2> path = runs[i].Path;
            if (given[i].Width != 0)
            {
                NetTopologySuite.Geometries.Geometry band = Polygons.Union([.. AllowanceBands.Along(path, given[i])]);
                int previous = (i + runs.Length - 1) % runs.Length;
                foreach (Polygon? taper in new[] { Corner(previous, AllowanceBands.Taper), Corner(i, AllowanceBands.Taper) })
                    if (taper is not null) band = Polygons.Without(band, taper);
                if (given[i].Width > 0) added.Add((runs[i].Edge!, band));
                else taken.Add(band);
            }
            (Math.Min(given[i].Width, given[next].Width) < 0 ? taken : corners).AddRange(Corner(i, AllowanceBands.Corner));
            if (Corner(i, (at, before, after, first, second) => Relief(at, before, after, first, second, thickness)) is { } relief) taken.Add(relief);
        }

        // What a rule makes of the corner at the end of a run.
        T Corner<T>(int run, Func<Vec2, Vec2, Vec2, RunAllowance, RunAllowance, T> rule)
        {
            int after = (run + 1) % runs.Length;
            (ImmutableArray<Vec2> path, ImmutableArray<Vec2> onward) = (runs[run].Path, runs[after].Path);
            return rule(path[^1], -(path[^1] - path[^2]).Unit.Left, -(onward[1] - onward[0]).Unit.Left, given[run], given[after]);
        }
        (ImmutableArray<string> over, ImmutableArray<(string, string)> meeting) = Overlaps(net, runs, added);
        NetTopologySuite.Geometries.Geometry region = Polygons.Union([net, .. added.Select(a => a.Band), .. corners]);
        taken.AddRange(notches.Select(n => Polygons.Of(n.Outline)));
        if (taken.Count > 0) region = Polygons.Without(region, Polygons.Union(taken));
        if (Polygons.Parts(region) is not [var whole, ..]) return null;
        return new CutLine(BlankOutline.Closed(Polygons.Outline(whole)), [.. Polygons.Holes(whole).Where(h => -Polygons.SignedArea(h) > SmallestGap)], over, meeting);
    }

    // Two lips at an inner corner are parted by a notch along the bisector, or they could not both be bent.
    private static Polygon? Relief(Vec2 at, Vec2 before, Vec2 after, RunAllowance first, RunAllowance second, double thickness)
    {
        double turn = AllowanceBands.Turn(before, after);
        if (turn > -0.15 || first.Width <= 0 || second.Width <= 0 || (first.Kind != JointKind.Lip && second.Kind != JointKind.Lip)) return null;
        double half = Math.Max(1, thickness), reach = 2 * Math.Max(first.Width, second.Width) / Math.Max(0.2, Math.Cos(0.5 * turn));
        Vec2 outward = (before + after).Unit, side = outward.Left;
        return Polygons.Of([at - half * side, at - half * side + reach * outward, at + half * side + reach * outward, at + half * side]);
    }

    private static (ImmutableArray<string>, ImmutableArray<(string, string)>) Overlaps(
        Polygon net, ImmutableArray<NetRun> runs, List<(string Edge, NetTopologySuite.Geometries.Geometry Band)> added)
    {
        var over = ImmutableArray.CreateBuilder<string>();
        var meeting = ImmutableArray.CreateBuilder<(string, string)>();
        for (int i = 0; i < added.Count; i++)
        {
            if (Polygons.Shared(added[i].Band, net).Area > MostOverlap * added[i].Band.Area) over.Add(added[i].Edge);
            for (int j = i + 1; j < added.Count; j++)
            {
                bool neighbours = Enumerable.Range(0, runs.Length).Any(k =>
                    (runs[k].Edge, runs[(k + 1) % runs.Length].Edge) is var (a, b) && ((a == added[i].Edge && b == added[j].Edge) || (a == added[j].Edge && b == added[i].Edge)));
                double bears = (neighbours ? 0.5 : MostOverlap) * Math.Min(added[i].Band.Area, added[j].Band.Area);
                if (Polygons.Shared(added[i].Band, added[j].Band).Area > bears) meeting.Add((added[i].Edge, added[j].Edge));
            }
        }
        return (over.ToImmutable(), meeting.ToImmutable());
    }
}

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
/// <param name="LeftOver">Number of separate parts that what is taken off leaves besides the largest.</param>
internal sealed record CutLine(
    ImmutableArray<Vec2> Outline, ImmutableArray<ImmutableArray<Vec2>> Inner, ImmutableArray<string> OverPiece, ImmutableArray<(string, string)> Meeting, int LeftOver)
{
    // A smaller part, mm², is a scrap of rounding.
    private const double SmallestPart = 1e-3;

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
    /// <param name="opening">Its net edge runs clockwise, so that the metal lies on its left.</param>
    /// <param name="allowance">Along the whole of it.</param>
    /// <param name="notches">Taken out of the allowance.</param>
    /// <param name="thickness">Of the sheet, mm.</param>
    /// <returns>Clockwise; empty if the allowance closes the opening, or its own parts run into each other.</returns>
    public static ImmutableArray<Vec2> OfOpening(BlankOpening opening, RunAllowance allowance, IEnumerable<LipNotch> notches, double thickness)
    {
        ImmutableArray<NetRun> runs = NetRing.OfOpening(opening.Name, opening.Flat);
        Changes changes = Changes.Of(runs, [.. runs.Select(_ => allowance)], notches, thickness);
        if (!Overlaps(Polygons.Empty, runs, changes.Bands).Item2.IsEmpty) return [];
        NetTopologySuite.Geometries.Geometry hole = Polygons.Without(Polygons.Of(opening.Flat), changes.LeftOn);
        return Polygons.Parts(Polygons.Union([hole, changes.Taken]), SmallestPart) is [var whole] ? Polygons.Turned(Polygons.Outline(whole), counterClockwise: false) : [];
    }

    private static CutLine? Of(Polygon net, ImmutableArray<NetRun> runs, RunAllowance[] given, IEnumerable<LipNotch> notches, double thickness)
    {
        Changes changes = Changes.Of(runs, given, notches, thickness);
        (ImmutableArray<string> over, ImmutableArray<(string, string)> meeting) = Overlaps(net, runs, changes.Bands);
        NetTopologySuite.Geometries.Geometry region = Polygons.Without(Polygons.Union([net, changes.LeftOn]), changes.Taken);
        IReadOnlyList<Polygon> parts = Polygons.Parts(region, SmallestPart);
        if (parts is not [var whole, ..]) return null;
        return new CutLine(BlankOutline.Closed(Polygons.Outline(whole)), [.. Polygons.Holes(whole).Where(h => -Polygons.SignedArea(h) > SmallestGap)], over, meeting, parts.Count - 1);
    }

    // What allowances do to a region.
    private sealed record Changes(ImmutableArray<(int Run, NetTopologySuite.Geometries.Geometry Band)> Bands, NetTopologySuite.Geometries.Geometry LeftOn, NetTopologySuite.Geometries.Geometry Taken)
    {
        public static Changes Of(ImmutableArray<NetRun> runs, RunAllowance[] given, IEnumerable<LipNotch> notches, double thickness)
        {
            var bands = ImmutableArray.CreateBuilder<(int, NetTopologySuite.Geometries.Geometry)>();
            var corners = new List<NetTopologySuite.Geometries.Geometry>();
            var taken = new List<NetTopologySuite.Geometries.Geometry>(notches.Select(n => Polygons.Of(n.Outline)));
            for (int i = 0; i < runs.Length; i++)
            {
                AllowanceCorner start = Corner((i + runs.Length - 1) % runs.Length), end = Corner(i);
                IEnumerable<Polygon> along = given[i].Width == 0 ? [] : AllowanceBands.Along(given[i].Varying?.Parted(runs[i].Path) ?? runs[i].Path, given[i]);
                if (given[i].Width > 0) bands.Add((i, Polygons.Without(Polygons.Union([.. along]), Polygons.Union([.. new[] { start.SecondLoses, end.FirstLoses }.OfType<Polygon>()]))));
                else taken.AddRange(along);
                if (end.Filling() is { } filling) (end.First.Width < 0 ? taken : corners).Add(filling);
                taken.AddRange(end.RunOn());
                if (end.Relief(thickness) is { } relief) taken.Add(relief);
            }
            return new Changes(bands.ToImmutable(), Polygons.Union([.. bands.Select(b => b.Item2), .. corners]), Polygons.Union(taken));

            AllowanceCorner Corner(int run)
            {
                int next = (run + 1) % runs.Length;
                (ImmutableArray<Vec2> path, ImmutableArray<Vec2> onward) = (runs[run].Path, runs[next].Path);
                return new AllowanceCorner(path[^1], -(path[^1] - path[^2]).Unit.Left, -(onward[1] - onward[0]).Unit.Left, given[run].At(path[^1]), given[next].At(onward[0]));
            }
        }
    }

    private static (ImmutableArray<string>, ImmutableArray<(string, string)>) Overlaps(
        NetTopologySuite.Geometries.Geometry net, ImmutableArray<NetRun> runs, ImmutableArray<(int Run, NetTopologySuite.Geometries.Geometry Band)> bands)
    {
        var over = new List<string>();
        var meeting = new List<(string, string)>();
        for (int i = 0; i < bands.Length; i++)
        {
            (int run, NetTopologySuite.Geometries.Geometry band) = bands[i];
            if (Polygons.Shared(band, net).Area > MostOverlap * band.Area) over.Add(runs[run].Edge!);
            for (int j = i + 1; j < bands.Length; j++)
            {
                int apart = bands[j].Run - run;
                double bears = (apart == 1 || apart == runs.Length - 1 ? 0.5 : MostOverlap) * Math.Min(band.Area, bands[j].Band.Area);
                if (Polygons.Shared(band, bands[j].Band).Area > bears) meeting.Add((runs[run].Edge!, runs[bands[j].Run].Edge!));
            }
        }
        return ([.. over.Distinct()], [.. meeting.Distinct()]);
    }
}

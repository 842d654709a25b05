using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns;

/// <summary>What a piece shows of its joints: finished edges under allowances, and match marks with their labels.</summary>
internal static class JointDrawing
{
    // A finished edge closer to the cut line, or to a bend all along, would run into it on paper, mm.
    private const double Blot = 1;

    // Length of a tick on a piece of ordinary size, on the smallest, and as a share of the size between, mm.
    private const double LongestTick = 6, ShortestTick = 1.5, TickShare = 0.05;

    // A tick is broken by a notch; what is left of it is drawn if it is longer than a dot, mm.
    private const double Dot = 0.3;

    private static readonly ImmutableArray<double> Between = [.. Enumerable.Range(2, 17).Select(i => i / 20.0)];

    /// <summary>The finished edges that lie apart from the cut line, each once.</summary>
    public static IEnumerable<Stroke> NetEdges(PanelDevelopment panel)
    {
        foreach (string name in panel.Allowances.Where(a => Math.Abs(a.Width) >= Blot).Select(a => a.Edge).Distinct(StringComparer.Ordinal))
        {
            // A trim may leave two parts of an edge, both of its name.
            BlankEdge[] edges = [.. panel.Edges.Where(e => e.Name == name && e.Flat.Length > 1)];
            foreach (BlankEdge edge in edges.Where(e => !LiesOnBend(panel, e))) yield return Open(edge.Flat);
            if (edges.Length == 0 && panel.Openings.FirstOrDefault(o => o.Name == name) is { } opening) yield return new Stroke(Role.Net, opening.Flat, Closed: true);
        }
    }

    /// <summary>Ticks across the finished edge: inward, and outward over the allowance, so that they are seen when a lip is bent.</summary>
    public static IEnumerable<Stroke> Ticks(PanelDevelopment panel, CutOutline outline) =>
        from mark in panel.Marks
        from part in outline.Inside([Foot(panel, mark), Head(panel, mark)])
        where (part[^1] - part[0]).Length > Dot
        select new Stroke(Role.Mark, part);

    /// <summary>The marks at both ends of each joint, then the others.</summary>
    public static (ImmutableArray<MatchMark> Ends, ImmutableArray<MatchMark> Others) InOrder(PanelDevelopment panel)
    {
        HashSet<MatchMark> ends = [.. panel.Marks.GroupBy(m => (m.Joint, m.Edge)).SelectMany(g => new[] { g.MinBy(m => m.Number)!, g.MaxBy(m => m.Number)! })];
        return ([.. panel.Marks.Where(ends.Contains)], [.. panel.Marks.Where(m => !ends.Contains(m))]);
    }

    /// <summary>Choices for the label of a mark: beyond its tick, deeper, and beside the tick.</summary>
    public static IEnumerable<Lettering> Labels(PanelDevelopment panel, MatchMark mark, double height)
    {
        string text = JointWords.Label(mark);
        double width = PageTextWidth.Of(text, height), reach = 0.5 * (Math.Abs(mark.Inward.X) * width + Math.Abs(mark.Inward.Y) * height);
        Vec2 head = Head(panel, mark), along = mark.Inward.Left;
        double sideways = 0.5 * (Math.Abs(along.X) * width + Math.Abs(along.Y) * height) + 0.8 * height;
        // The tick first, then places beside it, then farther in.
        Vec2[] places =
        [
            head + (reach + 0.5 * height) * mark.Inward,
            head + sideways * along, head - sideways * along,
            head + (reach + 0.5 * height) * mark.Inward + 0.7 * sideways * along, head + (reach + 0.5 * height) * mark.Inward - 0.7 * sideways * along,
            head + (reach + 1.8 * height) * mark.Inward,
        ];
        // The middle of the letters stands at the place, not their baseline.
        return places.Select(at => new Lettering(Role.Mark, text, at - new Vec2(0, 0.5 * height), height, 0, Anchor.Middle));
    }

    // Along the edge from its first point to its last; a rim, which ends where it begins, is closed.
    private static Stroke Open(ImmutableArray<Vec2> line) =>
        line.Length > 3 && line[0] == line[^1] ? new Stroke(Role.Net, line[..^1], Closed: true) : new Stroke(Role.Net, line);

    // All along but at its ends, before which a lip may stop.
    private static bool LiesOnBend(PanelDevelopment panel, BlankEdge edge) => panel.Bends
        .Where(b => b.Lip == edge.Name).SelectMany(b => b.Tangents.Append(b.Centre)).Where(line => line.Length > 1)
        .Any(line => Between.All(share => DrawingPlaces.Distance(DrawingPlaces.On(edge.Flat, share).At, line) < Blot));

    private static Vec2 Foot(PanelDevelopment panel, MatchMark mark) => mark.Flat - panel.AllowanceAt(mark) * mark.Inward;

    private static Vec2 Head(PanelDevelopment panel, MatchMark mark)
    {
        Box box = Box.Around(panel.Cut);
        double tick = Math.Clamp(TickShare * Math.Min(box.Width, box.Height), ShortestTick, LongestTick);
        return mark.Flat + (tick + Math.Max(0, -panel.AllowanceAt(mark))) * mark.Inward;
    }
}

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

    // How far a tick leans at a corner, radians, and how deep its head must lie in the metal to be seen beside the cut line, as a share of its length.
    private static readonly ImmutableArray<double> Leans = [.. new[] { 0.0, 20, -20, 35, -35, 50, -50, 65, -65 }.Select(degrees => degrees * Math.PI / 180)];

    private const double LeastClear = 0.3;

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

    /// <summary>Ticks across the finished edge: inward, and outward over the allowance, so that they are seen when a lip is bent. At a corner, where a tick
    /// would lie on the edge round it, it leans to the metal.</summary>
    public static IEnumerable<Stroke> Ticks(PanelDevelopment panel, CutOutline outline) =>
        from mark in panel.Marks
        from part in outline.Inside(Tick(panel, outline, mark))
        where (part[^1] - part[0]).Length > Dot
        select new Stroke(Role.Mark, part);

    /// <summary>The marks at both ends of each joint, then the others.</summary>
    public static (ImmutableArray<MatchMark> Ends, ImmutableArray<MatchMark> Others) InOrder(PanelDevelopment panel)
    {
        HashSet<MatchMark> ends = [.. panel.Marks.GroupBy(m => (m.Joint, m.Edge)).SelectMany(g => new[] { g.MinBy(m => m.Number)!, g.MaxBy(m => m.Number)! })];
        return ([.. panel.Marks.Where(ends.Contains)], [.. panel.Marks.Where(m => !ends.Contains(m))]);
    }

    /// <summary>Choices for the label of a mark: beyond its tick, deeper, and beside the tick.</summary>
    public static IEnumerable<Lettering> Labels(PanelDevelopment panel, CutOutline outline, MatchMark mark, double height)
    {
        string text = JointWords.Label(mark);
        double width = PageTextWidth.Of(text, height), reach = 0.5 * (Math.Abs(mark.Inward.X) * width + Math.Abs(mark.Inward.Y) * height);
        Vec2 head = Tick(panel, outline, mark)[^1], along = mark.Inward.Left;
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

    // From the cut line over the finished edge inward: straight, or at a corner with a knee on the finished edge.
    private static ImmutableArray<Vec2> Tick(PanelDevelopment panel, CutOutline outline, MatchMark mark)
    {
        Box box = Box.Around(panel.Cut);
        double tick = Math.Clamp(TickShare * Math.Min(box.Width, box.Height), ShortestTick, LongestTick), allowance = panel.AllowanceAt(mark);
        double inward = tick + Math.Max(0, -allowance), outward = Math.Max(0, allowance);
        double lean = Lean(outline, mark, inward);
        if (lean == 0) return [mark.Flat - allowance * mark.Inward, mark.Flat + inward * mark.Inward];
        Vec2 head = mark.Flat + inward * mark.Inward.Rotate(lean);
        return outward > 0 ? [mark.Flat - outward * mark.Inward.Rotate(-lean), mark.Flat, head] : [mark.Flat, head];
    }

    // The least lean at which the tick stands clear of every cut line; the best of them in a corner too narrow for that.
    private static double Lean(CutOutline outline, MatchMark mark, double inward)
    {
        double Clear(double lean) => outline.Depth(mark.Flat + inward * mark.Inward.Rotate(lean));
        return Clear(0) >= LeastClear * inward ? 0
            : Leans.Select(lean => (Lean: lean, Depth: Clear(lean))).OrderBy(l => l.Depth >= LeastClear * inward ? 0 : 1).ThenBy(l => l.Depth >= LeastClear * inward ? Math.Abs(l.Lean) : -l.Depth).First().Lean;
    }
}

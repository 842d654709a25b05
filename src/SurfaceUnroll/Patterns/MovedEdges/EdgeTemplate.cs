using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.MovedEdges;

/// <summary>The 1:1 template of a moved edge, for the part that it meets: the edge, closed by a straight line, and the edge as it was measured.</summary>
internal static class EdgeTemplate
{
    // A template is at least so deep, mm: paper that is held by its rim.
    private const double LeastDepth = 40;

    // Cap heights of titles and numbers, length of a tick and white beside it, mm.
    private const double Title = 4, Label = 2.5, Tick = 4, Gap = 1.5;

    // Largest gap between both ends of an edge that closes by itself, mm.
    private const double Closed = 0.01;

    /// <summary>Draws it.</summary>
    /// <param name="panel">The panel, with the curve that was moved.</param>
    /// <param name="fit">How.</param>
    /// <param name="job">For names and units.</param>
    public static Drawing Of(PanelDevelopment panel, FreedomFit fit, Job job)
    {
        var places = new EdgePlaces(fit);
        (ImmutableArray<Vec2> outline, Vec2 inward) = Outline(places.Edge);
        var cut = new CutOutline(outline);
        var room = new LetteringRoom(cut);
        Stroke[] ticks = [.. places.Numbered.Select(p => new Stroke(Role.Mark, [p.Is, p.Is + Tick * Inward(places, p, cut, inward)]))];
        foreach (Stroke tick in ticks) room.Reserve(tick.Points, Label);
        ImmutableArray<Vec2>[] measured = [.. places.Measured()];
        foreach (ImmutableArray<Vec2> run in measured) room.Reserve(run, Label);
        for (int i = 0; i < places.Numbered.Length; i++)
        {
            EdgePlace place = places.Numbered[i];
            Vec2 end = ticks[i].Points[1], way = (end - place.Is).Unit;
            string text = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{place.Number}   {place.Words(job.Units)}");
            double width = PageTextWidth.Of(text, Label), turned = Math.Atan2(way.Y, way.X);
            bool back = way.X < 0;
            room.TakeFirst(new[] { Gap, Gap + Tick, Gap + 3 * Tick }.Select(gap => new Lettering(
                Role.Note, text, end + (gap + (back ? width : 0)) * way + 0.5 * Label * (back ? 1 : -1) * way.Left, Label, back ? turned + Math.PI : turned)));
        }
        Box box = Box.Around(outline);
        string[] titles = [$"{panel.Spec.Name}: {fit.Spec.Curve} as moved", job.Name, "chain line: as measured"];
        for (int i = 0; i < titles.Length; i++)
        {
            double height = i == 0 ? Title : Label;
            string title = titles[i];
            room.TakeFirst(Enumerable.Range(0, 12).Select(k => new Lettering(Role.Note, title, new Vec2(box.Centre.X, box.Min.Y + (0.5 - 0.04 * k) * box.Height), height, 0, Anchor.Middle)));
        }
        return new Drawing(
            $"{panel.Spec.Name}, {fit.Spec.Curve} as moved – {job.Name}",
            [new Stroke(Role.Cut, outline, true), .. measured.Select(run => new Stroke(Role.Element, run)), .. ticks],
            room.Taken);
    }

    // The edge and a straight line from end to end; where that leaves too little paper, a strip along the chord.
    private static (ImmutableArray<Vec2> Outline, Vec2 Inward) Outline(ImmutableArray<Vec2> edge)
    {
        Vec2 first = edge[0], last = edge[^1], chord = last - first;
        if (chord.Length < Closed) return (edge[..^1], Vec2.Zero);
        Vec2 up = chord.Unit.Left;
        double[] heights = [.. edge.Select(p => (p - first).Dot(up))];
        double highest = heights.Max(), lowest = heights.Min();
        // Away from where the edge bulges.
        double sign = highest >= -lowest ? -1 : 1, depth = Math.Max(highest, -lowest);
        if (depth >= LeastDepth) return (edge, sign * up);
        Vec2 down = (LeastDepth + Math.Min(highest, -lowest)) * sign * up;
        return ([.. edge, last + down, first + down], sign * up);
    }

    // Into the paper, square to the edge.
    private static Vec2 Inward(EdgePlaces places, EdgePlace place, CutOutline cut, Vec2 fallback)
    {
        Vec2 along = (places.Edge.MinBy(p => (p - place.Is).Length) is var near && places.Edge.IndexOf(near) is var i
            ? places.Edge[Math.Min(i + 1, places.Edge.Length - 1)] - places.Edge[Math.Max(i - 1, 0)] : fallback.Left).Unit;
        return cut.Depth(place.Is + along.Left) > 0 ? along.Left : -1 * along.Left;
    }
}

using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Drawings.ShopSheet;

/// <summary>The formed piece with its letters, numbered lines and edges, fitted to a box.</summary>
internal static class FormedArt
{
    // Round the piece for its words, what a facet is grown by so that no seam shows to its neighbour, and the dot of a tape letter, mm.
    private const double Rim = 11, Seam = 0.07, DotRadius = 0.9;

    /// <summary>Millimetres on the page to one of the piece.</summary>
    public static double ScaleIn(Box room, FormedView view) =>
        Math.Min((room.Width - 2 * Rim) / Math.Max(1, view.Bounds.Width), (room.Height - 2 * Rim) / Math.Max(1, view.Bounds.Height));

    /// <summary>Draws one piece.</summary>
    public static ImmutableArray<PagePart> Draw(Box room, FormedView view, PanelDevelopment panel, FormingPlan plan)
    {
        double scale = ScaleIn(room, view);
        Vec2 Place(Vec2 p) => room.Centre + scale * (p - view.Bounds.Centre);
        Vec2 Stand(Vec3 p) => Place(view.Project(p));
        var labels = new SheetLabels(room);
        (TapeMark Mark, Vec2 At, bool Hidden)[] marks = [.. plan.Marks.Select(m => (m, Stand(m.Formed), view.Hides(m.Formed)))];
        foreach ((_, Vec2 at, _) in marks) labels.Reserve(at, DotRadius);
        foreach ((TapeMark mark, Vec2 at, bool hidden) in marks) labels.Beside(hidden ? $"({mark.Letter})" : mark.Letter, at, at - room.Centre, SheetSizes.Letter, 1.6);
        foreach ((string name, Vec2 at) in Edges(panel, Stand)) labels.Beside(name.ToUpperInvariant(), at, at - room.Centre, SheetSizes.Small, 2);
        foreach (ElementLine line in panel.Elements.Where(e => e.Number > 0 && e.Length > 0))
        {
            // At the end that is seen.
            (Vec3 end, Vec3 other) = view.Hides(line.FormedFront) ? (line.FormedRear, line.FormedFront) : (line.FormedFront, line.FormedRear);
            if (!view.Hides(end)) labels.Beyond(line.Number.ToString(CultureInfo.InvariantCulture), Stand(end), Stand(end) - Stand(other), SheetSizes.Small, 1.2);
        }
        return
        [
            .. Paint(view, Place),
            .. marks.Where(m => !m.Hidden).Select(m => SheetLabels.Dot(m.At, DotRadius)),
            .. marks.Where(m => m.Hidden).Select(m => new PageLine(Pen.Fine, SheetLabels.Circle(m.At, DotRadius), Closed: true)),
            .. labels.Texts,
        ];
    }

    /// <summary>The shapes, lines as narrow strips among the facets so that what is nearer hides them.</summary>
    public static IEnumerable<PageFill> Paint(FormedView view, Func<Vec2, Vec2> place)
    {
        List<ImmutableArray<Vec2>> alike = [];
        double grey = 0;
        foreach (FormedShape shape in view.Shapes)
        {
            ImmutableArray<Vec2> points = [.. shape.Points.Select(place)];
            // Facets of one grey are painted as one: neighbours leave no seam.
            if (alike.Count > 0 && (shape.LineWidth > 0 || shape.Grey != grey)) yield return Joined();
            if (shape.LineWidth == 0)
            {
                // All loops run one way round, or two that overlap would leave a hole.
                alike.Add(Grown(Turn(points) < 0 ? [.. points.Reverse()] : points));
                grey = shape.Grey;
                continue;
            }
            for (int i = 0; i + 1 < points.Length; i++)
            {
                Vec2 along = 0.5 * shape.LineWidth * (points[i + 1] - points[i]).Unit, side = along.Left;
                if (along == Vec2.Zero) continue;
                yield return new PageFill([points[i] - along - side, points[i + 1] + along - side, points[i + 1] + along + side, points[i] - along + side], shape.Grey);
            }
        }
        if (alike.Count > 0) yield return Joined();

        PageFill Joined()
        {
            var fill = new PageFill(alike[0], grey) { More = [.. alike.Skip(1)] };
            alike.Clear();
            return fill;
        }
    }

    // Every side moved outward; at a sharp corner no farther than a few times as much.
    private static ImmutableArray<Vec2> Grown(ImmutableArray<Vec2> loop) =>
    [
        .. loop.Select((p, i) =>
        {
            Vec2 before = -(p - loop[(i + loop.Length - 1) % loop.Length]).Unit.Left, after = -(loop[(i + 1) % loop.Length] - p).Unit.Left;
            return p + Seam / Math.Max(0.35, 1 + before.Dot(after)) * (before + after);
        }),
    ];

    // Twice the area, positive counter-clockwise, mm².
    private static double Turn(ImmutableArray<Vec2> loop) => Enumerable.Range(0, loop.Length).Sum(i => loop[i].Cross(loop[(i + 1) % loop.Length]));

    // The middle of each edge.
    private static IEnumerable<(string Name, Vec2 At)> Edges(PanelDevelopment panel, Func<Vec3, Vec2> stand) =>
        panel.Mesh.Chains.Where(c => c.Vertices.Length > 1 && panel.FindEdge(c.Name) is not null).Select(c => (c.Name, stand(panel.Mesh.Formed[c.Vertices[c.Vertices.Length / 2]])));
}

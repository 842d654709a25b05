using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;

namespace SurfaceUnroll.Drawings.ShopSheet;

/// <summary>The blank with its letters, lines, bends, openings and grain, fitted to a box. Not to scale: the pattern is.</summary>
internal static class FlatArt
{
    private const double Rim = 11, DotRadius = 0.9;

    // How long the arrow of the grain is as a part of the blank, its length at most, and its head, mm.
    private const double GrainPart = 0.3, LongestGrain = 30, GrainHead = 2.6;

    // Where along a bend its words may stand, the best first.
    private static readonly ImmutableArray<double> BendShares = [0.5, 0.35, 0.65, 0.2, 0.8];

    /// <summary>Millimetres on the page to one of the blank.</summary>
    public static double ScaleIn(Box room, PanelDevelopment panel)
    {
        Box all = Box.Around(panel.Cut);
        return Math.Min((room.Width - 2 * Rim) / all.Width, (room.Height - 2 * Rim) / all.Height);
    }

    /// <summary>Draws it.</summary>
    public static ImmutableArray<PagePart> Draw(Box room, PanelDevelopment panel, FormingPlan plan, Job job)
    {
        Box all = Box.Around(panel.Cut);
        double scale = ScaleIn(room, panel);
        Vec2 Place(Vec2 p) => room.Centre + scale * (p - all.Centre);
        ImmutableArray<Vec2> Run(IEnumerable<Vec2> points) => [.. points.Select(Place)];
        var outline = CutOutline.Of(panel);
        var labels = new SheetLabels(room);
        (TapeMark Mark, Vec2 At)[] marks = [.. plan.Marks.Select(m => (m, Place(m.Flat)))];
        foreach ((_, Vec2 at) in marks) labels.Reserve(at, DotRadius);
        foreach ((TapeMark mark, Vec2 at) in marks) labels.Beside(mark.Letter, at, at - room.Centre, SheetSizes.Letter, 1.6);
        ImmutableArray<PagePart> grain = [.. Grain(panel, plan.Grain, outline, Place, scale, labels)];
        foreach (BendLine bend in panel.Bends.Where(b => b.Centre.Length > 1)) Bend(labels, bend, Run(bend.Centre));
        foreach (StretchStep step in plan.Stretch) labels.Beside("×" + Number(step.Number), Place(step.Flat), new Vec2(0, 1), SheetSizes.Small, 1.5);
        foreach (ElementLine line in panel.Elements.Where(e => e.Number > 0 && e.Length > 0)) labels.Beyond(Number(line.Number), Place(line.Front), Place(line.Front) - Place(line.Rear), SheetSizes.Small, 1.2);
        foreach (BlankEdge edge in panel.Edges.Where(e => e.FlatLength > 0)) Edge(labels, edge, Place, room);
        foreach (OpeningGroup group in OpeningGroup.Of(panel, job)) labels.Beside(group.Name, Place(group.First.Centre), new Vec2(0, 1), SheetSizes.Small, 1.5);
        ElementLine[] inner = [.. PatternDrawing.Inner(panel)];
        return
        [
            new PageLine(Pen.Wide, Run(panel.Cut), Closed: true),
            .. panel.Openings.Select(o => o.Cut).Concat(panel.InnerCuts).Select(loop => new PageLine(Pen.Narrow, Run(loop), Closed: true)),
            .. panel.Bends.Where(b => b.Centre.Length > 1).Select(b => new PageLine(Pen.NarrowDashed, Run(b.Centre))),
            .. inner.SelectMany(line => outline.Inside(line.Path)).Select(path => new PageLine(Pen.Fine, Run(path))),
            .. plan.Stretch.SelectMany(s => Crossed(Place(s.Flat))),
            .. marks.Select(m => SheetLabels.Dot(m.At, DotRadius)),
            .. grain,
            .. labels.Texts,
        ];
    }

    private static string Number(int n) => n.ToString(CultureInfo.InvariantCulture);

    private static IEnumerable<PageLine> Crossed(Vec2 at) =>
        new[] { new Vec2(1.2, 0), new Vec2(0, 1.2) }.Select(arm => new PageLine(Pen.Narrow, [at - arm, at + arm]));

    // Beside the middle of the bend, or farther along it.
    private static void Bend(SheetLabels labels, BendLine bend, ImmutableArray<Vec2> line)
    {
        Vec2 middle = line[line.Length / 2], side = (line[^1] - line[0]).Left;
        _ = BendShares.Any(share => labels.Beside(
            $"bend {BendWords.Label(bend)} {BendWords.Way(bend)}", line.Length > 2 && share == 0.5 ? middle : Vec2.Lerp(line[0], line[^1], share), side, SheetSizes.Small, 1.2));
    }

    // Off the middle of the edge, away from the metal.
    private static void Edge(SheetLabels labels, BlankEdge edge, Func<Vec2, Vec2> place, Box room)
    {
        Vec2 middle = place(edge.Flat[edge.Flat.Length / 2]);
        if (edge.Flat.Length == 2) middle = 0.5 * (place(edge.Flat[0]) + place(edge.Flat[1]));
        labels.Beside(edge.Name.ToUpperInvariant(), middle, middle - room.Centre, SheetSizes.Small, 2.2);
    }

    // Two heads: the grain has no sense. Where there is least drawn: on the metal, clear of holes and of other words.
    private static IEnumerable<PagePart> Grain(PanelDevelopment panel, GrainAdvice grain, CutOutline outline, Func<Vec2, Vec2> place, double scale, SheetLabels labels)
    {
        if (grain.Along == Vec2.Zero) yield break;
        Box box = Box.Around(panel.Cut);
        double half = 0.5 * Math.Min(LongestGrain / scale, GrainPart * Math.Max(Math.Min(box.Width, box.Height), Math.Min(box.Width * Math.Abs(grain.Along.X), box.Height * Math.Abs(grain.Along.Y))));
        Vec2 along = grain.Along.Unit;
        double Clear(Vec2 p) => new[] { p, p + half * along, p - half * along }.Min(outline.Depth);
        Vec2 at = (from i in Enumerable.Range(1, 9)
                   from j in Enumerable.Range(1, 9)
                   let p = box.Min + new Vec2(i * 0.1 * box.Width, j * 0.1 * box.Height)
                   orderby Math.Min(Clear(p), 6 / scale) descending, (p - box.Centre).Length
                   select p).First();
        Vec2 from = place(at - half * along), to = place(at + half * along), way = (to - from).Unit;
        labels.Reserve(from, to, 1);
        yield return new PageLine(Pen.Narrow, [from, to]);
        foreach ((Vec2 tip, Vec2 back) in new[] { (to, -way), (from, way) })
            yield return new PageFill([tip, tip + GrainHead * back + 0.35 * GrainHead * back.Left, tip + GrainHead * back - 0.35 * GrainHead * back.Left], 0);
        labels.Beside("GRAIN", 0.5 * (from + to), way.Left, SheetSizes.Small, 1.4);
    }
}

using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns.Strain;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Patterns;

/// <summary>The drawing of one blank: cut line, numbered element lines, centreline and words. Nothing is drawn twice.</summary>
public static class PatternDrawing
{
    // Cap heights (mm) on a piece of ordinary size; on a small one they shrink with it, down to the smallest that prints legibly.
    private const double LabelHeight = 2.5, TitleHeight = 4, SmallestHeight = 1.2;

    // The centreline runs past the outline by this, as ISO 128 has it, mm.
    private const double CentreOverrun = 4;

    // A line this close to another (mm) is the same line on paper.
    private const double SameLine = 0.05;

    // Two lines this close all the way (mm) run into each other on paper.
    private const double Blot = 1.5;

    /// <summary>Draws a panel's blank in the frame of its flat coordinates.</summary>
    /// <param name="panel">The developed panel.</param>
    /// <param name="job">For names, material and units.</param>
    public static Drawing Of(PanelDevelopment panel, Job job)
    {
        Box bounds = Box.Around(panel.Cut);
        double size = Math.Min(bounds.Width, bounds.Height);
        double label = Math.Clamp(0.02 * size, SmallestHeight, LabelHeight);
        var outline = new CutOutline(panel.Cut);
        ElementLine[] drawn = [.. Inner(panel)];
        // Beside an element line that runs almost along it the centreline would only blot it.
        Stroke? centre = CentreLine(panel) is { } middle && !drawn.Any(line => LiesOn(line, middle, Blot) && !LiesOn(line, middle, SameLine)) ? middle : null;
        ImmutableArray<StrainContour> contours = panel.DrawnMap is { } map ? StrainContours.Of(panel.Mesh, map) : [];
        Stroke[] arrow = [.. ForwardArrow(Middle(panel) + new Vec2(-4 * label, 0), 6 * label)];
        ImmutableArray<Stroke> strokes =
        [
            new Stroke(Role.Cut, panel.Cut, Closed: true),
            .. drawn.Where(line => centre is null || !LiesOn(line, centre, SameLine)).SelectMany(line => LineStrokes(line, panel, outline)),
            .. centre is null ? [] : new[] { centre },
            .. StrainContours.ContourStrokes(contours),
            .. panel.Slits.Where(slit => slit.Width < 0).SelectMany(OverlapMarks),
            .. arrow.SelectMany(s => s.Points).All(p => outline.Depth(p) > label) ? arrow : [],
        ];

        // The words of most weight choose their places first.
        var room = new LetteringRoom(outline);
        _ = Titles(panel, job, Math.Clamp(0.02 * size, SmallestHeight, TitleHeight)).Any(room.TakeAll);
        foreach (IEnumerable<Lettering> choices in LineLabels(drawn, front: true, label, job.Units)) room.TakeFirst(choices);
        foreach (IEnumerable<Lettering> choices in LineLabels(drawn, front: false, label, job.Units)) room.TakeFirst(choices);
        foreach (BlankEdge edge in panel.Edges) room.TakeFirst(EdgeNames(edge, label));
        foreach (SlitOpening slit in panel.Slits) room.TakeFirst(SlitWords(slit, label, job.Units));
        foreach (IEnumerable<Lettering> choices in StrainContours.LabelChoices(contours, label)) room.TakeFirst(choices);
        return new Drawing($"{panel.Spec.Name} – {job.Name}", strokes, room.Taken);
    }

    /// <summary>Material and thickness. Thin sheet goes by decimals of an inch: 1/64 is too coarse for it.</summary>
    internal static string SheetText(Job job)
    {
        double thickness = job.Sheet.Thickness;
        if (thickness <= 0) return job.Sheet.Material;
        string text = job.Units == LengthUnit.Inch
            ? (thickness / ShopLength.MillimetresPerInch).ToString("0.0##", CultureInfo.InvariantCulture) + " in"
            : ShopLength.Print(thickness, job.Units, 2);
        return $"{job.Sheet.Material} {text}";
    }

    /// <summary>Numbered element lines inside the outline: the end lines are part of the cut line.</summary>
    internal static IEnumerable<ElementLine> Inner(PanelDevelopment panel) =>
        panel.Elements.Where((e, i) => e.Number > 0 && i > 0 && i < panel.Elements.Length - 1);

    // A line is broken where a relief cut opens, and left out where it runs along one.
    private static IEnumerable<Stroke> LineStrokes(ElementLine line, PanelDevelopment panel, CutOutline outline)
    {
        if (panel.Slits.IsEmpty)
        {
            yield return new Stroke(Role.Element, line.Path);
            yield break;
        }
        var run = ImmutableArray.CreateBuilder<Vec2>();
        for (int i = 0; i + 1 < line.Path.Length; i++)
        {
            bool inside = outline.Depth(0.5 * (line.Path[i] + line.Path[i + 1])) > SameLine;
            if (inside && run.Count == 0) run.Add(line.Path[i]);
            if (inside) run.Add(line.Path[i + 1]);
            if (run.Count > 0 && (!inside || i + 2 == line.Path.Length))
            {
                yield return new Stroke(Role.Element, run.ToImmutable());
                run.Clear();
            }
        }
    }

    // From the middle of the front edge, at the origin, straight down to the middle of the rear edge.
    private static Stroke? CentreLine(PanelDevelopment panel)
    {
        if (panel.FindEdge("front") is null) return null;
        (Vec2 front, Vec2 rear) = CentreEnds(panel);
        Vec2 along = (rear - front).Unit;
        return along == Vec2.Zero ? null : new Stroke(Role.Centre, [front - CentreOverrun * along, rear + CentreOverrun * along]);
    }

    private static bool LiesOn(ElementLine line, Stroke centre, double within)
    {
        Vec2 along = (centre.Points[1] - centre.Points[0]).Unit;
        return line.Path.All(p => Math.Abs((p - centre.Points[0]).Cross(along)) < within);
    }

    private static IEnumerable<Stroke> ForwardArrow(Vec2 tip, double length)
    {
        yield return new Stroke(Role.Mark, [tip - new Vec2(0, length), tip]);
        yield return new Stroke(Role.Mark, [tip + new Vec2(-0.15 * length, -0.3 * length), tip, tip + new Vec2(0.15 * length, -0.3 * length)]);
    }

    // Number and bend radius beside each line near one of its ends, written along the line; the number alone where there is no room for both.
    // Where lines crowd together some go without.
    private static IEnumerable<IEnumerable<Lettering>> LineLabels(ElementLine[] lines, bool front, double height, LengthUnit units)
    {
        Vec2? last = null;
        foreach (ElementLine line in lines)
        {
            Vec2 along = (line.Rear - line.Front).Unit;
            string number = line.Number.ToString(CultureInfo.InvariantCulture);
            string[] texts = [$"{number}  {RadiusText(front ? line.BendRadiusFront : line.BendRadiusRear, units)}", number];
            double inset = 2 * height;
            Vec2 at = front ? line.Front + inset * along : line.Rear - inset * along;
            if (last is { } before && Math.Abs((at - before).Cross(along)) < 1.6 * height) continue;
            last = at;
            // Read from the right-hand side of the page: the text runs up the line and stands on its left.
            Vec2 up = along.Y <= 0 ? -along : along;
            Anchor anchor = front == along.Y <= 0 ? Anchor.Right : Anchor.Left;
            yield return texts.Select(text => new Lettering(Role.Element, text, at + 0.4 * height * up.Left, height, Math.Atan2(up.Y, up.X), anchor));
        }
    }

    internal static string RadiusText(double radius, LengthUnit units) => radius switch
    {
        double.PositiveInfinity => "flat",
        0 => "point",
        // Beyond ten metres no shop roll tells the bend from a flat.
        > 10_000 => "flat",
        _ => "R " + ShopLength.PrintNumber(radius, units, 0),
    };

    // The name of an edge inside the piece, off the middle of the edge so that it stands clear of the centreline, and deeper in where labels are in its way.
    private static IEnumerable<Lettering> EdgeNames(BlankEdge edge, double height)
    {
        if (edge.Flat.Length < 2 || edge.FlatLength <= 0) yield break;
        foreach (double depth in new[] { 2.5, 5, 8, 12, 16 })
        {
            foreach (double fraction in new[] { 0.56, 0.44, 0.66, 0.34 })
            {
                (Vec2 at, Vec2 along) = PlaceOn(edge.Flat, fraction);
                // Front runs left to right and rear too; left and right run front to rear.
                Vec2 inward = edge.Name is "front" or "right" ? -along.Left : along.Left;
                double angle = Upright(Math.Atan2(along.Y, along.X));
                // The middle of the letters, not their baseline, stands at the depth.
                Vec2 baseline = at + depth * height * inward - 0.5 * height * Vec2.FromAngle(angle).Left;
                yield return new Lettering(Role.Note, edge.Name.ToUpperInvariant(), baseline, height, angle, Anchor.Middle);
            }
        }
    }

    // The words in the middle, from the whole of them at full size down to the name alone at the smallest; where even that has no room, the margins of
    // the paper say it all.
    private static IEnumerable<IReadOnlyCollection<Lettering>> Titles(PanelDevelopment panel, Job job, double height)
    {
        string[] whole = [panel.Spec.Name, job.Name, SheetText(job), "OUTSIDE FACE UP"];
        foreach (string[] lines in new[] { whole, [whole[0], whole[3]], [whole[0]] })
        {
            for (double h = height; h >= 0.999 * SmallestHeight; h = h > SmallestHeight ? Math.Max(SmallestHeight, 0.75 * h) : 0)
            {
                foreach (double fraction in new[] { 0.45, 0.3, 0.65 })
                {
                    Vec2 top = PlaceOnCentre(panel, fraction) + new Vec2(h, 0.85 * lines.Length * h);
                    yield return [.. lines.Select((line, i) => new Lettering(Role.Note, line, top - new Vec2(0, 1.7 * (i + 1) * h), h))];
                }
            }
        }
    }

    private static Vec2 PlaceOnCentre(PanelDevelopment panel, double fraction)
    {
        (Vec2 front, Vec2 rear) = CentreEnds(panel);
        return Vec2.Lerp(front, rear, fraction);
    }

    // The middles of front and rear; of a piece that has none, the top and the bottom of its box.
    private static (Vec2 Front, Vec2 Rear) CentreEnds(PanelDevelopment panel)
    {
        if (panel.FindEdge("front") is { } front && panel.FindEdge("rear") is { } rear) return (HalfWay(front.Flat), HalfWay(rear.Flat));
        Box box = Box.Around(panel.Cut);
        return (new Vec2(box.Centre.X, box.Max.Y), new Vec2(box.Centre.X, box.Min.Y));
    }

    // A relief cut whose sides overlap on the blank is one cut between them; both sides are marks.
    private static IEnumerable<Stroke> OverlapMarks(SlitOpening slit) =>
        [new Stroke(Role.Cut, [slit.Start, slit.Tip]), new Stroke(Role.Mark, [slit.Mouth.Near, slit.Tip]), new Stroke(Role.Mark, [slit.Mouth.Far, slit.Tip])];

    // Width of a relief cut beside its tip.
    private static IEnumerable<Lettering> SlitWords(SlitOpening slit, double height, LengthUnit units)
    {
        string text = (slit.Width >= 0 ? "opens " : "overlaps ") + ShopLength.Print(Math.Abs(slit.Width), units, 1);
        foreach (double side in new[] { 1.5, -2.5, 4, -5 })
            foreach (Anchor anchor in new[] { Anchor.Left, Anchor.Right, Anchor.Middle })
                yield return new Lettering(Role.Note, text, slit.Tip + new Vec2(anchor == Anchor.Left ? height : anchor == Anchor.Right ? -height : 0, side * height), height, 0, anchor);
    }

    // Half way down the centreline.
    private static Vec2 Middle(PanelDevelopment panel) => PlaceOnCentre(panel, 0.45);

    /// <summary>The place half way along a line.</summary>
    internal static Vec2 HalfWay(ImmutableArray<Vec2> line) => PlaceOn(line, 0.5).At;

    private static (Vec2 At, Vec2 Along) PlaceOn(ImmutableArray<Vec2> line, double fraction)
    {
        double total = 0, walked = 0;
        for (int i = 1; i < line.Length; i++) total += (line[i] - line[i - 1]).Length;
        for (int i = 1; i < line.Length; i++)
        {
            double step = (line[i] - line[i - 1]).Length;
            if (walked + step >= fraction * total && step > 0)
                return (Vec2.Lerp(line[i - 1], line[i], (fraction * total - walked) / step), (line[i] - line[i - 1]).Unit);
            walked += step;
        }
        return (line[^1], Vec2.Zero);
    }

    // Read from below or from the right: turned by half a turn if the text would stand on its head or run down the page.
    private static double Upright(double angle)
    {
        double cos = Math.Cos(angle);
        return cos < -1e-9 || (cos <= 1e-9 && Math.Sin(angle) < 0) ? angle + Math.PI : angle;
    }
}

using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Patterns;

/// <summary>The drawing of one blank: cut line, numbered element lines, centreline and words. Nothing is drawn twice.</summary>
public static class PatternDrawing
{
    // Cap heights (mm) on a piece of ordinary size; on a small one they shrink with it, down to the smallest that prints legibly.
    private const double LabelHeight = 2.5, TitleHeight = 4, SmallestHeight = 0.8;

    // The centreline runs past the outline by this, as ISO 128 has it, mm.
    private const double CentreOverrun = 4;

    // A line this close to another (mm) is the same line on paper.
    private const double SameLine = 0.05;

    /// <summary>Draws a panel's blank in the frame of its flat coordinates.</summary>
    /// <param name="panel">The developed panel.</param>
    /// <param name="job">For names, material and units.</param>
    public static Drawing Of(PanelDevelopment panel, Job job)
    {
        double size = Math.Min(Box.Around(panel.Cut).Width, Box.Around(panel.Cut).Height);
        double label = Math.Clamp(0.02 * size, SmallestHeight, LabelHeight);
        var strokes = ImmutableArray.CreateBuilder<Stroke>();
        strokes.Add(new Stroke(Role.Cut, panel.Cut, Closed: true));
        Stroke? centre = CentreLine(panel);
        ElementLine[] drawn = [.. Inner(panel)];
        foreach (ElementLine line in drawn)
        {
            if (centre is null || !LiesOn(line, centre)) strokes.Add(new Stroke(Role.Element, [line.Front, line.Rear]));
        }
        if (centre is not null) strokes.Add(centre);
        Vec2 arrow = Middle(panel) + new Vec2(-4 * label, 0);
        strokes.AddRange(ForwardArrow(arrow, 6 * label));

        var letterings = ImmutableArray.CreateBuilder<Lettering>();
        letterings.AddRange(LineLabels(drawn, front: true, label, job.Units));
        letterings.AddRange(LineLabels(drawn, front: false, label, job.Units));
        letterings.AddRange(EdgeNames(panel, label));
        letterings.AddRange(Title(panel, job, Math.Clamp(0.02 * size, SmallestHeight, TitleHeight)));
        return new Drawing($"{panel.Spec.Name} – {job.Name}", strokes.ToImmutable(), letterings.ToImmutable());
    }

    /// <summary>Numbered element lines inside the outline: the end lines are part of the cut line.</summary>
    internal static IEnumerable<ElementLine> Inner(PanelDevelopment panel) =>
        panel.Elements.Where((e, i) => e.Number > 0 && i > 0 && i < panel.Elements.Length - 1);

    // From the middle of the front edge, at the origin, straight down to the middle of the rear edge.
    private static Stroke? CentreLine(PanelDevelopment panel)
    {
        Vec2 front = HalfWay(panel.Edges[0].Flat), rear = HalfWay(panel.Edges[2].Flat);
        Vec2 along = (rear - front).Unit;
        return along == Vec2.Zero ? null : new Stroke(Role.Centre, [front - CentreOverrun * along, rear + CentreOverrun * along]);
    }

    private static bool LiesOn(ElementLine line, Stroke centre)
    {
        Vec2 along = (centre.Points[1] - centre.Points[0]).Unit;
        return Math.Abs((line.Front - centre.Points[0]).Cross(along)) < SameLine && Math.Abs((line.Rear - centre.Points[0]).Cross(along)) < SameLine;
    }

    private static IEnumerable<Stroke> ForwardArrow(Vec2 tip, double length)
    {
        yield return new Stroke(Role.Mark, [tip - new Vec2(0, length), tip]);
        yield return new Stroke(Role.Mark, [tip + new Vec2(-0.15 * length, -0.3 * length), tip, tip + new Vec2(0.15 * length, -0.3 * length)]);
    }

    // Number and bend radius beside each line near one of its ends, written along the line. Where lines crowd together some go without.
    private static IEnumerable<Lettering> LineLabels(ElementLine[] lines, bool front, double height, LengthUnit units)
    {
        Vec2? last = null;
        foreach (ElementLine line in lines)
        {
            Vec2 along = (line.Rear - line.Front).Unit;
            string text = $"{line.Number.ToString(CultureInfo.InvariantCulture)}  {RadiusText(front ? line.BendRadiusFront : line.BendRadiusRear, units)}";
            double inset = 2 * height, room = (line.Rear - line.Front).Length - 2 * inset;
            if (room < 2 * PageTextWidth.Of(text, height)) text = line.Number.ToString(CultureInfo.InvariantCulture);
            if (room < 2 * PageTextWidth.Of(text, height)) continue;
            Vec2 at = front ? line.Front + inset * along : line.Rear - inset * along;
            if (last is { } before && Math.Abs((at - before).Cross(along)) < 1.6 * height) continue;
            last = at;
            // Read from the right-hand side of the page: the text runs up the line and stands on its left.
            Vec2 up = along.Y <= 0 ? -along : along;
            bool anchorsTop = front == along.Y <= 0;
            yield return new Lettering(Role.Element, text, at + 0.4 * height * up.Left, height, Math.Atan2(up.Y, up.X), anchorsTop ? Anchor.Right : Anchor.Left);
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

    private static IEnumerable<Lettering> EdgeNames(PanelDevelopment panel, double height)
    {
        foreach (BlankEdge edge in panel.Edges)
        {
            string text = edge.Name.ToUpperInvariant();
            if (edge.FlatLength < 3 * PageTextWidth.Of(text, height) || edge.Flat.Length < 2) continue;
            // A little off the middle, clear of the centreline.
            (Vec2 at, Vec2 along) = PlaceOn(edge.Flat, edge.Name is "front" or "rear" ? 0.56 : 0.5);
            Vec2 inward = edge.Name is "front" or "left" ? -along.Left : along.Left;
            if (edge.Name is "left" or "right") inward = edge.Name == "left" ? along.Left : -along.Left;
            double angle = Math.Atan2(along.Y, along.X);
            double depth = edge.Name is "front" or "rear" ? 14 * height : 3 * height;
            yield return new Lettering(Role.Note, text, at + depth * inward, height, Upright(angle), Anchor.Middle);
        }
    }

    private static IEnumerable<Lettering> Title(PanelDevelopment panel, Job job, double height)
    {
        string sheet = job.Sheet.Thickness > 0 ? $"{job.Sheet.Material}  {ShopLength.Print(job.Sheet.Thickness, job.Units, 2)}" : job.Sheet.Material;
        string[] lines = [panel.Spec.Name, job.Name, sheet, "OUTSIDE FACE UP"];
        Vec2 at = Middle(panel) + new Vec2(height, 0);
        foreach (string line in lines)
        {
            at -= new Vec2(0, 1.7 * height);
            yield return new Lettering(Role.Note, line, at, height);
        }
    }

    // Half way down the centreline.
    private static Vec2 Middle(PanelDevelopment panel) => Vec2.Lerp(HalfWay(panel.Edges[0].Flat), HalfWay(panel.Edges[2].Flat), 0.45);

    private static Vec2 HalfWay(ImmutableArray<Vec2> line) => PlaceOn(line, 0.5).At;

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

    // Turned by half a turn if the text would stand on its head.
    private static double Upright(double angle) => Math.Cos(angle) < -1e-9 ? angle + Math.PI : angle;
}

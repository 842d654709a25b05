using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns;

/// <summary>The lines of a blank: cut lines, element lines, centreline, relief cuts and the forward arrow.</summary>
internal static class PatternLines
{
    // The centreline runs past the outline by this, as ISO 128 has it, mm.
    private const double CentreOverrun = 4;

    /// <summary>A line this close to another is the same line on paper, mm.</summary>
    public const double SameLine = 0.05;

    // Two lines this close all the way (mm) run into each other on paper.
    private const double Blot = 1.5;

    // How far along a part of an element line it is compared with another line.
    private static readonly ImmutableArray<double> LineShares = [0, 0.25, 0.5, 0.75, 1];

    // How far along the arrow it is made sure that it lies on metal.
    private static readonly ImmutableArray<double> ArrowShares = [0, 0.25, 0.5, 0.75, 1];

    /// <summary>Every line along which the piece is cut out: the outer one first, then openings, then gaps that allowances close round.</summary>
    public static IEnumerable<Stroke> Cuts(PanelDevelopment panel) =>
    [
        new Stroke(Role.Cut, panel.Cut, Closed: true),
        .. panel.Openings.Select(o => new Stroke(Role.Cut, o.Cut, Closed: true)),
        .. panel.InnerCuts.Select(loop => new Stroke(Role.Cut, loop, Closed: true)),
    ];

    /// <summary>Element lines, then the centreline, broken where they would cross a hole or where a tick lies on them.</summary>
    public static IEnumerable<Stroke> Lengthwise(PanelDevelopment panel, ElementLine[] drawn, CutOutline outline, Stroke[] ticks)
    {
        // Beside an element line that runs almost along it the centreline would only blot it.
        Stroke? centre = CentreLine(panel) is { } middle && !drawn.Any(line => LiesOn(line, middle, Blot) && !LiesOn(line, middle, SameLine)) ? middle : null;
        IEnumerable<Stroke> whole = drawn.Where(line => centre is null || !LiesOn(line, centre, SameLine)).SelectMany(line => LineStrokes(line, panel, outline));
        return Broken([.. whole, .. centre is null ? [] : new[] { centre }], outline).SelectMany(stroke => BesideTicks(stroke, ticks));
    }

    /// <summary>Open strokes without what would cross a hole.</summary>
    public static IEnumerable<Stroke> Broken(IEnumerable<Stroke> strokes, CutOutline outline) =>
        strokes.SelectMany(stroke => outline.BesideHoles(stroke.Points).Select(part => stroke with { Points = part }));

    /// <summary>Open strokes with gaps where words stand on them, so that the words can be read in every output.</summary>
    public static IEnumerable<Stroke> BesideWords(IReadOnlyCollection<Stroke> strokes, ImmutableArray<Lettering> words)
    {
        TextOutline[] places = [.. words.Select(TextOutline.Of)];
        foreach (Stroke stroke in strokes)
        {
            ImmutableArray<Vec2> path = stroke.Closed ? [.. stroke.Points, stroke.Points[0]] : stroke.Points;
            Box box = Box.Around(path);
            ImmutableArray<Vec2>[] near = [.. places.Where(p => Meet(p.Bounds, box)).Select(p => p.Corners)];
            ImmutableArray<ImmutableArray<Vec2>> parts = near.Length == 0 ? [path] : new CutOutline([]) { Holes = [.. near] }.BesideHoles(path);
            if (parts.Length == 1 && parts[0].Length == path.Length && parts[0][0] == path[0] && parts[0][^1] == path[^1]) yield return stroke;
            else foreach (ImmutableArray<Vec2> part in parts) yield return stroke with { Points = part, Closed = false };
        }
    }

    private static bool Meet(Box a, Box b) => a.Min.X <= b.Max.X && b.Min.X <= a.Max.X && a.Min.Y <= b.Max.Y && b.Min.Y <= a.Max.Y;

    /// <summary>True if all of an element line lies on another line to within some millimetres.</summary>
    public static bool RunsAlong(ElementLine line, ImmutableArray<Vec2> other, double within) => other.Length > 1 && Enumerable.Range(1, line.Path.Length - 1)
        .All(i => LineShares.All(share => DrawingPlaces.Distance(Vec2.Lerp(line.Path[i - 1], line.Path[i], share), other) < within));

    // A mark in the middle of an edge stands on the centreline: nothing is drawn twice.
    private static List<Stroke> BesideTicks(Stroke stroke, Stroke[] ticks)
    {
        if (stroke.Points.Length > 2 || ticks.Length == 0) return [stroke];
        (Vec2 start, Vec2 along) = (stroke.Points[0], (stroke.Points[1] - stroke.Points[0]).Unit);
        double end = (stroke.Points[1] - start).Length, from = 0;
        var parts = new List<Stroke>();
        foreach ((double first, double last) in ticks.Where(t => t.Points.All(p => Math.Abs((p - start).Cross(along)) < SameLine))
            .Select(t => (t.Points.Min(p => (p - start).Dot(along)), t.Points.Max(p => (p - start).Dot(along)))).Order())
        {
            Add(from, Math.Min(first, end));
            from = Math.Max(from, last);
        }
        if (from == 0) return [stroke];
        Add(from, end);
        return parts;

        void Add(double a, double b)
        {
            if (b - a > SameLine) parts.Add(stroke with { Points = [start + a * along, start + b * along] });
        }
    }

    /// <summary>A relief cut whose sides overlap on the blank is one cut between them; both sides are marks.</summary>
    public static IEnumerable<Stroke> OverlapMarks(SlitOpening slit) =>
        [new Stroke(Role.Cut, [slit.Start, slit.Tip]), new Stroke(Role.Mark, [slit.Mouth.Near, slit.Tip]), new Stroke(Role.Mark, [slit.Mouth.Far, slit.Tip])];

    /// <summary>The forward arrow, to the left of the first of some places at which all of it lies on metal and clear of other things; else none.</summary>
    public static Stroke[] ForwardArrow(IEnumerable<Vec2> places, double label, CutOutline outline, Func<Vec2, bool> taken)
    {
        foreach (Vec2 place in places)
        {
            Stroke[] arrow = [.. Arrow(place + new Vec2(-4 * label, 0), 6 * label)];
            IEnumerable<Vec2> along = arrow.SelectMany(s => s.Points.Skip(1).SelectMany((p, i) => ArrowShares.Select(share => Vec2.Lerp(s.Points[i], p, share))));
            if (along.All(p => outline.Depth(p) > label && !taken(p))) return arrow;
        }
        return [];
    }

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

    // From the middle of the front edge, at the origin, straight down to the middle of the rear edge, and past the cut line where metal is left on.
    private static Stroke? CentreLine(PanelDevelopment panel)
    {
        if (!DrawingPlaces.HasCentreline(panel)) return null;
        (Vec2 front, Vec2 rear) = DrawingPlaces.CentreEnds(panel);
        Vec2 along = (rear - front).Unit;
        double Past(string edge) => CentreOverrun + panel.Allowances.Where(a => a.Edge == edge).Select(a => a.Width).Append(0).Max();
        return along == Vec2.Zero ? null : new Stroke(Role.Centre, [front - Past("front") * along, rear + Past("rear") * along]);
    }

    private static bool LiesOn(ElementLine line, Stroke centre, double within)
    {
        Vec2 along = (centre.Points[1] - centre.Points[0]).Unit;
        return line.Path.All(p => Math.Abs((p - centre.Points[0]).Cross(along)) < within);
    }

    private static IEnumerable<Stroke> Arrow(Vec2 tip, double length)
    {
        yield return new Stroke(Role.Mark, [tip - new Vec2(0, length), tip]);
        yield return new Stroke(Role.Mark, [tip + new Vec2(-0.15 * length, -0.3 * length), tip, tip + new Vec2(0.15 * length, -0.3 * length)]);
    }
}

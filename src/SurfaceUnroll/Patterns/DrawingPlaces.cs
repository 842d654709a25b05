using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns;

/// <summary>Places on a blank that lines and words go by.</summary>
internal static class DrawingPlaces
{
    /// <summary>The middles of front and rear; of a piece that has none, the top and the bottom of its box.</summary>
    public static (Vec2 Front, Vec2 Rear) CentreEnds(PanelDevelopment panel)
    {
        if (HasCentreline(panel)) return (HalfWay(panel.FindEdge("front")!.Flat), HalfWay(panel.FindEdge("rear")!.Flat));
        Box box = Box.Around(panel.Cut);
        return (new Vec2(box.Centre.X, box.Max.Y), new Vec2(box.Centre.X, box.Min.Y));
    }

    /// <summary>True if the piece has a front, right, rear and left edge: a loft, or a bent plate of one width. The edges of other plates are called by their
    /// curves, of which one may be named “front” by chance, or run the other way.</summary>
    public static bool HasSides(PanelDevelopment panel) => panel.Spec.Kind == "loft" || panel.Spec.Bent?.Width is not null;

    /// <summary>True if the piece runs from a front edge to a rear edge, both whole: a trim may leave two parts of one.</summary>
    public static bool HasCentreline(PanelDevelopment panel) =>
        HasSides(panel) && panel.Edges.Count(e => e.Name == "front") == 1 && panel.Edges.Count(e => e.Name == "rear") == 1;

    /// <summary>A place a fraction of the way down the centreline.</summary>
    public static Vec2 OnCentre(PanelDevelopment panel, double fraction)
    {
        (Vec2 front, Vec2 rear) = CentreEnds(panel);
        return Vec2.Lerp(front, rear, fraction);
    }

    /// <summary>Places all over a piece, those nearest to the middle of its box first.</summary>
    public static IEnumerable<Vec2> AllOver(PanelDevelopment panel)
    {
        const int steps = 16;
        Box box = Box.Around(panel.Cut);
        return from place in
                   from row in Enumerable.Range(1, steps - 1)
                   from column in Enumerable.Range(1, steps - 1)
                   select box.Min + new Vec2(box.Width * column / steps, box.Height * row / steps)
               orderby (place - box.Centre).Length
               select place;
    }

    /// <summary>The place half way along a line.</summary>
    public static Vec2 HalfWay(ImmutableArray<Vec2> line) => On(line, 0.5).At;

    /// <summary>The place a fraction of the way along a line, and the line's direction there.</summary>
    public static (Vec2 At, Vec2 Along) On(ImmutableArray<Vec2> line, double fraction)
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

    /// <summary>Distance from a place to a line, mm.</summary>
    public static double Distance(Vec2 p, ImmutableArray<Vec2> line)
    {
        double nearest = double.PositiveInfinity;
        for (int i = 1; i < line.Length; i++) nearest = Math.Min(nearest, Segment.Distance(p, line[i - 1], line[i]));
        return nearest;
    }

    /// <summary>Read from below or from the right: turned by half a turn if the text would stand on its head or run down the page.</summary>
    public static double Upright(double angle)
    {
        double cos = Math.Cos(angle);
        return cos < -1e-9 || (cos <= 1e-9 && Math.Sin(angle) < 0) ? angle + Math.PI : angle;
    }
}

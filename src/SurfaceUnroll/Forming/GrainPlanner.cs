using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Forming;

/// <summary>How a blank should lie to the grain.</summary>
internal static class GrainPlanner
{
    // The grain counts where a bend is tighter than this many smallest radii (common practice, no source).
    private const double Counts = 3;

    /// <summary>The grain square to most of the bending: sheet cracks sooner where it is bent along the grain. Along the longer side of a piece that stays flat.</summary>
    /// <param name="panel">With its lines and bends.</param>
    /// <param name="stock">Sheet.</param>
    public static GrainAdvice Of(PanelDevelopment panel, SheetStock stock)
    {
        double minimum = stock.MinimumRadius;
        // Directions without a sense add up at twice their angle.
        Vec2 sum = Vec2.Zero;
        double tightest = double.PositiveInfinity;
        foreach ((Vec2 from, Vec2 to, double weight, double inside) in Bending(panel, stock))
        {
            tightest = Math.Min(tightest, inside);
            double twice = 2 * Math.Atan2((to - from).Y, (to - from).X);
            sum += weight * (to - from).Length * Vec2.FromAngle(twice);
        }
        Box box = Box.Around(panel.Cut);
        Vec2 along = sum.Length > 1e-9 ? Vec2.FromAngle(0.5 * Math.Atan2(sum.Y, sum.X)).Left : box.Width >= box.Height ? new Vec2(1, 0) : new Vec2(0, 1);
        // Of its two senses the one that points up, or to the right.
        if (along.Y < -1e-9 || (Math.Abs(along.Y) <= 1e-9 && along.X < 0)) along = -along;
        return new GrainAdvice(along, minimum, tightest < Counts * minimum);
    }

    // From a line to the next, halfway along both, mm; 0 past the ends.
    private static double Step(ElementLine[] lines, int i) => i < 0 || i + 1 >= lines.Length ? 0
        : (Vec2.Lerp(lines[i + 1].Front, lines[i + 1].Rear, 0.5) - Vec2.Lerp(lines[i].Front, lines[i].Rear, 0.5)).Length;

    // Lines about which the sheet is bent, through what angle (radians), and to what inside radius.
    private static IEnumerable<(Vec2 From, Vec2 To, double Weight, double Inside)> Bending(PanelDevelopment panel, SheetStock stock)
    {
        foreach (BendLine bend in panel.Bends.Where(b => b.Centre.Length > 1)) yield return (bend.Centre[0], bend.Centre[^1], bend.Angle, bend.InsideRadius);
        ElementLine[] lines = [.. panel.Elements.Where(e => e.Number > 0 && e.Length > 0)];
        for (int i = 0; i < lines.Length; i++)
        {
            ElementLine line = lines[i];
            double radius = 0.5 * (line.BendRadiusFront + line.BendRadiusRear);
            if (!double.IsFinite(radius) || radius <= 0) continue;
            // Half of the way to either neighbour is bent about it. The tip of a fan is dressed by hand: there the whole line counts.
            double width = 0.5 * (Step(lines, i - 1) + Step(lines, i)), tighter = Math.Min(line.BendRadiusFront, line.BendRadiusRear);
            yield return (line.Front, line.Rear, width / radius, Math.Max(0, (tighter > 0 ? tighter : radius) - 0.5 * stock.Thickness));
        }
    }
}

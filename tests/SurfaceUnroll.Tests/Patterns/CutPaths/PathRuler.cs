using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Tests.Patterns.CutPaths;

/// <summary>Measures paths of arcs without the code that makes them: from the definition of a bulge alone.</summary>
internal static class PathRuler
{
    // Samples of an arc leave it by no more than this, mm.
    private const double Sagitta = 1e-4;

    /// <summary>A closed stroke as a dense polygon.</summary>
    public static Vec2[] Dense(Stroke stroke)
    {
        var dense = new List<Vec2>();
        for (int i = 0; i < stroke.Points.Length; i++) dense.AddRange(Arc(stroke.Points[i], stroke.Points[(i + 1) % stroke.Points.Length], stroke.Bulges.IsEmpty ? 0 : stroke.Bulges[i]));
        return [.. dense];
    }

    /// <summary>Places along an arc, its end left out.</summary>
    public static IEnumerable<Vec2> Arc(Vec2 from, Vec2 to, double bulge)
    {
        if (bulge == 0) return [from];
        double angle = 4 * Math.Atan(bulge), radius = (to - from).Length / (2 * Math.Sin(angle / 2));
        Vec2 centre = 0.5 * (from + to) + radius * Math.Cos(angle / 2) * (to - from).Unit.Left;
        int steps = 8 + (int)(Math.Abs(angle) * Math.Sqrt(Math.Abs(radius) / (8 * Sagitta)));
        return Enumerable.Range(0, steps).Select(i => centre + (from - centre).Rotate(angle * i / steps));
    }

    /// <summary>Greatest distance from a place of either closed line to the other, mm.</summary>
    public static double Apart(IReadOnlyList<Vec2> a, IReadOnlyList<Vec2> b) => Math.Max(Far(a, b), Far(b, a));

    /// <summary>Distance from a place to a closed line, mm.</summary>
    public static double Distance(Vec2 p, IReadOnlyList<Vec2> line)
    {
        double nearest = double.PositiveInfinity;
        for (int i = 0; i < line.Count; i++)
        {
            Vec2 a = line[i], along = line[(i + 1) % line.Count] - a;
            double share = along == Vec2.Zero ? 0 : Math.Clamp((p - a).Dot(along) / along.Dot(along), 0, 1);
            nearest = Math.Min(nearest, (p - a - share * along).Length);
        }
        return nearest;
    }

    /// <summary>Break of direction at the start of each segment of a closed stroke, radians.</summary>
    public static double[] Breaks(Stroke stroke)
    {
        int n = stroke.Points.Length;
        double Half(int i) => stroke.Bulges.IsEmpty ? 0 : 2 * Math.Atan(stroke.Bulges[i]);
        Vec2 Chord(int i) => (stroke.Points[(i + 1) % n] - stroke.Points[i]).Unit;
        return [.. Enumerable.Range(0, n).Select(i => Angle(Chord((i + n - 1) % n).Rotate(Half((i + n - 1) % n)), Chord(i).Rotate(-Half(i))))];
    }

    /// <summary>Angle between two directions, radians, ≥ 0.</summary>
    public static double Angle(Vec2 a, Vec2 b) => Math.Abs(Math.Atan2(a.Cross(b), a.Dot(b)));

    /// <summary>Area inside a closed line, mm².</summary>
    public static double Area(IReadOnlyList<Vec2> line) => Math.Abs(0.5 * Enumerable.Range(0, line.Count).Sum(i => line[i].Cross(line[(i + 1) % line.Count])));

    // Half way along each chord too.
    private static double Far(IReadOnlyList<Vec2> from, IReadOnlyList<Vec2> to) =>
        Enumerable.Range(0, from.Count).AsParallel().Max(i => Math.Max(Distance(from[i], to), Distance(0.5 * (from[i] + from[(i + 1) % from.Count]), to)));
}

using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Patterns.Strain;

/// <summary>Places along a line of straight pieces, by the length walked from its first point.</summary>
internal sealed class Polyline
{
    private readonly ImmutableArray<Vec2> points;
    private readonly bool closed;
    private readonly double[] walked;

    public Polyline(ImmutableArray<Vec2> line, bool closed)
    {
        this.closed = closed;
        points = closed ? [.. line, line[0]] : line;
        walked = new double[points.Length];
        for (int i = 1; i < points.Length; i++) walked[i] = walked[i - 1] + (points[i] - points[i - 1]).Length;
    }

    /// <summary>mm.</summary>
    public double Length => walked[^1];

    /// <summary>The place at a length from the first point; on an open line no farther than its ends.</summary>
    public Vec2 At(double length)
    {
        double s = closed ? length - Length * Math.Floor(length / Length) : Math.Clamp(length, 0, Length);
        int after = Array.BinarySearch(walked, s);
        if (after >= 0) return points[after];
        after = Math.Clamp(~after, 1, points.Length - 1);
        double step = walked[after] - walked[after - 1];
        return Vec2.Lerp(points[after - 1], points[after], step > 0 ? (s - walked[after - 1]) / step : 0);
    }

    /// <summary>The nearest place of the line, and how far off it is.</summary>
    public (Vec2 At, double Distance, int Piece, double Share) Nearest(Vec2 p)
    {
        (Vec2 At, double Distance, int Piece, double Share) best = (points[0], (p - points[0]).Length, 0, 0);
        for (int i = 1; i < points.Length; i++)
        {
            double share = Segment.NearestShare(p, points[i - 1], points[i]);
            Vec2 at = Vec2.Lerp(points[i - 1], points[i], share);
            if ((p - at).Length < best.Distance) best = (at, (p - at).Length, i - 1, share);
        }
        return best;
    }
}

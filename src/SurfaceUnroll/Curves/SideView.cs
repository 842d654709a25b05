using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Curves;

/// <summary>Height as one cubic of the aft distance: H0 + H1·u + H2·u² + H3·u³ with u = aft − From.</summary>
/// <param name="From">Where u = 0, mm.</param>
/// <param name="H0">mm.</param>
/// <param name="H1">Slope at u = 0.</param>
/// <param name="H2">1/mm.</param>
/// <param name="H3">1/mm².</param>
internal readonly record struct HeightSpan(double From, double H0, double H1, double H2, double H3)
{
    public bool IsStraight => H2 == 0 && H3 == 0;

    /// <summary>Height (mm), slope, and second derivative (1/mm) at an aft distance.</summary>
    public (double Height, double Slope, double Bend) At(double aft)
    {
        double u = aft - From;
        return (H0 + u * (H1 + u * (H2 + u * H3)), H1 + u * (2 * H2 + 3 * u * H3), 2 * H2 + 6 * u * H3);
    }
}

/// <summary>The side view of a curve: its height over each aft distance. It goes on straight outside the measured range.</summary>
/// <param name="Stations">Aft distances at which one span ends and the next begins, ascending, mm.</param>
/// <param name="Spans">One more than <paramref name="Stations"/>; the first and last reach to infinity and are straight.</param>
internal sealed record SideView(ImmutableArray<double> Stations, ImmutableArray<HeightSpan> Spans)
{
    /// <summary>The side view through at least two (aft, height) points, aft strictly increasing: C2 cubic with parabolic end spans, or straight lines.</summary>
    public static SideView Through(ImmutableArray<Vec2> points, Fit fit)
    {
        double[] steps = [.. points.Skip(1).Select((p, i) => p.X - points[i].X)];
        double[] chord = [.. steps.Select((h, i) => (points[i + 1].Y - points[i].Y) / h)];
        if (OnOneLine(points))
            return new SideView([], [new HeightSpan(points[0].X, points[0].Y, (points[^1].Y - points[0].Y) / (points[^1].X - points[0].X), 0, 0)]);
        double[] slopes = fit == Fit.Smooth
            ? SplineSlopes.Open(steps, [.. points.Select(p => p.Y)], SplineEnd.Parabola, SplineEnd.Parabola)
            : [.. chord, chord[^1]];
        var spans = ImmutableArray.CreateBuilder<HeightSpan>(points.Length + 1);
        spans.Add(new HeightSpan(points[0].X, points[0].Y, slopes[0], 0, 0));
        for (int i = 0; i < steps.Length; i++)
        {
            double h = steps[i], d0 = slopes[i], d1 = fit == Fit.Smooth ? slopes[i + 1] : d0;
            spans.Add(new HeightSpan(points[i].X, points[i].Y, d0, (3 * chord[i] - 2 * d0 - d1) / h, (d0 + d1 - 2 * chord[i]) / (h * h)));
        }
        spans.Add(new HeightSpan(points[^1].X, points[^1].Y, slopes[^1], 0, 0));
        return new SideView([.. points.Select(p => p.X)], spans.MoveToImmutable());
    }

    /// <summary>The span over an aft distance.</summary>
    public HeightSpan Over(double aft) => Spans[Stations.Count(station => aft >= station)];

    private static bool OnOneLine(ImmutableArray<Vec2> points)
    {
        Vec2 along = (points[^1] - points[0]).Unit;
        double reach = (points[^1] - points[0]).Length;
        return points.All(p => Math.Abs(along.Cross(p - points[0])) <= Tolerance.Straightness * reach);
    }
}

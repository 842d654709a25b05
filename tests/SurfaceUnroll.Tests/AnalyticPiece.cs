using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Tests;

/// <summary>A curve piece by formula: place, first and second derivative over θ from one value to another.</summary>
internal sealed class AnalyticPiece(double from, double to, Func<double, Vec3> place, Func<double, Vec3> first, Func<double, Vec3> second) : CurvePiece
{
    public override CurveSample At(double t)
    {
        double span = to - from, theta = from + t * span;
        return new CurveSample(place(theta), span * first(theta), span * span * second(theta));
    }

    public static SpaceCurve Curve(double from, double to, Func<double, Vec3> place, Func<double, Vec3> first, Func<double, Vec3> second) =>
        new([new AnalyticPiece(from, to, place, first, second)]);

    /// <summary>A circle or arc: centre + r (cos θ u + sin θ v).</summary>
    public static SpaceCurve Arc(Vec3 centre, Vec3 u, Vec3 v, double radius, double from, double to) =>
        new([new ArcPiece(centre, u, v, radius, from, to - from)]);

    /// <summary>Straight lines through points.</summary>
    public static SpaceCurve Polyline(params Vec3[] points) =>
        new([.. points.Zip(points.Skip(1), (a, b) => (CurvePiece)new LinePiece(a, b))]);
}

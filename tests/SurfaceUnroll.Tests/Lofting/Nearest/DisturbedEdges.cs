using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Lofting.Nearest;

namespace SurfaceUnroll.Tests.Lofting.Nearest;

/// <summary>Sheets that only bend, one edge of each disturbed by a smooth bump.</summary>
internal static class DisturbedEdges
{
    private static readonly EdgePlane Upright = new(Vec3.Zero, Shapes.Y, Shapes.Z);

    /// <summary>A straight edge in front and one behind, in upright planes, that leans against it by an angle: a hyperbolic paraboloid.</summary>
    /// <param name="degrees">Between both edges.</param>
    public static (SpaceCurve Front, SpaceCurve Rear, EdgePlane Plane) Skew(double degrees)
    {
        double rise = 300 * Math.Tan(0.5 * degrees * Math.PI / 180);
        return (AnalyticPiece.Polyline(new(0, -300, rise), new(0, 300, -rise)), AnalyticPiece.Polyline(new(400, -300, -rise), new(400, 300, rise)), Upright with { Origin = new(400, 0, 0) });
    }

    /// <summary>By name: the still edge, the moved one before it was disturbed, and where along it the bump stands (middle, half width, height to the left).</summary>
    public static (SpaceCurve Still, SpaceCurve Moved) Of(string name)
    {
        SpaceCurve hoop = Shapes.Hoop();
        return name switch
        {
            "cover, bump at the side" => (Shapes.Arch(), Bumped(hoop, Shapes.Z, 0.35 * hoop.Length, 40, 3)),
            "cover, dent at the side" => (Shapes.Arch(), Bumped(hoop, Shapes.Z, 0.35 * hoop.Length, 40, -3)),
            "cover, bump in the middle" => (Shapes.Arch(), Bumped(hoop, Shapes.Z, 0.5 * hoop.Length, 40, 3)),
            "cover, bump on a leg" => (Shapes.Arch(), Bumped(hoop, Shapes.Z, 90, 50, 3)),
            "cone, dent" => (Shapes.HalfCircle(120, 0), Bumped(Shapes.HalfCircle(150, 300), Shapes.X, 0.4 * Math.PI * 150, 50, -3)),
            "cone, dented edge stays" => (Bumped(Shapes.HalfCircle(150, 300), Shapes.X, 0.4 * Math.PI * 150, 50, -3), Shapes.HalfCircle(120, 0)),
            _ => (Shapes.Arch(), hoop),
        };
    }

    /// <summary>A flat curve with height·cos⁴ added along its normal.</summary>
    /// <param name="curve">The curve.</param>
    /// <param name="across">Unit normal of its plane.</param>
    /// <param name="at">Middle of the bump along the curve, mm.</param>
    /// <param name="half">Half of its width, mm.</param>
    /// <param name="height">mm.</param>
    public static SpaceCurve Bumped(SpaceCurve curve, Vec3 across, double at, double half, double height) => new(
        [.. curve.Pieces.Select((piece, i) => (CurvePiece)new BumpedPiece(piece, across, curve.PieceLengths.Take(i).Sum() - at, half, height))]);

    private sealed class BumpedPiece(CurvePiece own, Vec3 across, double from, double half, double height) : CurvePiece
    {
        // The pieces disturbed here have a constant curvature and speed.
        public override CurveSample At(double t)
        {
            CurveSample s = own.At(t);
            double x = (from + own.Length(0, t)) / half;
            if (Math.Abs(x) >= 1) return s;
            double k = 0.5 * Math.PI / half, c = Math.Cos(0.5 * Math.PI * x), sin = Math.Sin(0.5 * Math.PI * x);
            double f = height * c * c * c * c, f1 = -4 * height * k * c * c * c * sin, f2 = height * k * k * (12 * c * c * sin * sin - 4 * c * c * c * c);
            Vec3 tangent = s.Tangent, normal = across.Cross(tangent);
            double curvature = s.CurvatureVector.Dot(normal), speed = s.D1.Length;
            return new CurveSample(
                s.Point + f * normal,
                speed * ((1 - f * curvature) * tangent + f1 * normal),
                speed * speed * (-2 * f1 * curvature * tangent + ((1 - f * curvature) * curvature + f2) * normal));
        }
    }
}

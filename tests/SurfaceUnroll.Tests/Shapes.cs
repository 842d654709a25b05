using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Tests;

/// <summary>Curve pairs for tests of matching and developing.</summary>
internal static class Shapes
{
    public static readonly Vec3 X = new(1, 0, 0), Y = new(0, 1, 0), Z = new(0, 0, 1);

    /// <summary>Half-arch leaning aft: two legs and a half circle between them.</summary>
    public static SpaceCurve Arch(double radius = 120, double leg = 55, double leanDegrees = 25)
    {
        double lean = leanDegrees * Math.PI / 180;
        Vec3 up = new(Math.Sin(lean), 0, Math.Cos(lean));
        return new SpaceCurve(
        [
            new LinePiece(-radius * Y, -radius * Y + leg * up),
            new ArcPiece(leg * up, -Y, up, radius, 0, Math.PI),
            new LinePiece(radius * Y + leg * up, radius * Y),
        ]);
    }

    /// <summary>U lying flat: two legs aft and a half circle.</summary>
    public static SpaceCurve Hoop(double radius = 120, double leg = 175) => new(
    [
        new LinePiece(-radius * Y, -radius * Y + leg * X),
        new ArcPiece(leg * X, -Y, X, radius, 0, Math.PI),
        new LinePiece(radius * Y + leg * X, radius * Y),
    ]);

    /// <summary>Half circle upright at x = <paramref name="aft"/>, its centre <paramref name="height"/> up.</summary>
    public static SpaceCurve HalfCircle(double radius, double aft, double height = 0) =>
        AnalyticPiece.Arc(new Vec3(aft, 0, height), -Y, Z, radius, 0, Math.PI);

    /// <summary>A square of side 200 and a circle of radius 50 above it, both closed, the seam in the middle of a side.</summary>
    public static (SpaceCurve Square, SpaceCurve Circle) SquareToRound() => (
        AnalyticPiece.Polyline(new(0, 0, -100), new(0, -100, -100), new(0, -100, 100), new(0, 100, 100), new(0, 100, -100), new(0, 0, -100)),
        AnalyticPiece.Arc(new Vec3(150, 0, 0), -Z, -Y, 50, 0, 2 * Math.PI));

    /// <summary>The same curve turned about an axis, shifted and scaled.</summary>
    public static SpaceCurve Moved(SpaceCurve curve, Func<Vec3, Vec3> linear, Vec3 shift) =>
        new([.. curve.Pieces.Select(p => (CurvePiece)new MovedPiece(p, linear, shift))]);

    /// <summary>Rotation about a unit axis (Rodrigues).</summary>
    public static Func<Vec3, Vec3> Rotation(Vec3 axis, double angle) =>
        v => Math.Cos(angle) * v + Math.Sin(angle) * axis.Cross(v) + ((1 - Math.Cos(angle)) * axis.Dot(v)) * axis;

    private sealed class MovedPiece(CurvePiece piece, Func<Vec3, Vec3> linear, Vec3 shift) : CurvePiece
    {
        public override CurveSample At(double t)
        {
            CurveSample s = piece.At(t);
            return new CurveSample(linear(s.Point) + shift, linear(s.D1), linear(s.D2));
        }
    }
}

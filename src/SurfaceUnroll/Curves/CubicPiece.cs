using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Curves;

/// <summary>A cubic: c0 + c1·t + c2·t² + c3·t³.</summary>
/// <param name="c0">Place at t = 0, mm.</param>
/// <param name="c1">First derivative at t = 0, mm.</param>
/// <param name="c2">Half the second derivative at t = 0, mm.</param>
/// <param name="c3">A sixth of the third derivative, mm.</param>
public sealed class CubicPiece(Vec3 c0, Vec3 c1, Vec3 c2, Vec3 c3) : CurvePiece
{
    /// <summary>The cubic with given ends and end derivatives by t (Hermite form), all mm.</summary>
    public static CubicPiece Hermite(Vec3 start, Vec3 startD1, Vec3 end, Vec3 endD1)
    {
        Vec3 span = end - start;
        return new CubicPiece(start, startD1, 3 * span - 2 * startD1 - endD1, startD1 + endD1 - 2 * span);
    }

    /// <inheritdoc/>
    public override CurveSample At(double t) => new(
        c0 + t * (c1 + t * (c2 + t * c3)),
        c1 + t * (2 * c2 + (3 * t) * c3),
        2 * c2 + (6 * t) * c3);

    /// <inheritdoc/>
    public override CurvePiece Placed(Frame frame) =>
        new CubicPiece(frame.Point(c0), frame.Direction(c1), frame.Direction(c2), frame.Direction(c3));

    /// <inheritdoc/>
    public override ImmutableArray<double> Crossings(Vec3 axis, double offset) =>
        CubicRoots.InUnitInterval(c0.Dot(axis) - offset, c1.Dot(axis), c2.Dot(axis), c3.Dot(axis));
}

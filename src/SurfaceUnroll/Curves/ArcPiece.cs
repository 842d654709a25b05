using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Curves;

/// <summary>A circular arc: centre + radius·(cos θ·u + sin θ·v), θ from <paramref name="startAngle"/> over <paramref name="sweep"/>.</summary>
/// <param name="centre">Centre, mm.</param>
/// <param name="u">Unit vector at θ = 0.</param>
/// <param name="v">Unit vector at θ = 90°, square to <paramref name="u"/>.</param>
/// <param name="radius">mm, &gt; 0.</param>
/// <param name="startAngle">Radians.</param>
/// <param name="sweep">Radians, nonzero; the sign is the direction.</param>
public sealed class ArcPiece(Vec3 centre, Vec3 u, Vec3 v, double radius, double startAngle, double sweep) : CurvePiece
{
    /// <inheritdoc/>
    public override CurveSample At(double t)
    {
        (double sin, double cos) = Math.SinCos(startAngle + t * sweep);
        Vec3 outward = cos * u + sin * v;
        Vec3 along = cos * v - sin * u;
        return new CurveSample(centre + radius * outward, radius * sweep * along, -radius * sweep * sweep * outward);
    }

    /// <inheritdoc/>
    public override double Length(double t0, double t1) => (t1 - t0) * radius * Math.Abs(sweep);

    /// <inheritdoc/>
    public override CurvePiece Reversed() => new ArcPiece(centre, u, v, radius, startAngle + sweep, -sweep);

    /// <inheritdoc/>
    public override CurvePiece Placed(Frame frame) =>
        new ArcPiece(frame.Point(centre), frame.Direction(u), frame.Direction(v), radius, startAngle, sweep);

    /// <inheritdoc/>
    public override ImmutableArray<double> Crossings(Vec3 axis, double offset) =>
        AngleCrossings.Of(radius * u.Dot(axis), radius * v.Dot(axis), offset - centre.Dot(axis), startAngle, sweep);
}

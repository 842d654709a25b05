using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Curves.Drawn;

/// <summary>An arc of an ellipse: centre + cos θ·a + sin θ·b, θ from <paramref name="startAngle"/> over <paramref name="sweep"/>.</summary>
/// <param name="centre">Centre, mm.</param>
/// <param name="a">Half of one diameter, mm.</param>
/// <param name="b">Half of the diameter conjugate to it, mm: any vector that is not along <paramref name="a"/>. So every slanted or unevenly scaled
/// circle is an ellipse as it comes.</param>
/// <param name="startAngle">Radians.</param>
/// <param name="sweep">Radians, nonzero; the sign is the direction.</param>
public sealed class EllipsePiece(Vec3 centre, Vec3 a, Vec3 b, double startAngle, double sweep) : CurvePiece
{
    // Half axes this much alike, of their length, and this square to each other are those of a circle: room for the rounding of decimals in a file.
    private const double Round = 1e-9;

    /// <summary>The arc as a circle's, which has its length in closed form, where it is one.</summary>
    public static CurvePiece Of(Vec3 centre, Vec3 a, Vec3 b, double startAngle, double sweep)
    {
        double size = a.Length;
        return Math.Abs(size - b.Length) <= Round * size && Math.Abs(a.Dot(b)) <= Round * size * size
            ? new ArcPiece(centre, a / size, b / b.Length, size, startAngle, sweep)
            : new EllipsePiece(centre, a, b, startAngle, sweep);
    }

    /// <inheritdoc/>
    public override CurveSample At(double t)
    {
        (double sin, double cos) = Math.SinCos(startAngle + t * sweep);
        Vec3 outward = cos * a + sin * b;
        return new CurveSample(centre + outward, sweep * (cos * b - sin * a), -sweep * sweep * outward);
    }

    /// <inheritdoc/>
    public override CurvePiece Reversed() => new EllipsePiece(centre, a, b, startAngle + sweep, -sweep);

    /// <inheritdoc/>
    public override CurvePiece Placed(Frame frame) => new EllipsePiece(frame.Point(centre), frame.Direction(a), frame.Direction(b), startAngle, sweep);

    /// <inheritdoc/>
    public override ImmutableArray<double> Crossings(Vec3 axis, double offset) => AngleCrossings.Of(a.Dot(axis), b.Dot(axis), offset - centre.Dot(axis), startAngle, sweep);
}

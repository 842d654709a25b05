using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Curves;

/// <summary>A straight segment between two distinct points, at constant speed.</summary>
/// <param name="start">Where t = 0, mm.</param>
/// <param name="end">Where t = 1, mm; differs from <paramref name="start"/>.</param>
public sealed class LinePiece(Vec3 start, Vec3 end) : CurvePiece
{
    private readonly Vec3 span = end - start;

    /// <inheritdoc/>
    public override bool IsStraight => true;

    /// <inheritdoc/>
    public override CurveSample At(double t) => new(Vec3.Lerp(start, end, t), span, Vec3.Zero);

    /// <inheritdoc/>
    public override double Length(double t0, double t1) => (t1 - t0) * span.Length;

    /// <inheritdoc/>
    public override CurvePiece Reversed() => new LinePiece(end, start);

    /// <inheritdoc/>
    public override CurvePiece Placed(Frame frame) => new LinePiece(frame.Point(start), frame.Point(end));

    /// <inheritdoc/>
    public override ImmutableArray<double> Crossings(Vec3 axis, double offset)
    {
        double t = (offset - start.Dot(axis)) / span.Dot(axis);
        return t is > 0 and < 1 ? [t] : [];
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Curves;

/// <summary>A piece run backwards.</summary>
internal sealed class ReversedPiece(CurvePiece forward) : CurvePiece
{
    public override bool IsStraight => forward.IsStraight;

    public override CurveSample At(double t)
    {
        CurveSample s = forward.At(1 - t);
        return new CurveSample(s.Point, -s.D1, s.D2);
    }

    public override double Length(double t0, double t1) => -forward.Length(1 - t0, 1 - t1);

    public override CurvePiece Reversed() => forward;

    public override CurvePiece Placed(Frame frame) => new ReversedPiece(forward.Placed(frame));

    public override ImmutableArray<double> Crossings(Vec3 axis, double offset) =>
        [.. forward.Crossings(axis, offset).Reverse().Select(t => 1 - t)];
}

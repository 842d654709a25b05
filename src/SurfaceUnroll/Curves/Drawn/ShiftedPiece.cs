using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Curves.Drawn;

/// <summary>A piece whose ends are moved a little, and everything between in proportion: P(t) + (1 − t)·start + t·end. It stays as smooth as it was.</summary>
/// <param name="own">The piece as drawn.</param>
/// <param name="start">By how much its start is moved, mm.</param>
/// <param name="end">By how much its end is moved, mm.</param>
internal sealed class ShiftedPiece(CurvePiece own, Vec3 start, Vec3 end) : CurvePiece
{
    /// <summary>The piece with its ends at the places given.</summary>
    public static CurvePiece Between(CurvePiece piece, Vec3 from, Vec3 to)
    {
        if (piece.IsStraight) return new LinePiece(from, to);
        return new ShiftedPiece(piece, from - piece.At(0).Point, to - piece.At(1).Point);
    }

    public override CurveSample At(double t)
    {
        CurveSample s = own.At(t);
        return new CurveSample(s.Point + Vec3.Lerp(start, end, t), s.D1 + (end - start), s.D2);
    }

    public override CurvePiece Placed(Frame frame) => new ShiftedPiece(own.Placed(frame), frame.Direction(start), frame.Direction(end));

    public override CurvePiece Reversed() => new ShiftedPiece(own.Reversed(), end, start);
}

using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Curves;

/// <summary>Makes one line of straights that follow each other in one direction.</summary>
internal static class StraightRuns
{
    public static ImmutableArray<CurvePiece> Merge(ImmutableArray<CurvePiece> pieces)
    {
        var merged = ImmutableArray.CreateBuilder<CurvePiece>(pieces.Length);
        foreach (CurvePiece piece in pieces)
        {
            if (merged.Count > 0 && Continue(merged[^1], piece)) merged[^1] = new LinePiece(merged[^1].At(0).Point, piece.At(1).Point);
            else merged.Add(piece);
        }
        return merged.ToImmutable();
    }

    // Offset at the joint against the merged line, as a fraction of it, is at most the angle.
    private static bool Continue(CurvePiece before, CurvePiece after)
    {
        if (!before.IsStraight || !after.IsStraight) return false;
        Vec3 a = before.At(1).D1, b = after.At(0).D1;
        return a.AngleTo(b) <= Tolerance.Straightness;
    }
}

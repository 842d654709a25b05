using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Curves.Fairing;

/// <summary>The fairest curve near a row of measured points, in the pieces of a curve through them: piece i from point i to point i + 1.</summary>
/// <remarks>Ends and corners stay where they were read: other edges meet there. A mirrored row is faired whole, so that it crosses the centreline square.</remarks>
internal static class FairRow
{
    private const int FewestOpen = 4;

    /// <summary>A closed row without corners; null where there is nothing to fair.</summary>
    public static ImmutableArray<CurvePiece>? Closed(PointRow row)
    {
        ImmutableArray<Vec3> ring = row.Places[..^1];
        return row.Within is { } within && ring.Length >= FairSpline.Fewest(true) ? BoundedFair.Of(ring, true, within)?.Pieces() : null;
    }

    /// <summary>A part of a row between two breaks; null where there is nothing to fair.</summary>
    /// <param name="part">Its points.</param>
    /// <param name="start">The mirror image goes on before it.</param>
    /// <param name="end">The mirror image goes on behind it.</param>
    /// <param name="within">How far it may leave each point, mm; null: not at all.</param>
    public static ImmutableArray<CurvePiece>? Open(ImmutableArray<Vec3> part, CurveEnd start, CurveEnd end, double? within)
    {
        if (within is not { } bound) return null;
        bool before = start == CurveEnd.Mirrored, behind = end == CurveEnd.Mirrored, ring = before && behind;
        int last = part.Length - 1;
        IEnumerable<Vec3> image = part.Reverse().Select(Mirrored);
        ImmutableArray<Vec3> whole = ring ? [.. part, .. image.Skip(1).Take(last - 1)] : before ? [.. image.Take(last), .. part] : behind ? [.. part, .. image.Skip(1)] : part;
        if (whole.Length < (ring ? FairSpline.Fewest(true) : FewestOpen) || BoundedFair.Of(whole, ring, bound) is not { } fair) return null;
        Cubic[] cubics = [.. fair.Cubics.Skip(before && !ring ? last : 0).Take(last)];
        // Rounding is taken out of what is known: ends that stay, and places on the centreline that are crossed square.
        if (!before) cubics[0] = cubics[0] with { C0 = part[0] };
        else cubics[0] = new Cubic(OnCentreline(cubics[0].C0), cubics[0].C1 with { Z = 0 }, OnCentreline(cubics[0].C2), cubics[0].C3);
        cubics[^1] = cubics[^1].EndingAt(behind ? OnCentreline(cubics[^1].End) : part[^1]);
        return [.. cubics.Select(c => c.Piece())];
    }

    /// <summary>From a point to the pieces beside it, square to them, mm.</summary>
    public static double Move(ImmutableArray<CurvePiece> spans, int point, Vec3 place)
    {
        CurveSample at = point < spans.Length ? spans[point].At(0) : spans[^1].At(1);
        Vec3 off = place - at.Point;
        return (off - off.Dot(at.Tangent) * at.Tangent).Length;
    }

    private static Vec3 Mirrored(Vec3 p) => p with { Y = -p.Y };

    private static Vec3 OnCentreline(Vec3 p) => p with { Y = 0 };
}

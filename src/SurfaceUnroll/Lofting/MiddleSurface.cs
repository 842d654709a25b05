using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Lofting;

/// <summary>Moves a sheet from the face it was measured on to its middle surface.</summary>
/// <remarks>Each element line moves along the sheet's normal. The surface parallel to a developable one is developable with the same element
/// lines (do Carmo, section 3-5, exercise on parallel surfaces), so a sheet that only bends still only bends. The tip of a fan stays a tip: it moves
/// to the place that lies the offset away from all the fan's tangent planes, exact for flat facets that meet at a corner and for circular cones, in
/// the least-squares sense otherwise.</remarks>
public static class MiddleSurface
{
    /// <summary>The sheet parallel to <paramref name="measured"/>.</summary>
    /// <param name="measured">Sheet through the measured curves.</param>
    /// <param name="offset">mm along the outside normal; negative moves inward.</param>
    public static RuledSheet Of(RuledSheet measured, double offset)
    {
        if (offset == 0) return measured;
        ImmutableArray<Strip> strips = measured.Strips;
        ImmutableArray<EdgeShift> front = EdgeShift.Along(strips, offset, frontEdge: true);
        ImmutableArray<EdgeShift> rear = EdgeShift.Along(strips, offset, frontEdge: false);
        return measured with { Strips = [.. strips.Select((strip, i) => Move(strip, front[i], rear[i]))] };
    }

    private static Strip Move(Strip strip, EdgeShift front, EdgeShift rear)
    {
        ImmutableArray<Vec3> frontTangents = front.Tangents(strip.Left.Front, strip.Middle.Front, strip.Right.Front,
            strip.Left.FrontTangent, strip.Middle.FrontTangent, strip.Right.FrontTangent);
        ImmutableArray<Vec3> rearTangents = rear.Tangents(strip.Left.Rear, strip.Middle.Rear, strip.Right.Rear,
            strip.Left.RearTangent, strip.Middle.RearTangent, strip.Right.RearTangent);
        return strip with
        {
            Left = At(strip.Left, front.Left, rear.Left, 0),
            Middle = At(strip.Middle, front.Middle, rear.Middle, 1),
            Right = At(strip.Right, front.Right, rear.Right, 2),
        };

        Station At(Station s, Vec3 frontShift, Vec3 rearShift, int i) => s with
        {
            Front = s.Front + frontShift,
            Rear = s.Rear + rearShift,
            FrontTangent = frontTangents[i],
            RearTangent = rearTangents[i],
        };
    }
}

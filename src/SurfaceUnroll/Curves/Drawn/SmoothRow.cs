using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Curves.Drawn;

/// <summary>Smooth curves through the points that a drawing gives in place of a curve.</summary>
public static class SmoothRow
{
    /// <summary>The spline through at least two points, neighbours different; closed where the last of four or more is the first.</summary>
    public static ImmutableArray<CurvePiece> Through(ImmutableArray<Vec3> places) => places.Length > 3 && places[0] == places[^1]
        ? CubicSpline.Periodic(places.AsSpan())
        : CubicSpline.Open(places.AsSpan(), CurveEnd.Free, CurveEnd.Free);
}

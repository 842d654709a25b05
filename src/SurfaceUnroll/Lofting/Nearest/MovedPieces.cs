using System.Collections.Immutable;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Lofting.Nearest;

/// <summary>The moved edge as arcs, each tangent to the next.</summary>
internal static class MovedPieces
{
    // Turns below this (radians) are a cubic with the arc's ends and tangents, which leaves the arc by 1e-15 of its length and has no far centre.
    private const double Slight = 1e-3;

    /// <summary>Pieces in job space, left to right.</summary>
    public static ImmutableArray<CurvePiece> Of(ImmutableArray<EdgeStation> stations, MovedStations solution, EdgePlane plane)
    {
        var pieces = ImmutableArray.CreateBuilder<CurvePiece>();
        for (int i = 1; i < stations.Length; i++)
        {
            if (stations[i].StartsSpan) continue;
            Vec2 from = Place(i - 1), to = Place(i);
            double sweep = stations[i].Angle + solution.Turns[i] - stations[i - 1].Angle - solution.Turns[i - 1];
            pieces.Add(Math.Abs(sweep) < Slight ? Cubic(from, to, sweep, plane) : Arc(from, to, sweep, plane));
        }
        return pieces.ToImmutable();

        Vec2 Place(int i) => stations[i].Place + solution.Moves[i] * stations[i].Normal;
    }

    private static CubicPiece Cubic(Vec2 from, Vec2 to, double sweep, EdgePlane plane)
    {
        Vec2 chord = to - from, start = chord.Rotate(-0.5 * sweep), end = chord.Rotate(0.5 * sweep);
        return CubicPiece.Hermite(plane.Place(from), plane.Direction(start), plane.Place(to), plane.Direction(end));
    }

    private static ArcPiece Arc(Vec2 from, Vec2 to, double sweep, EdgePlane plane)
    {
        Vec2 chord = to - from, middle = Vec2.Lerp(from, to, 0.5);
        double half = 0.5 * sweep;
        Vec2 centre = middle + 0.5 / Math.Tan(half) * chord.Left;
        double radius = 0.5 * chord.Length / Math.Abs(Math.Sin(half));
        Vec2 outward = (from - centre).Unit;
        double start = Math.Atan2(outward.Y, outward.X);
        return new ArcPiece(plane.Place(centre), plane.Across, plane.Up, radius, start, sweep);
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Lofting.Nearest;

/// <summary>One place of the edge that may move, as measured, in the coordinates of its plane.</summary>
/// <param name="Place">mm.</param>
/// <param name="Angle">Direction of the edge, radians; runs on without jumps of a whole turn.</param>
/// <param name="Length">Along the edge from its left end, mm.</param>
/// <param name="StartsSpan">The first place of a smooth span: nothing joins it to the place before.</param>
internal readonly record struct EdgeStation(Vec2 Place, double Angle, double Length, bool StartsSpan)
{
    /// <summary>Unit tangent.</summary>
    public Vec2 Along => Vec2.FromAngle(Angle);

    /// <summary>Unit normal, to the left of the way the edge runs.</summary>
    public Vec2 Normal => Along.Left;
}

/// <summary>Places along the edge that may move: at every joint of its pieces, and close enough in between that arcs from place to place follow it.</summary>
internal static class EdgeStations
{
    // Stations along a whole edge, if it turns little, and largest turn from one to the next, radians.
    private const double Count = 120, Turn = 0.06;

    // Tangents this close are one: as for a directrix.
    private const double SmoothAngle = 1e-7;

    /// <summary>Stations of an edge.</summary>
    /// <param name="curve">The edge.</param>
    /// <param name="plane">Its plane.</param>
    /// <param name="end">Length at which the last one stands, mm: the whole edge, or half of a mirrored one.</param>
    public static ImmutableArray<EdgeStation> Of(SpaceCurve curve, EdgePlane plane, double end)
    {
        var stations = ImmutableArray.CreateBuilder<EdgeStation>();
        double before = 0, widest = curve.Length / Count;
        for (int i = 0; i < curve.Pieces.Length && before < end - 1e-9 * end; i++)
        {
            CurvePiece piece = curve.Pieces[i];
            double length = curve.PieceLengths[i], to = Math.Min(1, (end - before) / length);
            bool starts = i == 0 || curve.Pieces[i - 1].At(1).D1.AngleTo(piece.At(0).D1) > SmoothAngle;
            if (starts) Add(piece.At(0), before, true);
            double last = to == 1 ? length : end - before;
            int steps = Math.Max(1, (int)Math.Ceiling(last / widest));
            steps = Math.Max(steps, (int)Math.Ceiling(TurnOf(piece, to) / Turn));
            for (int k = 1; k <= steps; k++)
            {
                double at = before + last * k / steps;
                Add(k == steps && to == 1 ? piece.At(1) : curve.AtLength(at), at, false);
            }
            before += length;
        }
        return stations.ToImmutable();

        void Add(CurveSample sample, double at, bool starts)
        {
            Vec3 place = plane.Own(sample.Point), along = plane.OwnDirection(sample.D1);
            double angle = Math.Atan2(along.Y, along.X);
            if (stations.Count > 0) angle = stations[^1].Angle + Math.IEEERemainder(angle - stations[^1].Angle, Math.Tau);
            stations.Add(new EdgeStation(new Vec2(place.X, place.Y), angle, at, starts));
        }
    }

    private static double TurnOf(CurvePiece piece, double to)
    {
        const int steps = 16;
        double turn = 0;
        Vec3 tangent = piece.At(0).D1;
        for (int k = 1; k <= steps; k++)
        {
            Vec3 next = piece.At(to * k / steps).D1;
            turn += tangent.AngleTo(next);
            tangent = next;
        }
        return turn;
    }
}

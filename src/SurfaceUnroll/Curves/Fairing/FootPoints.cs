using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Curves.Fairing;

/// <summary>Parameters of points along a curve near them.</summary>
internal static class FootPoints
{
    /// <summary>Parameters moved to the foot of each point on the curve, by length along it (J. Hoschek, Intrinsic parametrization for approximation, 1988).</summary>
    /// <param name="curve">Near the points, one cubic from each to the next.</param>
    /// <param name="places">The points.</param>
    /// <param name="parameters">As they were: as many, of a closed row one more.</param>
    /// <param name="closed">The row goes on from its last point to its first.</param>
    /// <returns>Null where that would change their order.</returns>
    public static double[]? Of(FairCurve curve, ImmutableArray<Vec3> places, double[] parameters, bool closed)
    {
        ImmutableArray<CurvePiece> pieces = curve.Pieces();
        double[] length = [.. pieces.Select(p => p.Length(0, 1))];
        var feet = new double[parameters.Length];
        double along = 0;
        for (int i = 0; i < places.Length; i++)
        {
            bool last = i == pieces.Length;
            CurveSample at = last ? pieces[i - 1].At(1) : pieces[i].At(0);
            feet[i] = along + (places[i] - at.Point).Dot(at.Tangent);
            if (!last) along += length[i];
        }
        if (closed) feet[^1] = feet[0] + along;
        for (int i = 1; i < feet.Length; i++)
            if (feet[i] - feet[i - 1] < 0.1 * (parameters[i] - parameters[i - 1])) return null;
        return feet;
    }
}

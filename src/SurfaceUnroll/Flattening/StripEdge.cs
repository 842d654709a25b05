using SurfaceUnroll.Geometry;
using SurfaceUnroll.Lofting;

namespace SurfaceUnroll.Flattening;

/// <summary>One edge of a strip, seen from its three element lines.</summary>
/// <param name="Strip">The strip.</param>
/// <param name="IsFront">The front edge, or the rear one.</param>
internal readonly record struct StripEdge(Strip Strip, bool IsFront)
{
    /// <summary>True at the tip of a fan: the edge does not advance.</summary>
    public bool IsStill => IsFront ? Strip.FrontStill : Strip.RearStill;

    /// <summary>Lengths from the left to the middle and to the right element line, mm; 0 at the tip of a fan.</summary>
    public (double ToMiddle, double ToRight) Length => IsStill ? (0, 0) : EdgeIntegral.Length(Place(Strip.Left), Place(Strip.Middle), Place(Strip.Right));

    /// <summary>∫ f ds along the edge, f given by the edge's unit tangent and the element line.</summary>
    public (double ToMiddle, double ToRight) Integral(Func<Vec3, Station, double> f) => IsStill
        ? (0, 0)
        : EdgeIntegral.Of(
            f(Tangent(Strip.Left), Strip.Left), f(Tangent(Strip.Middle), Strip.Middle), f(Tangent(Strip.Right), Strip.Right), Length);

    private Vec3 Place(Station s) => IsFront ? s.Front : s.Rear;

    private Vec3 Tangent(Station s) => IsFront ? s.FrontTangent : s.RearTangent;
}

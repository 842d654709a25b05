using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Curves;

/// <summary>Place and first two derivatives of a curve piece at one parameter.</summary>
/// <param name="Point">Place in job space, mm.</param>
/// <param name="D1">First derivative by the parameter, mm; nonzero on a valid piece.</param>
/// <param name="D2">Second derivative by the parameter, mm.</param>
public readonly record struct CurveSample(Vec3 Point, Vec3 D1, Vec3 D2)
{
    /// <summary>Unit tangent.</summary>
    public Vec3 Tangent => D1.Unit;

    /// <summary>Curvature vector d²P/ds², 1/mm: D2 without its part along the tangent, over |D1|².</summary>
    public Vec3 CurvatureVector
    {
        get
        {
            double speed2 = D1.Dot(D1);
            return (D2 - (D2.Dot(D1) / speed2) * D1) / speed2;
        }
    }
}

/// <summary>One smooth (C2) piece of a curve in job space over the parameter t in [0, 1]. Exact: it is evaluated, never sampled.</summary>
/// <remarks>To add a curve kind, derive from this and override <see cref="At"/>; length and its inverse then follow by
/// quadrature, or may be overridden by a closed form.</remarks>
public abstract class CurvePiece
{
    /// <summary>Place and derivatives at <paramref name="t"/> in [0, 1].</summary>
    public abstract CurveSample At(double t);

    /// <summary>True if the piece is a straight line segment.</summary>
    public virtual bool IsStraight => false;

    /// <summary>Arc length between two parameters, mm, signed: negative if <paramref name="t1"/> &lt; <paramref name="t0"/>.
    /// Relative accuracy 1e-11 or better on the pieces of this library.</summary>
    public virtual double Length(double t0, double t1) => ArcLength.Integrate(this, t0, t1);

    /// <summary>The same piece run from its end to its start.</summary>
    public virtual CurvePiece Reversed() => new ReversedPiece(this);
}

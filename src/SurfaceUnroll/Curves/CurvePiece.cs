using System.Collections.Immutable;
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

    /// <summary>The same piece moved, turned or mirrored.</summary>
    public virtual CurvePiece Placed(Frame frame) => new TransformedPiece(this, frame);

    /// <summary>Parameters inside (0, 1), ascending, at which the piece crosses the plane point·axis = offset. A place where it
    /// only touches the plane may be left out.</summary>
    /// <remarks>Lines, arcs and cubics find every crossing; this general form finds those that 64 equal steps of t tell apart.</remarks>
    public virtual ImmutableArray<double> Crossings(Vec3 axis, double offset)
    {
        const int steps = 64;
        double Value(double t) => At(t).Point.Dot(axis) - offset;
        var found = ImmutableArray.CreateBuilder<double>();
        for (int i = 0; i < steps; i++)
        {
            double lo = (double)i / steps, hi = (i + 1.0) / steps, atLo = Value(lo), atHi = Value(hi);
            if (atLo * atHi < 0) found.Add(CubicRoots.Bisect(Value, lo, hi, atLo < 0));
            else if (atLo == 0 && i > 0) found.Add(lo);
        }
        return found.ToImmutable();
    }
}

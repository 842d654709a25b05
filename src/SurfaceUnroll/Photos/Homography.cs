using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Photos;

/// <summary>How a flat thing is seen by a lens without bow: (x, y) goes to ((A x + B y + C) / w, (D x + E y + F) / w) with w = G x + H y + 1.</summary>
/// <remarks>The ninth number may be 1 wherever the origin is seen, for w is nought only on the line that is seen at no distance at all. <c>default</c> takes everything to the origin.</remarks>
public readonly record struct Homography(double A, double B, double C, double D, double E, double F, double G, double H)
{
    /// <summary>Where a place is seen.</summary>
    public Vec2 Map(Vec2 p)
    {
        double w = G * p.X + H * p.Y + 1;
        return new Vec2((A * p.X + B * p.Y + C) / w, (D * p.X + E * p.Y + F) / w);
    }

    /// <summary>The place that is seen somewhere: the adjoint matrix takes it back.</summary>
    public Vec2 Back(Vec2 q)
    {
        double x = (E - F * H) * q.X + (C * H - B) * q.Y + (B * F - C * E);
        double y = (F * G - D) * q.X + (A - C * G) * q.Y + (C * D - A * F);
        double w = (D * H - E * G) * q.X + (B * G - A * H) * q.Y + (A * E - B * D);
        return new Vec2(x / w, y / w);
    }

    /// <summary>Inside the part of the plane before the lens.</summary>
    public bool Sees(Vec2 p) => G * p.X + H * p.Y + 1 > 1e-6;

    /// <summary>The eight numbers.</summary>
    public double[] Numbers => [A, B, C, D, E, F, G, H];

    /// <summary>From eight numbers.</summary>
    public static Homography Of(ReadOnlySpan<double> n) => new(n[0], n[1], n[2], n[3], n[4], n[5], n[6], n[7]);

    /// <summary>The one that takes places to where they were seen, of more than four the least squares of the linear equations.</summary>
    /// <param name="from">Four or more, about the origin and of a size near 1, so that rounding does no harm (R. Hartley &amp; A. Zisserman, Multiple View Geometry, 2nd ed., section 4.4).</param>
    /// <param name="to">As many, of such a size too.</param>
    /// <returns>Null where three of four places lie on one line, or all of more.</returns>
    /// <remarks>Equations (4.3) of the same book, with the ninth number 1.</remarks>
    public static Homography? Linear(ImmutableArray<Vec2> from, ImmutableArray<Vec2> to)
    {
        var normal = new NormalEquations(8);
        for (int i = 0; i < from.Length; i++)
        {
            (double x, double y) = (from[i].X, from[i].Y);
            normal.Add([x, y, 1, 0, 0, 0, -to[i].X * x, -to[i].X * y], to[i].X);
            normal.Add([0, 0, 0, x, y, 1, -to[i].Y * x, -to[i].Y * y], to[i].Y);
        }
        return normal.Solve() is { } solved ? Of(solved) : null;
    }
}

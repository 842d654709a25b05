using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Curves.Fairing;

/// <summary>A cubic in space: C0 + C1·t + C2·t² + C3·t³, t from 0 to 1.</summary>
internal readonly record struct Cubic(Vec3 C0, Vec3 C1, Vec3 C2, Vec3 C3)
{
    // Newton's steps from a place that is a small part of the piece away.
    private const int Steps = 8;

    /// <summary>Its end.</summary>
    public Vec3 End => C0 + C1 + C2 + C3;

    /// <summary>The same with another end.</summary>
    public Cubic EndingAt(Vec3 place) => this with { C3 = place - C0 - C1 - C2 };

    /// <summary>From one parameter to another, which may lie a little outside.</summary>
    public Cubic Over(double from, double to)
    {
        double h = to - from;
        return new Cubic(At(from), h * D1(from), h * h * (C2 + 3 * from * C3), h * h * h * C3);
    }

    /// <summary>Parameter of the foot of a place near a parameter; at most half the piece away from there.</summary>
    public double Foot(Vec3 place, double near)
    {
        double t = near;
        for (int i = 0; i < Steps; i++)
        {
            Vec3 off = At(t) - place, d1 = D1(t);
            double slope = d1.Dot(d1) + off.Dot(2 * C2 + 6 * t * C3);
            if (!(slope > 0)) return near;
            t = Math.Clamp(t - off.Dot(d1) / slope, near - 0.5, near + 0.5);
        }
        return t;
    }

    /// <summary>As a piece of a curve.</summary>
    public CurvePiece Piece() => new CubicPiece(C0, C1, C2, C3);

    /// <summary>The place at a parameter.</summary>
    public Vec3 At(double t) => C0 + t * (C1 + t * (C2 + t * C3));

    private Vec3 D1(double t) => C1 + t * (2 * C2 + 3 * t * C3);
}

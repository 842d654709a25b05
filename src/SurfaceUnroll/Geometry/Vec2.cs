using System.Globalization;

namespace SurfaceUnroll.Geometry;

/// <summary>A point or vector of a plane, millimetres unless said otherwise: a measured profile (across, up),
/// the flat blank (right, forward) or a sheet of paper (right, up).</summary>
/// <param name="X">To the right.</param>
/// <param name="Y">Up the page.</param>
public readonly record struct Vec2(double X, double Y)
{
    /// <summary>The origin.</summary>
    public static Vec2 Zero => default;

    /// <summary>Euclidean length.</summary>
    public double Length => Math.Sqrt(X * X + Y * Y);

    /// <summary>Unit vector of the same direction; the zero vector stays zero.</summary>
    public Vec2 Unit
    {
        get
        {
            double length = Length;
            return length > 0 ? new Vec2(X / length, Y / length) : Zero;
        }
    }

    /// <summary>This vector turned a quarter to the left.</summary>
    public Vec2 Left => new(-Y, X);

    /// <summary>Unit vector at <paramref name="angle"/> radians, counter-clockwise from +X.</summary>
    public static Vec2 FromAngle(double angle) => new(Math.Cos(angle), Math.Sin(angle));

    // The printing that records come with would print Unit, and its Unit, without end.
    /// <summary>The components, to full precision.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"({X:R}, {Y:R})");

    /// <summary>Componentwise sum.</summary>
    public static Vec2 operator +(Vec2 a, Vec2 b) => new(a.X + b.X, a.Y + b.Y);

    /// <summary>Componentwise difference.</summary>
    public static Vec2 operator -(Vec2 a, Vec2 b) => new(a.X - b.X, a.Y - b.Y);

    /// <summary>The opposite vector.</summary>
    public static Vec2 operator -(Vec2 a) => new(-a.X, -a.Y);

    /// <summary>Scaled vector.</summary>
    public static Vec2 operator *(double k, Vec2 a) => new(k * a.X, k * a.Y);

    /// <summary>Dot product.</summary>
    public double Dot(Vec2 b) => X * b.X + Y * b.Y;

    /// <summary>Signed area of the parallelogram; positive where <paramref name="b"/> lies to the left.</summary>
    public double Cross(Vec2 b) => X * b.Y - Y * b.X;

    /// <summary>This vector turned by <paramref name="angle"/> radians, counter-clockwise.</summary>
    public Vec2 Rotate(double angle)
    {
        (double sin, double cos) = Math.SinCos(angle);
        return new Vec2(cos * X - sin * Y, sin * X + cos * Y);
    }

    /// <summary>The point a fraction <paramref name="t"/> of the way from <paramref name="a"/> to <paramref name="b"/>.</summary>
    public static Vec2 Lerp(Vec2 a, Vec2 b, double t) => a + t * (b - a);
}

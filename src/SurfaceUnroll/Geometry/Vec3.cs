using System.Globalization;

namespace SurfaceUnroll.Geometry;

/// <summary>A point or vector in job space: right-handed, x aft, y to the right, z up; millimetres unless said otherwise.</summary>
/// <param name="X">Aft.</param>
/// <param name="Y">To the right.</param>
/// <param name="Z">Up.</param>
public readonly record struct Vec3(double X, double Y, double Z)
{
    /// <summary>The origin.</summary>
    public static Vec3 Zero => default;

    /// <summary>Euclidean length.</summary>
    public double Length => Math.Sqrt(Dot(this));

    /// <summary>Unit vector of the same direction; the zero vector stays zero.</summary>
    public Vec3 Unit
    {
        get
        {
            double length = Length;
            return length > 0 ? this / length : Zero;
        }
    }

    // The printing that records come with would print Unit, and its Unit, without end.
    /// <summary>The components, to full precision.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"({X:R}, {Y:R}, {Z:R})");

    /// <summary>Componentwise sum.</summary>
    public static Vec3 operator +(Vec3 a, Vec3 b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    /// <summary>Componentwise difference.</summary>
    public static Vec3 operator -(Vec3 a, Vec3 b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    /// <summary>The opposite vector.</summary>
    public static Vec3 operator -(Vec3 a) => new(-a.X, -a.Y, -a.Z);

    /// <summary>Scaled vector.</summary>
    public static Vec3 operator *(double k, Vec3 a) => new(k * a.X, k * a.Y, k * a.Z);

    /// <summary>Vector divided by a nonzero number.</summary>
    public static Vec3 operator /(Vec3 a, double k) => new(a.X / k, a.Y / k, a.Z / k);

    /// <summary>Dot product.</summary>
    public double Dot(Vec3 b) => X * b.X + Y * b.Y + Z * b.Z;

    /// <summary>Cross product, right-handed.</summary>
    public Vec3 Cross(Vec3 b) => new(Y * b.Z - Z * b.Y, Z * b.X - X * b.Z, X * b.Y - Y * b.X);

    /// <summary>Angle to <paramref name="b"/> in [0, π], exact to rounding even for nearly parallel vectors; 0 if either is zero.</summary>
    public double AngleTo(Vec3 b) => Math.Atan2(Cross(b).Length, Dot(b));

    /// <summary>The point a fraction <paramref name="t"/> of the way from <paramref name="a"/> to <paramref name="b"/>.</summary>
    public static Vec3 Lerp(Vec3 a, Vec3 b, double t) => a + t * (b - a);
}

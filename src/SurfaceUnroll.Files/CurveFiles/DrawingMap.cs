using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Files.CurveFiles;

/// <summary>Where the plane of a drawing goes in the plane of a curve: x to across, y to up, scaled, turned and moved as the file says.</summary>
/// <param name="A">Across per x.</param>
/// <param name="B">Up per x.</param>
/// <param name="C">Across per y.</param>
/// <param name="D">Up per y.</param>
/// <param name="E">Across of the origin, mm.</param>
/// <param name="F">Up of the origin, mm.</param>
internal readonly record struct DrawingMap(double A, double B, double C, double D, double E, double F)
{
    /// <summary>Leaves everything where it is, but for a scale.</summary>
    public static DrawingMap Scale(double x, double y) => new(x, 0, 0, y, 0, 0);

    /// <summary>Moves only.</summary>
    public static DrawingMap Move(double x, double y) => new(1, 0, 0, 1, x, y);

    /// <summary>Turns from x towards y, radians.</summary>
    public static DrawingMap Turn(double angle)
    {
        (double sin, double cos) = Math.SinCos(angle);
        return new DrawingMap(cos, sin, -sin, cos, 0, 0);
    }

    /// <summary>Does not fold the plane into a line.</summary>
    public bool IsSound => double.IsFinite(A * D - B * C) && A * D - B * C != 0 && double.IsFinite(E + F);

    /// <summary>A place of the drawing as (0, across, up), mm.</summary>
    public Vec3 Point(double x, double y) => new(0, A * x + C * y + E, B * x + D * y + F);

    /// <summary>A direction of the drawing.</summary>
    public Vec3 Direction(double x, double y) => new(0, A * x + C * y, B * x + D * y);

    /// <summary>First <paramref name="inner"/>, then this one.</summary>
    public DrawingMap After(DrawingMap inner) => new(
        A * inner.A + C * inner.B, B * inner.A + D * inner.B, A * inner.C + C * inner.D, B * inner.C + D * inner.D,
        A * inner.E + C * inner.F + E, B * inner.E + D * inner.F + F);
}

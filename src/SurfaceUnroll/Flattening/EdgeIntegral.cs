using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Flattening;

/// <summary>Integrals over one strip from values at its left, middle and right element lines.</summary>
internal static class EdgeIntegral
{
    /// <summary>Lengths of a curve from its left to its middle and to its right place.</summary>
    /// <remarks>Richardson: halving a chord leaves a quarter of its error, so a third of the gain is still missing; what remains is of fifth order.</remarks>
    public static (double ToMiddle, double ToRight) Length(double left, double right, double whole)
    {
        double rest = (left + right - whole) / 3;
        return (left + 0.5 * rest, left + right + rest);
    }

    /// <inheritdoc cref="Length(double, double, double)"/>
    public static (double ToMiddle, double ToRight) Length(Vec3 left, Vec3 middle, Vec3 right) =>
        Length((middle - left).Length, (right - middle).Length, (right - left).Length);

    /// <inheritdoc cref="Length(double, double, double)"/>
    public static (double ToMiddle, double ToRight) Length(Vec2 left, Vec2 middle, Vec2 right) =>
        Length((middle - left).Length, (right - middle).Length, (right - left).Length);

    /// <summary>∫ f ds from the left to the middle and to the right place, f a parabola through its three values (Simpson's rule for unequal steps).</summary>
    /// <param name="f0">At s = 0.</param>
    /// <param name="f1">At the middle.</param>
    /// <param name="f2">At the right.</param>
    /// <param name="length">Lengths to the middle and to the right.</param>
    public static (double ToMiddle, double ToRight) Of(double f0, double f1, double f2, (double ToMiddle, double ToRight) length)
    {
        (double a, double b) = length;
        // A place that all but coincides with its neighbour says nothing about curvature: go by the trapezium.
        if (a <= 0.01 * b || a >= 0.99 * b) return (0.5 * a * (f0 + f1), 0.5 * a * (f0 + f1) + 0.5 * (b - a) * (f1 + f2));
        double slope = (f1 - f0) / a, bend = ((f2 - f1) / (b - a) - slope) / b;
        return (To(a), To(b));

        double To(double s) => s * (f0 + s * (0.5 * slope + bend * (s / 3 - 0.5 * a)));
    }
}

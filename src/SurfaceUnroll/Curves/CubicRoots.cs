using System.Collections.Immutable;

namespace SurfaceUnroll.Curves;

/// <summary>Real roots of a cubic inside (0, 1): between neighbouring turning points it is monotone, so each root is bracketed and none is missed.</summary>
internal static class CubicRoots
{
    /// <summary>Places in the open interval (0, 1), ascending, where a + b·t + c·t² + d·t³ changes its sign. A place where it only touches zero is not one.</summary>
    public static ImmutableArray<double> InUnitInterval(double a, double b, double c, double d)
    {
        double Value(double t) => a + t * (b + t * (c + t * d));
        double[] stops = [0, .. TurningPoints(b, 2 * c, 3 * d), 1];
        var roots = ImmutableArray.CreateBuilder<double>();
        double before = 0;
        foreach (double stop in stops)
        {
            // A stop on a root itself is passed over: the sign on its far side tells whether the root is a crossing.
            if (Value(stop) == 0 && stop > 0) continue;
            if (Value(before) * Value(stop) < 0) roots.Add(Bisect(Value, before, stop, Value(before) < 0));
            before = stop;
        }
        return roots.ToImmutable();
    }

    /// <summary>Bisection to the last digit of t; <paramref name="rising"/> tells the sign at <paramref name="lo"/>.</summary>
    public static double Bisect(Func<double, double> value, double lo, double hi, bool rising)
    {
        for (int i = 0; i < 60; i++)
        {
            double mid = 0.5 * (lo + hi);
            if (value(mid) < 0 == rising) lo = mid; else hi = mid;
        }
        return 0.5 * (lo + hi);
    }

    // Roots of p + q t + r t² in (0, 1), ascending; the form q + sign(q)·√ avoids cancellation.
    private static List<double> TurningPoints(double p, double q, double r)
    {
        double disc = q * q - 4 * p * r;
        if (disc < 0) return [];
        double w = -0.5 * (q + Math.CopySign(Math.Sqrt(disc), q));
        double[] found = [w / r, p / w];
        return [.. found.Where(t => t is > 0 and < 1).Order()];
    }
}

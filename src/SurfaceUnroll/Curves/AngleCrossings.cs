using System.Collections.Immutable;

namespace SurfaceUnroll.Curves;

/// <summary>Where an arc of a circle or an ellipse passes through a plane.</summary>
internal static class AngleCrossings
{
    /// <summary>Parameters inside (0, 1), ascending, with along·cos θ + beside·sin θ = offset, θ = start + t·sweep.</summary>
    public static ImmutableArray<double> Of(double along, double beside, double offset, double start, double sweep)
    {
        // amplitude·cos(θ − phase) = offset.
        double amplitude = Math.Sqrt(along * along + beside * beside), phase = Math.Atan2(beside, along);
        double cos = offset / amplitude;
        if (!(Math.Abs(cos) < 1)) return [];
        double half = Math.Acos(cos);
        var found = new List<double>();
        foreach (double angle in (double[])[phase - half, phase + half])
        {
            double first = (angle - start) / sweep, turn = Math.Tau / Math.Abs(sweep);
            for (double t = first - Math.Floor(first / turn) * turn; t < 1; t += turn)
                if (t > 0) found.Add(t);
        }
        found.Sort();
        return [.. found];
    }
}

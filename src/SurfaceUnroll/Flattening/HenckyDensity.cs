namespace SurfaceUnroll.Flattening;

/// <summary>Forming energy of a unit of formed area as a function of the two stretches s from part to blank: (2/3)(a₁² + a₁a₂ + a₂²), e = −ln s the
/// logarithmic strain from blank to part, a = e where metal is stretched and c·e where it is shrunk.</summary>
/// <remarks>Hencky's strain energy of an incompressible isotropic sheet: with e₃ = −(e₁ + e₂) it is a third of e₁² + e₂² + e₃², twice.</remarks>
internal readonly struct HenckyDensity
{
    // With c > 1 the slope of the energy jumps at zero strain wherever the other strain is not zero. Over ± this strain c therefore falls to 1 gradually.
    private const double Blend = 5e-4;

    /// <summary>The density and its derivatives by s₁ ≥ s₂ &gt; 0.</summary>
    public HenckyDensity(double s1, double s2, double shrinkCost)
    {
        Cost a1 = Cost.At(-Math.Log(s1), shrinkCost), a2 = Cost.At(-Math.Log(s2), shrinkCost);
        Value = Of(a1.Value, a2.Value);
        double q1 = 2.0 / 3 * (2 * a1.Value + a2.Value), q2 = 2.0 / 3 * (2 * a2.Value + a1.Value);
        D1 = -q1 * a1.Slope / s1;
        D2 = -q2 * a2.Slope / s2;
        D11 = (4.0 / 3 * a1.Slope * a1.Slope + q1 * (a1.Bend + a1.Slope)) / (s1 * s1);
        D22 = (4.0 / 3 * a2.Slope * a2.Slope + q2 * (a2.Bend + a2.Slope)) / (s2 * s2);
        D12 = 2.0 / 3 * a1.Slope * a2.Slope / (s1 * s2);
    }

    /// <summary>The density.</summary>
    public double Value { get; }

    /// <summary>Derivative by s₁.</summary>
    public double D1 { get; }

    /// <summary>Derivative by s₂.</summary>
    public double D2 { get; }

    /// <summary>Second derivative by s₁.</summary>
    public double D11 { get; }

    /// <summary>Mixed second derivative.</summary>
    public double D12 { get; }

    /// <summary>Second derivative by s₂.</summary>
    public double D22 { get; }

    /// <summary>The density alone.</summary>
    public static double At(double s1, double s2, double shrinkCost) =>
        Of(Cost.At(-Math.Log(s1), shrinkCost).Value, Cost.At(-Math.Log(s2), shrinkCost).Value);

    private static double Of(double a1, double a2) => 2.0 / 3 * (a1 * a1 + a1 * a2 + a2 * a2);

    // a(e) and its derivatives by e: e·c below the band, e above it, and e·c^((1 − w)/2) in it with w = t(3 − t²)/2 from −1 to 1, which rises all the way for c up to 30.
    private readonly record struct Cost(double Value, double Slope, double Bend)
    {
        public static Cost At(double e, double shrinkCost)
        {
            if (e >= Blend || shrinkCost == 1) return new Cost(e, 1, 0);
            if (e <= -Blend) return new Cost(shrinkCost * e, shrinkCost, 0);
            double t = e / Blend, log = Math.Log(shrinkCost);
            double k = Math.Exp(0.5 * log * (1 - 0.5 * t * (3 - t * t)));
            // k′ = k·f with f = −(log/2)·w′, by e; k″ = k·(f² + f′).
            double f = -0.75 * log * (1 - t * t) / Blend, df = 1.5 * log * t / (Blend * Blend);
            return new Cost(e * k, k * (1 + e * f), k * (2 * f + e * (f * f + df)));
        }
    }
}

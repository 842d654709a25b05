namespace SurfaceUnroll.Photos;

/// <summary>Normal numbers, the same at every run.</summary>
/// <param name="seed">Of the row.</param>
internal sealed class NormalDraws(int seed)
{
    private readonly Random _random = new(seed);

    private double? _second;

    /// <summary>Mean 0, spread 1 (G. Marsaglia's polar method, 1964).</summary>
    public double Next()
    {
        if (_second is { } kept)
        {
            _second = null;
            return kept;
        }
        while (true)
        {
            double u = 2 * _random.NextDouble() - 1, v = 2 * _random.NextDouble() - 1, s = u * u + v * v;
            if (s is >= 1 or 0) continue;
            double root = Math.Sqrt(-2 * Math.Log(s) / s);
            _second = v * root;
            return u * root;
        }
    }

    /// <summary>The factor that makes normal numbers into Student's t: √(freedom / χ²), with E. Wilson and M. Hilferty's cube for many degrees of freedom (1931).</summary>
    public double Student(int freedom)
    {
        if (freedom <= 40)
        {
            double sum = 0;
            for (int i = 0; i < freedom; i++)
            {
                double z = Next();
                sum += z * z;
            }
            return Math.Sqrt(freedom / sum);
        }
        double part = 2.0 / (9 * freedom);
        return Math.Pow(1 - part + Math.Sqrt(part) * Next(), -1.5);
    }
}

namespace SurfaceUnroll.Lofting;

/// <summary>One-dimensional searches for torsal rulings along a straight track in the square of coordinates.</summary>
internal sealed class TorsalSearch(Directrix front, Directrix rear)
{
    // Twists below this (radians) are rounding: everything in such a bracket is torsal and the middle is as good as any.
    private const double Rounding = 1e-10;

    /// <summary>Signed twist of a match, radians.</summary>
    public double Twist(Match match) => Torsality.SignedTwist(front.At(match.Front), rear.At(match.Rear));

    /// <summary>True if a match is torsal to rounding.</summary>
    public bool IsTorsal(Match match) => Math.Abs(Twist(match)) < Rounding;

    /// <summary>The torsal match on the track from <paramref name="lo"/> to <paramref name="hi"/>.</summary>
    /// <returns>Null where the twist does not change sign on the right-side-out branch.</returns>
    public Match? Root(Match lo, Match hi)
    {
        double flo = Twist(lo), fhi = Twist(hi);
        if (Math.Abs(flo) < Rounding && Math.Abs(fhi) < Rounding)
        {
            Match middle = Match.Lerp(lo, hi, 0.5);
            if (IsTorsal(middle)) return middle;
        }
        if (Math.Abs(flo) < 1e-14) return lo;
        if (Math.Abs(fhi) < 1e-14) return hi;
        // A change of sign through ±π is the sheet turning inside out, not a root.
        if (flo * fhi > 0 || Math.Abs(flo) + Math.Abs(fhi) > Math.PI) return null;
        return Match.Lerp(lo, hi, Solve(lo, hi, flo, fhi));
    }

    /// <summary>The match of least twist strictly inside the track, or null where the twist falls all the way to an end of it.</summary>
    public Match? Least(Match lo, Match hi)
    {
        const double golden = 0.3819660112501051;
        double a = 0, b = 1, x1 = golden, x2 = 1 - golden;
        double f1 = Size(x1), f2 = Size(x2);
        // 30 golden sections narrow the track a million times; a minimum is flat, so nothing finer can be told apart.
        for (int i = 0; i < 30; i++)
        {
            if (f1 <= f2)
            {
                (b, x2, f2) = (x2, x1, f1);
                x1 = a + golden * (b - a);
                f1 = Size(x1);
            }
            else
            {
                (a, x1, f1) = (x1, x2, f2);
                x2 = b - golden * (b - a);
                f2 = Size(x2);
            }
        }
        double x = f1 <= f2 ? x1 : x2;
        return x is > 0.02 and < 0.98 ? Match.Lerp(lo, hi, x) : null;

        double Size(double t) => Math.Abs(Twist(Match.Lerp(lo, hi, t)));
    }

    // Secant steps kept inside the bracket, the stale end's value halved (Illinois rule: Dowell and Jarratt, BIT 11, 1971).
    private double Solve(Match lo, Match hi, double flo, double fhi)
    {
        double a = 0, b = 1, fa = flo, fb = fhi;
        int side = 0;
        for (int i = 0; i < 100 && b - a > 1e-15; i++)
        {
            double x = (a * fb - b * fa) / (fb - fa);
            if (!(x > a && x < b)) x = 0.5 * (a + b);
            double fx = Twist(Match.Lerp(lo, hi, x));
            if (Math.Abs(fx) < 1e-14) return x;
            if (fx * fb > 0)
            {
                (b, fb) = (x, fx);
                if (side == -1) fa *= 0.5;
                side = -1;
            }
            else
            {
                (a, fa) = (x, fx);
                if (side == 1) fb *= 0.5;
                side = 1;
            }
        }
        return 0.5 * (a + b);
    }
}

using SurfaceUnroll.Curves;
using SurfaceUnroll.Flattening;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Lofting;

namespace SurfaceUnroll.Fitness;

/// <summary>What a ruled sheet asks of the metal when it is laid flat with both edges at their true length.</summary>
public static class SheetFitness
{
    /// <summary>Strain up to which a sheet "bends only": 0.1 %, about the elastic strain of mild steel at yield (280 MPa / 210 GPa = 0.13 %).</summary>
    public const double BendsOnlyStrain = 1e-3;

    // Twist (radians) up to which a strip adds nothing to the energy that rounding would keep.
    private const double Negligible = 1e-6;

    /// <summary>Largest and mean twist; each strip weighs by the share of both edges that it covers.</summary>
    public static TwistSummary Twist(RuledSheet sheet)
    {
        double max = 0, sum = 0, weights = 0;
        (double Front, double Rear)[] widths = [.. sheet.Strips.Select(s => (Width(s, true), Width(s, false)))];
        (double frontTotal, double rearTotal) = (widths.Sum(w => w.Front), widths.Sum(w => w.Rear));
        foreach ((Strip s, (double front, double rear)) in sheet.Strips.Zip(widths))
        {
            max = Math.Max(max, s.MaxTwist);
            double weight = Share(front, frontTotal) + Share(rear, rearTotal);
            sum += weight * (s.Left.Twist + 4 * s.Middle.Twist + s.Right.Twist) / 6;
            weights += weight;
        }
        return new TwistSummary(max, weights > 0 ? sum / weights : 0);
    }

    /// <summary>Twist of lines at equal fractions of both curves' lengths, from a line at each of 257 fractions: what a sheet costs that is laid out by
    /// dividing both edges evenly.</summary>
    public static TwistSummary EvenTwist(SpaceCurve front, SpaceCurve rear)
    {
        const int steps = 256;
        double max = 0, sum = 0;
        for (int i = 0; i <= steps; i++)
        {
            CurveSample a = front.AtLength(front.Length * i / steps), b = rear.AtLength(rear.Length * i / steps);
            var (atFront, atRear) = (new DirectrixSample(a.Point, a.D1), new DirectrixSample(b.Point, b.D1));
            double twist = Math.Abs(Torsality.SignedTwist(atFront, atRear));
            max = Math.Max(max, twist);
            sum += (i is 0 or steps ? 0.5 : 1) * twist;
        }
        return new TwistSummary(max, sum / steps);
    }

    /// <summary>Strain from blank to part.</summary>
    /// <remarks>Across a line that twists by φ, with advances a and b at its ends, the part is √(x² + y² + 2xy cos φ) wide where the blank is x + y, with
    /// x = (1−s)a and y = s·b at the fraction s of the line. The line itself and the edges keep their length, so this is the one principal stretch that differs from 1. It is
    /// least where x = y: the part is narrower there by 1 − cos(φ/2), whatever the advances.</remarks>
    public static StrainSummary Strain(RuledSheet sheet)
    {
        double shrink = 0, energy = 0;
        foreach (Strip s in sheet.Strips)
        {
            if (s.FrontStill || s.RearStill) continue;
            shrink = Math.Max(shrink, 1 - Math.Cos(0.5 * s.MaxTwist));
            if (s.Middle.Twist > Negligible) energy += Energy(s);
        }
        return new StrainSummary(0, shrink, energy);
    }

    /// <summary>The word for a strain.</summary>
    /// <param name="strain">Blank to part.</param>
    /// <param name="limit">Uniform elongation of the material, as a fraction.</param>
    public static Verdict Judge(StrainSummary strain, double limit)
    {
        double worst = Math.Max(strain.MaxStretch, strain.MaxShrink);
        return worst <= BendsOnlyStrain ? Verdict.BendsOnly : worst <= limit ? Verdict.NeedsStretching : Verdict.PastTheLimit;
    }

    // Σ A (2/3) e² over the line by Simpson's rule in eight steps; the other principal strain is zero.
    private static double Energy(Strip s)
    {
        double cos = Math.Cos(s.Middle.Twist), length = s.Middle.Ruling.Length, sum = 0;
        double a = Across(s.Middle.FrontTangent, s.Middle, Width(s, true)), b = Across(s.Middle.RearTangent, s.Middle, Width(s, false));
        const int steps = 8;
        for (int i = 0; i <= steps; i++)
        {
            double t = (double)i / steps, x = (1 - t) * a, y = t * b;
            double width = Math.Sqrt(x * x + y * y + 2 * x * y * cos);
            double strain = width > 0 ? Math.Log(width / (x + y)) : 0;
            double weight = i is 0 or steps ? 1 : i % 2 == 1 ? 4 : 2;
            sum += weight * width * strain * strain;
        }
        return 2.0 / 3 * length * sum / (3 * steps);
    }

    private static double Across(Vec3 tangent, Station s, double advance)
    {
        double length = s.Ruling.Length;
        return length > 0 ? advance * tangent.Cross(s.Ruling).Length / length : 0;
    }

    private static double Width(Strip s, bool front) => new StripEdge(s, front).Length.ToRight;

    private static double Share(double part, double whole) => whole > 0 ? part / whole : 0;
}

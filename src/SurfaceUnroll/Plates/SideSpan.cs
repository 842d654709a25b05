using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Plates;

/// <summary>One place of a side profile: (aft, height), mm.</summary>
/// <param name="Face">On the measured face.</param>
/// <param name="Normal">Unit normal on the outside, which is up where the profile runs level aft.</param>
internal readonly record struct SidePlace(Vec2 Face, Vec2 Normal);

/// <summary>A part of a side profile that is flat, rolled or a sharp bend.</summary>
/// <param name="Length">On the blank, mm.</param>
internal abstract record SideSpan(double Length)
{
    /// <summary>Place at a share in [0, 1] of the length.</summary>
    public abstract SidePlace At(double share);

    /// <summary>Share of the length at an aft distance; between 0 and 1 if the span, running aft, holds that place.</summary>
    public abstract double ShareAt(double aft);

    /// <summary>Radius of the middle surface at a share, mm; positive where the outside is convex (it turns down), +∞ where flat.</summary>
    public abstract double Radius(double share);

    /// <summary>Largest share of the length from station to station, so that facets stay close to the metal.</summary>
    public abstract double Step { get; }

    /// <summary>Largest gap between a facet and the metal, mm.</summary>
    protected const double Gap = 0.004;
}

/// <summary>A flat.</summary>
/// <param name="From">Front end on the measured face.</param>
/// <param name="To">Rear end.</param>
internal sealed record FlatSpan(Vec2 From, Vec2 To) : SideSpan((To - From).Length)
{
    public override SidePlace At(double share) => new(Vec2.Lerp(From, To, share), (To - From).Unit.Left);

    public override double ShareAt(double aft) => (aft - From.X) / (To.X - From.X);

    public override double Radius(double share) => double.PositiveInfinity;

    public override double Step => 1;
}

/// <summary>A rolled arc, or a sharp bend.</summary>
/// <param name="From">Front end on the measured face.</param>
/// <param name="Heading">Direction there, radians counter-clockwise from aft.</param>
/// <param name="FaceRadius">Of the measured face, mm.</param>
/// <param name="MiddleRadius">Of the middle surface, mm.</param>
/// <param name="Turn">Radians, positive up (counter-clockwise).</param>
/// <param name="Bend">What a sharp bend takes; null for a rolled arc.</param>
internal sealed record ArcSpan(Vec2 From, double Heading, double FaceRadius, double MiddleRadius, double Turn, (double InsideRadius, BendLength Length)? Bend)
    : SideSpan(Bend?.Length.Allowance ?? MiddleRadius * Math.Abs(Turn))
{
    private int Sign => Math.Sign(Turn);

    private Vec2 Centre => From + Sign * FaceRadius * Vec2.FromAngle(Heading).Left;

    public override SidePlace At(double share)
    {
        Vec2 normal = Vec2.FromAngle(Heading + share * Turn).Left;
        return new SidePlace(Centre - Sign * FaceRadius * normal, normal);
    }

    // aft = centre + sign·radius·sin(heading), heading within ±90° where the profile runs aft.
    public override double ShareAt(double aft)
    {
        double sine = FaceRadius > 0 ? Math.Clamp(Sign * (aft - Centre.X) / FaceRadius, -1, 1) : 0;
        return (Math.Asin(sine) - Heading) / Turn;
    }

    public override double Radius(double share) => -Sign * MiddleRadius;

    public override double Step => 1 / Math.Ceiling(Math.Abs(Turn) / Math.Min(0.1, Math.Sqrt(8 * Gap / Math.Max(MiddleRadius, 1e-3))));
}

/// <summary>A rolled area whose height is a cubic of the aft distance.</summary>
/// <param name="Height">The cubic.</param>
/// <param name="FromAft">Aft distance of the front end, mm.</param>
/// <param name="ToAft">Aft distance of the rear end, mm.</param>
/// <param name="Offset">From the measured face to the middle surface along the outside normal, mm.</param>
/// <remarks>A curve parallel to a plane one at the distance d on its left is shorter by d times the turn.</remarks>
internal sealed record CubicSpan(HeightSpan Height, double FromAft, double ToAft, double Offset) : SideSpan(MiddleLength(Height, FromAft, ToAft, Offset))
{
    public override SidePlace At(double share)
    {
        double aft = AftAt(share);
        (double height, double slope, _) = Height.At(aft);
        return new SidePlace(new Vec2(aft, height), new Vec2(1, slope).Unit.Left);
    }

    public override double ShareAt(double aft) => MiddleLength(Height, FromAft, aft, Offset) / Length;

    public override double Radius(double share)
    {
        (_, double slope, double bend) = Height.At(AftAt(share));
        double curvature = bend / Math.Pow(1 + slope * slope, 1.5);
        return curvature == 0 ? double.PositiveInfinity : -(1 / curvature - Offset);
    }

    /// <summary>Where the span turns most sharply for its middle surface, whose radius is below 0 where it lies past the centre.</summary>
    public TightRoll Sharpest()
    {
        // Close enough together to miss the sharpest radius of a cubic by less than a thousandth.
        const int probes = 256;
        double[] places = [.. Enumerable.Range(0, probes + 1).Select(k => FromAft + (ToAft - FromAft) * k / probes)];
        double aft = places.MinBy(MiddleRadius);
        return new TightRoll(new Vec2(aft, Height.At(aft).Height), MiddleRadius(aft));
    }

    // Positive however the span turns.
    private double MiddleRadius(double aft)
    {
        (_, double slope, double bend) = Height.At(aft);
        double curvature = bend / Math.Pow(1 + slope * slope, 1.5);
        return curvature == 0 ? double.PositiveInfinity : 1 / Math.Abs(curvature) - Math.Sign(curvature) * Offset;
    }

    public override double Step
    {
        get
        {
            // The second derivative is linear, so the sharpest place is an end.
            double bend = Math.Max(Math.Abs(Height.At(FromAft).Bend), Math.Abs(Height.At(ToAft).Bend));
            double step = bend > 0 ? Math.Sqrt(8 * Gap / bend) : Length;
            return 1 / Math.Ceiling(Math.Max(1, Length / step));
        }
    }

    // Newton within a bracket: the derivative of length by aft is the speed.
    private double AftAt(double share)
    {
        if (share <= 0) return FromAft;
        if (share >= 1) return ToAft;
        double lo = FromAft, hi = ToAft, wanted = share * Length, aft = FromAft + share * (ToAft - FromAft);
        for (int i = 0; i < 50; i++)
        {
            double miss = MiddleLength(Height, FromAft, aft, Offset) - wanted;
            if (Math.Abs(miss) <= 1e-12 * Length) break;
            if (miss > 0) hi = aft; else lo = aft;
            double slope = Height.At(aft).Slope, next = aft - miss / Math.Sqrt(1 + slope * slope);
            aft = next > lo && next < hi ? next : 0.5 * (lo + hi);
        }
        return aft;
    }

    private static double MiddleLength(HeightSpan height, double from, double to, double offset)
    {
        if (from == to) return 0;
        (double h0, double s0, _) = height.At(from);
        (double h1, double s1, _) = height.At(to);
        var piece = CubicPiece.Hermite(new Vec3(from, 0, h0), (to - from) * new Vec3(1, 0, s0), new Vec3(to, 0, h1), (to - from) * new Vec3(1, 0, s1));
        return Math.Sign(to - from) * piece.Length(0, 1) - offset * (Math.Atan(s1) - Math.Atan(s0));
    }
}

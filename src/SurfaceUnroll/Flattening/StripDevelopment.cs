using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Lofting;

namespace SurfaceUnroll.Flattening;

/// <summary>An element line on the blank.</summary>
/// <param name="Front">Front end, mm.</param>
/// <param name="Rear">Rear end, mm.</param>
public readonly record struct FlatLine(Vec2 Front, Vec2 Rear);

/// <summary>A strip on the blank: its left, middle and right element lines.</summary>
/// <param name="Left">Left line.</param>
/// <param name="Middle">Middle line.</param>
/// <param name="Right">Right line.</param>
public readonly record struct FlatStrip(FlatLine Left, FlatLine Middle, FlatLine Right);

/// <summary>Lays a ruled sheet flat, strip by strip, both edges and every element line at their true length.</summary>
/// <remarks>Bending leaves the angle between edge and element line as it is, and turns an element line in the plane by what it turns within the
/// tangent plane: dψ = dr̂·(n × r̂). On a torsal ruling that is the arc that r̂ draws on the unit sphere. The heading of an
/// edge is ψ less its angle to the element line, and its place the integral of the heading over the arc length (Struik, Lectures on Classical
/// Differential Geometry, section 4-1: geodesic curvature is bending invariant). Where a line twists there is no tangent plane; the lines are then set so
/// that both edges keep their length, dψ = (db⊥ − da⊥)/L with a⊥ and b⊥ the advance of front and rear square to the line.</remarks>
public static class StripDevelopment
{
    // Twist (radians) up to which a line counts as torsal: the arc on the sphere then exceeds its part in the tangent plane by a factor of
    // at most 1 + 1e-8, whichever rule is used.
    private const double Torsal = 1e-4;

    /// <summary>The blank, the first line's front end at the origin and the line straight down the page.</summary>
    public static ImmutableArray<FlatStrip> LayFlat(RuledSheet sheet)
    {
        var flat = ImmutableArray.CreateBuilder<FlatStrip>(sheet.Strips.Length);
        Vec2 front = Vec2.Zero;
        double heading = -Math.PI / 2;
        foreach (Strip strip in sheet.Strips)
        {
            FlatStrip laid = Lay(strip, front, ref heading);
            flat.Add(laid);
            front = laid.Right.Front;
        }
        return flat.MoveToImmutable();
    }

    private static FlatStrip Lay(Strip strip, Vec2 front, ref double heading)
    {
        Vec3 middle = strip.Middle.Ruling.Unit;
        // A line of no length takes the direction that its strip runs out to.
        Vec3 left = Direction(strip.Left, 2 * middle - strip.Right.Ruling.Unit);
        Vec3 right = Direction(strip.Right, 2 * middle - left);
        (double toMiddle, double toRight) = strip.MaxTwist <= Torsal ? ArcOnSphere(strip, left, middle, right) : WidthsOverLength(strip);
        double psi0 = heading, psi1 = heading + toMiddle, psi2 = heading + toRight;

        heading = psi2;
        // The tip of a fan is one place, whichever edge it is on.
        if (strip.RearStill)
        {
            Vec2 tip = front + strip.Left.Ruling.Length * Vec2.FromAngle(psi0);
            return new FlatStrip(ToRear(tip, strip.Left, psi0), ToRear(tip, strip.Middle, psi1), ToRear(tip, strip.Right, psi2));
        }
        (Vec2 front1, Vec2 front2) = (front, front);
        if (!strip.FrontStill)
        {
            var length = new StripEdge(strip, IsFront: true).Length;
            Vec2 t0 = EdgeHeading(strip.Left, left, psi0), t1 = EdgeHeading(strip.Middle, middle, psi1), t2 = EdgeHeading(strip.Right, right, psi2);
            var x = EdgeIntegral.Of(t0.X, t1.X, t2.X, length);
            var y = EdgeIntegral.Of(t0.Y, t1.Y, t2.Y, length);
            (front1, front2) = (front + new Vec2(x.ToMiddle, y.ToMiddle), front + new Vec2(x.ToRight, y.ToRight));
        }
        return new FlatStrip(ToFront(front, strip.Left, psi0), ToFront(front1, strip.Middle, psi1), ToFront(front2, strip.Right, psi2));
    }

    private static FlatLine ToFront(Vec2 front, Station station, double psi) => new(front, front + station.Ruling.Length * Vec2.FromAngle(psi));

    private static FlatLine ToRear(Vec2 rear, Station station, double psi) => new(rear - station.Ruling.Length * Vec2.FromAngle(psi), rear);

    private static Vec3 Direction(Station station, Vec3 limit) => station.Ruling.Length > 1e-12 * station.Front.Length ? station.Ruling.Unit : limit.Unit;

    // The front edge's unit tangent on the blank: its angle to the element line, measured in the front end's tangent plane, is kept.
    private static Vec2 EdgeHeading(Station station, Vec3 ruling, double psi)
    {
        Vec3 normal = ruling.Cross(station.FrontTangent);
        double along = station.FrontTangent.Dot(ruling);
        double across = normal.Length * (normal.Dot(station.Normal) < 0 ? -1 : 1);
        return new Vec2(along, across).Unit.Rotate(psi);
    }

    private static (double ToMiddle, double ToRight) ArcOnSphere(Strip strip, Vec3 left, Vec3 middle, Vec3 right)
    {
        // Towards the right within the tangent plane; the sign of the turn is taken against it.
        Vec3 across = strip.Middle.Normal.Cross(middle);
        return EdgeIntegral.Length(Signed(left, middle), Signed(middle, right), Signed(left, right));

        double Signed(Vec3 from, Vec3 to) => from.AngleTo(to) * (Math.Sign((to - from).Dot(across)) < 0 ? -1 : 1);
    }

    private static (double ToMiddle, double ToRight) WidthsOverLength(Strip strip)
    {
        (double frontMiddle, double frontRight) = new StripEdge(strip, IsFront: true).Integral(Slope);
        (double rearMiddle, double rearRight) = new StripEdge(strip, IsFront: false).Integral(Slope);
        return (rearMiddle - frontMiddle, rearRight - frontRight);

        // Turn of the line for each millimetre of edge.
        static double Slope(Vec3 tangent, Station s)
        {
            double length = s.Ruling.Length;
            return length > 0 ? tangent.Cross(s.Ruling).Length / (length * length) : 0;
        }
    }
}

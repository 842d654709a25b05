using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Patterns.CutPaths;

/// <summary>One segment of a cut path: a circular arc, or a line where it does not bend.</summary>
/// <param name="From">Start, mm.</param>
/// <param name="To">End, mm.</param>
/// <param name="Bulge">Tangent of a quarter of the arc's angle, positive where it turns left; 0 for a line.</param>
public readonly record struct PathArc(Vec2 From, Vec2 To, double Bulge)
{
    /// <summary>The arc that leaves a place in a direction and ends at another place: its half angle is the angle from that direction to the chord.</summary>
    public static PathArc Leaving(Vec2 from, Vec2 direction, Vec2 to) => new(from, to, Math.Tan(0.5 * Angle(direction, to - from)));

    /// <summary>The arc that arrives at a place in a direction.</summary>
    public static PathArc Arriving(Vec2 from, Vec2 to, Vec2 direction) => new(from, to, Math.Tan(0.5 * Angle(to - from, direction)));

    /// <summary>The arc from one place through a second to a third: it turns by twice the angle between the two chords.</summary>
    public static PathArc Through(Vec2 from, Vec2 middle, Vec2 to) => new(from, to, Math.Tan(0.5 * Angle(middle - from, to - middle)));

    /// <summary>Angle that the direction turns through along it, radians, positive to the left.</summary>
    public double Turn => 4 * Math.Atan(Bulge);

    /// <summary>Radius, mm, positive where it turns left; infinite for a line.</summary>
    public double Radius => Chord.Length * (1 + Bulge * Bulge) / (4 * Bulge);

    /// <summary>Centre of the circle, mm; not for a line.</summary>
    public Vec2 Centre => 0.5 * (From + To) + (1 - Bulge * Bulge) / (4 * Bulge) * Chord.Left;

    /// <summary>Direction at its start, a unit vector.</summary>
    public Vec2 Start => Chord.Unit.Rotate(-0.5 * Turn);

    /// <summary>Direction at its end, a unit vector.</summary>
    public Vec2 End => Chord.Unit.Rotate(0.5 * Turn);

    /// <summary>Length along it, mm.</summary>
    public double Length => Bulge == 0 ? Chord.Length : Math.Abs(Radius * Turn);

    private Vec2 Chord => To - From;

    /// <summary>The place a share of the way along it.</summary>
    public Vec2 At(double share) => Bulge == 0 ? Vec2.Lerp(From, To, share) : Centre + (From - Centre).Rotate(share * Turn);

    /// <summary>Its ends and the places where it runs along an axis.</summary>
    public IEnumerable<Vec2> Extremes
    {
        get
        {
            yield return From;
            yield return To;
            if (Bulge == 0) yield break;
            Vec2 centre = Centre;
            double radius = Math.Abs(Radius);
            foreach (Vec2 way in new[] { new Vec2(1, 0), new Vec2(0, 1), new Vec2(-1, 0), new Vec2(0, -1) })
            {
                // How far round from the start, the way that the arc turns.
                double round = Math.Sign(Bulge) * Angle(From - centre, way);
                if ((round < 0 ? round + Math.Tau : round) < Math.Abs(Turn)) yield return centre + radius * way;
            }
        }
    }

    /// <summary>Angle from one direction to another, radians, −π to π, positive to the left.</summary>
    internal static double Angle(Vec2 from, Vec2 to) => Math.Atan2(from.Cross(to), from.Dot(to));
}

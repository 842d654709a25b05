using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Patterns.Joints;

/// <summary>How two edges lie to each other.</summary>
/// <param name="First">The first edge.</param>
/// <param name="Second">The second, run the same way and from the same end.</param>
/// <param name="LargestGap">Largest distance between the joint lines, mm.</param>
/// <param name="GapAt">Where along the first, mm.</param>
/// <param name="GapPlace">The same in job space.</param>
/// <param name="LeastAngle">Smallest angle between the sheets, radians; π where one runs straight on into the other.</param>
/// <param name="GreatestAngle">Largest.</param>
internal sealed record JointCheck(EdgeTrack First, EdgeTrack Second, double LargestGap, double GapAt, Vec3 GapPlace, double LeastAngle, double GreatestAngle)
{
    // Places at which angles and gaps are looked at, besides the corners of the joint lines.
    private const int Probes = 200;

    /// <summary>Difference of length and distance that a joint bears, mm.</summary>
    public const double Tolerance = 0.3;

    /// <summary>Second length less first, mm.</summary>
    public double Difference => Second.Length - First.Length;

    /// <summary>Lengths and places agree.</summary>
    public bool Fits => Math.Abs(Difference) <= Tolerance && LargestGap <= Tolerance;

    /// <summary>Compares two edges.</summary>
    public static JointCheck Of(EdgeTrack first, EdgeTrack second)
    {
        second = Aligned(first, second);
        (double gap, double gapAt, Vec3 gapPlace) = (-1, 0, Vec3.Zero);
        (double least, double greatest) = (double.PositiveInfinity, 0);
        for (int k = 0; k <= Probes; k++)
        {
            TrackPlace place = first.At(first.Length * k / Probes);
            (TrackPlace mate, double distance) = second.Nearest(place.Joint);
            double angle = place.Inward.AngleTo(mate.Inward);
            (least, greatest) = (Math.Min(least, angle), Math.Max(greatest, angle));
            Widen(distance, place);
        }
        foreach (double at in first.Distances) Widen(second.Nearest(first.At(at).Joint).Distance, first.At(at));
        // Where the second runs on past the first.
        foreach (Vec3 place in second.Joint)
        {
            (TrackPlace near, double distance) = first.Nearest(place);
            Widen(distance, near);
        }
        return new JointCheck(first, second, gap, gapAt, gapPlace, least, greatest);

        void Widen(double distance, TrackPlace place)
        {
            if (distance > gap + 1e-9) (gap, gapAt, gapPlace) = (distance, place.At, place.Joint);
        }
    }

    /// <summary>Compares two edges run by run: each run of the first with that of the second that lies nearest to its middle.</summary>
    public static ImmutableArray<JointCheck> Of(ImmutableArray<EdgeTrack> first, ImmutableArray<EdgeTrack> second) =>
        [.. first.Select(run => Of(run, second.MinBy(other => other.Nearest(run.At(0.5 * run.Length).Joint).Distance)!))];

    // From the same end, or of a closed edge from the place next to the first one's start, and the same way.
    private static EdgeTrack Aligned(EdgeTrack first, EdgeTrack second)
    {
        Vec3 start = first.Joint[0], end = first.Joint[^1];
        if (second.IsClosed)
        {
            second = second.StartingAt(second.Nearest(start).Place.At);
            return first.At(0.1 * first.Length).Joint is var ahead && (second.At(0.1 * second.Length).Joint - ahead).Length <= (second.At(0.9 * second.Length).Joint - ahead).Length
                ? second : second.Reversed();
        }
        double same = (second.Joint[0] - start).Length + (second.Joint[^1] - end).Length;
        double opposite = (second.Joint[^1] - start).Length + (second.Joint[0] - end).Length;
        return same <= opposite ? second : second.Reversed();
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Patterns.Joints;

/// <summary>A run of an edge and what it meets on the other piece.</summary>
/// <param name="First">A run of the first edge.</param>
/// <param name="Second">The run of the second that it meets, run the same way and from the same end.</param>
/// <param name="Part">Which of the two is only a part of the other, because a trim parted its edge: 0 or 1; null where they are to be equal.</param>
internal sealed record JointRun(EdgeTrack First, EdgeTrack Second, int? Part)
{
    /// <summary>Places that meet: at equal lengths of both, or on a whole edge next to those of the part.</summary>
    /// <param name="pitch">Distance wanted, mm; null: the usual one; 0: none.</param>
    public IEnumerable<(TrackPlace First, TrackPlace Second)> Mates(double? pitch)
    {
        EdgeTrack led = Part == 1 ? Second : First;
        foreach (double at in MarkLayout.Distances(led, pitch))
        {
            TrackPlace place = led.At(at);
            yield return Part switch
            {
                0 => (place, Second.Nearest(place.Joint).Place),
                1 => (First.Nearest(place.Joint).Place, place),
                _ => (place, Second.At(at)),
            };
        }
    }
}

/// <summary>How two edges lie to each other.</summary>
/// <param name="Runs">What meets what.</param>
/// <param name="LargestGap">Largest distance between the joint lines, mm.</param>
/// <param name="GapAt">Where along its run of the first, mm.</param>
/// <param name="GapPlace">The same in job space.</param>
/// <param name="LeastAngle">Smallest angle between the sheets, radians; π where one runs straight on into the other.</param>
/// <param name="GreatestAngle">Largest.</param>
internal sealed record JointCheck(ImmutableArray<JointRun> Runs, double LargestGap, double GapAt, Vec3 GapPlace, double LeastAngle, double GreatestAngle)
{
    // Places of a run at which angles and gaps are looked at, besides the corners of the joint lines.
    private const int Probes = 200;

    /// <summary>Difference of length and distance that a joint bears, mm.</summary>
    public const double Tolerance = 0.3;

    /// <summary>Compares two edges, each in one run or, where a trim parted it, in several.</summary>
    public static JointCheck Of(ImmutableArray<EdgeTrack> first, ImmutableArray<EdgeTrack> second)
    {
        (double gap, double gapAt, Vec3 gapPlace) = (-1, 0, Vec3.Zero);
        (double least, double greatest) = (double.PositiveInfinity, 0);
        foreach (EdgeTrack run in first)
        {
            for (int k = 0; k <= Probes; k++)
            {
                TrackPlace place = run.At(run.Length * k / Probes);
                (TrackPlace mate, double distance) = Nearest(second, place.Joint);
                double angle = place.Inward.AngleTo(mate.Inward);
                (least, greatest) = (Math.Min(least, angle), Math.Max(greatest, angle));
                Widen(distance, place);
            }
            foreach (double at in run.Distances) Widen(Nearest(second, run.At(at).Joint).Distance, run.At(at));
        }
        // Where the second runs on past the first.
        foreach (Vec3 place in second.SelectMany(run => run.Joint))
        {
            (TrackPlace near, double distance) = Nearest(first, place);
            Widen(distance, near);
        }
        return new JointCheck([.. Meeting(first, second)], gap, gapAt, gapPlace, least, greatest);

        void Widen(double distance, TrackPlace place)
        {
            if (distance > gap + 1e-9) (gap, gapAt, gapPlace) = (distance, place.At, place.Joint);
        }
    }

    private static (TrackPlace Place, double Distance) Nearest(ImmutableArray<EdgeTrack> runs, Vec3 point) => runs.Select(r => r.Nearest(point)).MinBy(n => n.Distance);

    // Each run of the edge that has more of them with that of the other which lies nearest to its middle.
    private static IEnumerable<JointRun> Meeting(ImmutableArray<EdgeTrack> first, ImmutableArray<EdgeTrack> second)
    {
        if (first.Length >= second.Length)
            return first.Select(run => Mate(run, second) is var mate && Count(mate, second, first) > 1 ? new JointRun(run, mate, 0) : new JointRun(run, Aligned(run, mate), null));
        return second.Select(run => Mate(run, first) is var mate && Count(mate, first, second) > 1 ? new JointRun(mate, run, 1) : new JointRun(mate, Aligned(mate, run), null));

        static EdgeTrack Mate(EdgeTrack run, ImmutableArray<EdgeTrack> others) => others.MinBy(other => other.Nearest(run.At(0.5 * run.Length).Joint).Distance)!;

        // Runs that meet the same one.
        static int Count(EdgeTrack mate, ImmutableArray<EdgeTrack> mates, ImmutableArray<EdgeTrack> runs) => runs.Count(run => ReferenceEquals(Mate(run, mates), mate));
    }

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

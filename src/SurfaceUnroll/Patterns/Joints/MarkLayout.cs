using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Joints;

/// <summary>Numbered ticks at equal lengths along an edge.</summary>
internal static class MarkLayout
{
    // Distance of marks where the job names none, mm, and the fewest marks of a joint.
    private const double Pitch = 50;
    private const int Fewest = 2;

    /// <summary>Distances along the first edge of a joint, mm.</summary>
    public static IEnumerable<double> Distances(EdgeTrack edge, double? pitch)
    {
        if (pitch is 0) return [];
        int gaps = Math.Max(Fewest + 1, (int)Math.Round(edge.Length / (pitch ?? Pitch)));
        return edge.IsClosed
            ? Enumerable.Range(0, gaps).Select(k => edge.Length * k / gaps)
            : Enumerable.Range(1, gaps - 1).Select(k => edge.Length * k / gaps);
    }

    /// <summary>A mark on an edge.</summary>
    public static MatchMark Mark(string joint, int number, string edge, TrackPlace place) => new(joint, number, edge, place.At, place.Flat, place.FlatInward, place.Joint);
}

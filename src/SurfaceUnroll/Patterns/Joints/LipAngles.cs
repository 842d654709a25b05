using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Patterns.Joints;

/// <summary>How far a lip is bent.</summary>
/// <param name="Least">Smallest angle that it is bent through along its edge, radians.</param>
/// <param name="Mean">Mean.</param>
/// <param name="Greatest">Largest.</param>
/// <param name="Up">Towards the outside.</param>
internal readonly record struct LipAngles(double Least, double Mean, double Greatest, bool Up)
{
    private const int Probes = 100;

    /// <summary>Of a lip that meets nothing.</summary>
    public static LipAngles Square => new(0.5 * Math.PI, 0.5 * Math.PI, 0.5 * Math.PI, true);

    /// <summary>Along the sheet that an edge meets; null if it meets none.</summary>
    /// <param name="run">The edge with the lip.</param>
    /// <param name="mates">The runs of the other edge.</param>
    public static LipAngles? Along(EdgeTrack run, ImmutableArray<EdgeTrack> mates)
    {
        if (mates.MinBy(other => other.Nearest(run.At(0.5 * run.Length).Joint).Distance) is not { } mate) return null;
        (double Angle, bool Up)[] along = [.. Enumerable.Range(0, Probes + 1).Select(k =>
        {
            TrackPlace place = run.At(run.Length * k / Probes);
            Vec3 way = mate.Nearest(place.Joint).Place.Inward;
            return ((-place.Inward).AngleTo(way), place.Normal.Dot(way) >= 0);
        })];
        return new LipAngles(along.Min(a => a.Angle), along.Average(a => a.Angle), along.Max(a => a.Angle), along.Count(a => a.Up) * 2 > along.Length);
    }
}

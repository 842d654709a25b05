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

    /// <summary>Along the sheet that an edge meets, all its runs alike; null if it meets none.</summary>
    /// <param name="runs">The runs of the edge with the lip.</param>
    /// <param name="mates">Those of the other edge.</param>
    public static LipAngles? Along(ImmutableArray<EdgeTrack> runs, ImmutableArray<EdgeTrack> mates)
    {
        if (mates.IsEmpty) return null;
        (double Angle, bool Up, double Weight)[] along = [.. runs.SelectMany(run => Enumerable.Range(0, Probes + 1).Select(k =>
        {
            TrackPlace place = run.At(run.Length * k / Probes);
            Vec3 way = mates.Select(m => m.Nearest(place.Joint)).MinBy(n => n.Distance).Place.Inward;
            return ((-place.Inward).AngleTo(way), place.Normal.Dot(way) >= 0, run.Length);
        }))];
        double whole = along.Sum(a => a.Weight);
        return new LipAngles(along.Min(a => a.Angle), along.Sum(a => a.Weight * a.Angle) / whole, along.Max(a => a.Angle), along.Where(a => a.Up).Sum(a => a.Weight) > 0.5 * whole);
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Patterns.Joints;

/// <summary>How long the free edge of a lip is for each millimetre of its net edge.</summary>
/// <param name="At">Distance along the joint line, mm.</param>
/// <param name="Flat">On the blank.</param>
/// <param name="Formed">On the part.</param>
internal readonly record struct LipPlace(double At, double Flat, double Formed)
{
    /// <summary>Engineering strain of the free edge, blank to part; positive where it stretches.</summary>
    public double Strain => Formed / Flat - 1;
}

/// <summary>What a curved lip asks of its free edge.</summary>
/// <param name="Places">Along the edge; none near its corners.</param>
/// <param name="Widest">Largest distance from net edge to cut line that the edge leaves room for on the blank, mm; +∞ where it does not curve inward.</param>
internal sealed record LipStrains(ImmutableArray<LipPlace> Places, double Widest)
{
    // A sharper turn from chord to chord, radians, is a corner of the edge and bends no lip.
    private const double Corner = 0.15;

    // The free edge must keep this much of the length of the net edge on the blank, or there is no metal to bend.
    private const double LeastLength = 0.2;

    /// <summary>Largest stretch, ≥ 0, as a fraction.</summary>
    public double MaxStretch => Places.Select(p => p.Strain).Append(0).Max();

    /// <summary>Largest shrink, ≥ 0, as a fraction.</summary>
    public double MaxShrink => -Places.Select(p => p.Strain).Append(0).Min();

    /// <summary>Looks along an edge. The length of a line at the distance w from one of curvature vector k changes by 1 − w k·d, d the direction to it. Bending keeps
    /// the part of k in the sheet. The middle of a lip lies half the thickness inside its outer face.</summary>
    /// <param name="track">Its edge.</param>
    /// <param name="onBlank">From net edge to cut line, mm.</param>
    /// <param name="width">Outside width, mm.</param>
    /// <param name="thickness">Of the sheet, mm.</param>
    /// <param name="angle">That it is bent through, radians.</param>
    /// <param name="up">Bent towards the outside.</param>
    /// <param name="bends">Distances along the joint line at which the edge itself is bent sharply.</param>
    public static LipStrains Of(EdgeTrack track, double onBlank, double width, double thickness, double angle, bool up, IReadOnlyCollection<double> bends)
    {
        // Curvature is taken over a reach on either side, since the places of an edge may stand very close together.
        double reach = Math.Clamp(track.Length / 60, 1, 8);
        if (track.Length < 4 * reach) return new LipStrains([], double.PositiveInfinity);
        double[] corners = [.. Corners(track), .. bends];
        int probes = (int)Math.Ceiling(track.Length / reach);
        var places = ImmutableArray.CreateBuilder<LipPlace>();
        double widest = double.PositiveInfinity;
        for (int k = 0; k <= probes; k++)
        {
            double at = track.IsClosed ? track.Length * k / probes : Math.Clamp(track.Length * k / probes, reach, track.Length - reach);
            if (corners.Any(c => Apart(c, at) < 1.5 * reach)) continue;
            TrackPlace place = track.At(at);
            Vec3 before = place.Joint - track.At(Round(at - reach)).Joint, after = track.At(Round(at + reach)).Joint - place.Joint;
            Vec3 curvature = 2 / (before.Length + after.Length) * (after.Unit - before.Unit);
            double outward = up ? 1 : -1, inSheet = curvature.Dot(place.Inward);
            Vec3 way = -Math.Cos(angle) * place.Inward + outward * Math.Sin(angle) * place.Normal;
            Vec3 inside = Math.Sin(angle) * place.Inward + outward * Math.Cos(angle) * place.Normal;
            if (inSheet < 0) widest = Math.Min(widest, (1 - LeastLength) / -inSheet);
            places.Add(new LipPlace(at, Math.Max(LeastLength, 1 + onBlank * inSheet), Math.Max(LeastLength, 1 - curvature.Dot(width * way + 0.5 * thickness * inside))));
        }
        return new LipStrains(places.ToImmutable(), widest);

        // A closed edge goes on where it began.
        double Round(double at) => !track.IsClosed ? at : at < 0 ? at + track.Length : at > track.Length ? at - track.Length : at;

        double Apart(double a, double b) => Math.Abs(a - b) is var d && track.IsClosed ? Math.Min(d, track.Length - d) : Math.Abs(a - b);
    }

    private static IEnumerable<double> Corners(EdgeTrack track)
    {
        int count = track.Joint.Count;
        // Where a closed edge begins the last side meets the first.
        if (track.IsClosed && (track.Joint[^1] - track.Joint[count - 2]).AngleTo(track.Joint[1] - track.Joint[0]) > Corner) yield return 0;
        for (int i = 1; i + 1 < count; i++)
            if ((track.Joint[i] - track.Joint[i - 1]).AngleTo(track.Joint[i + 1] - track.Joint[i]) > Corner) yield return track.Distances[i];
    }
}

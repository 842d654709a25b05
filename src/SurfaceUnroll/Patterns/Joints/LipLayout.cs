using System.Collections.Immutable;
using SurfaceUnroll.Forming;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Joints;

/// <summary>A lip on the blank.</summary>
/// <param name="Width">From net edge to cut line, mm.</param>
/// <param name="Bend">Its bend, not numbered yet.</param>
/// <param name="Strain">What it asks of its free edge.</param>
/// <param name="Notches">Relief notches.</param>
internal sealed record LipLayout(double Width, BendLine Bend, LipStrain Strain, ImmutableArray<LipNotch> Notches)
{
    // Shrink of a free edge beyond which thin sheet is notched, as a fraction (common practice, no source).
    private const double MostShrink = 0.03;

    // Closest and widest pitch of notches that are laid by themselves, mm.
    private const double ClosestNotches = 12, WidestNotches = 80;

    // A sharper turn from chord to chord, radians, is a corner of the edge and bends no lip.
    private const double Corner = 0.15;

    /// <summary>Angle that a lip is bent through so that it lies along a mate, and whether that is towards the outside.</summary>
    /// <param name="place">On the edge with the lip.</param>
    /// <param name="mate">Direction from the edge into the other piece.</param>
    public static (double Angle, bool Up) Along(TrackPlace place, Vec3 mate) => ((-place.Inward).AngleTo(mate), place.Normal.Dot(mate) >= 0);

    /// <summary>Lays out a lip.</summary>
    /// <param name="stock">Sheet.</param>
    /// <param name="track">Its edge.</param>
    /// <param name="edge">Name of the edge.</param>
    /// <param name="width">Outside width, mm.</param>
    /// <param name="lip">As asked for.</param>
    /// <param name="angles">Least, mean and greatest angle, radians.</param>
    /// <param name="up">Bent towards the outside.</param>
    public static LipLayout Of(SheetStock stock, EdgeTrack track, string edge, double width, LipSpec lip, (double Least, double Mean, double Greatest) angles, bool up)
    {
        double radius = lip.Radius ?? stock.Thickness;
        BendLength length = BendAllowance.Of(stock, radius, angles.Mean);
        double onBlank = width - length.Deduction, near = -length.Setback;
        var bend = new BendLine(
            0, edge, angles.Mean, angles.Least, angles.Greatest, radius, up, length, Beside(track, near + 0.5 * length.Allowance),
            [Beside(track, near), Beside(track, near + length.Allowance)]);
        (double At, double Flat, double Formed)[] strains = [.. Strains(track, onBlank, width, angles.Mean, up)];
        double stretch = strains.Select(s => s.Formed / s.Flat - 1).Append(0).Max(), shrink = -strains.Select(s => s.Formed / s.Flat - 1).Append(0).Min();
        ImmutableArray<LipNotch> notches = [.. Relief(stock, track, edge, lip, strains, onBlank, near + length.Allowance + Math.Max(1, stock.Thickness))];
        return new LipLayout(onBlank, bend, new LipStrain(stretch, shrink, notches.Length), notches);
    }

    // A line at a distance outside the net edge on the blank; negative inside.
    private static ImmutableArray<Vec2> Beside(EdgeTrack track, double outward)
    {
        var line = ImmutableArray.CreateBuilder<Vec2>();
        for (int i = 0; i < track.Distances.Count; i++)
        {
            TrackPlace before = track.At(0.5 * (track.Distances[Math.Max(0, i - 1)] + track.Distances[i])), after = track.At(0.5 * (track.Distances[i] + track.Distances[Math.Min(track.Distances.Count - 1, i + 1)]));
            Vec2 mean = (before.FlatInward + after.FlatInward).Unit;
            double cosine = Math.Max(0.3, mean.Dot(after.FlatInward));
            Vec2 place = track.At(track.Distances[i]).Flat - outward / cosine * mean;
            if (line.Count == 0 || (place - line[^1]).Length > 1e-6) line.Add(place);
        }
        return line.ToImmutable();
    }

    // Along the edge, how long the free edge of the lip is on the blank and on the part for each millimetre of net edge: of a line at the distance w to one of
    // curvature vector k the length changes by 1 − w k·d, d the direction to it. Bending keeps the part of k in the sheet. Curvature is taken over a reach on
    // either side, since the places of an edge may stand very close together; none is told where a corner is within reach.
    private static IEnumerable<(double At, double Flat, double Formed)> Strains(EdgeTrack track, double onBlank, double formed, double angle, bool up)
    {
        double reach = Math.Clamp(track.Length / 60, 1, 8);
        if (track.Length < 4 * reach) yield break;
        double[] corners = [.. Corners(track)];
        int probes = (int)Math.Ceiling(track.Length / reach);
        for (int k = 0; k <= probes; k++)
        {
            double at = Math.Clamp(track.Length * k / probes, reach, track.Length - reach);
            if (corners.Any(c => Math.Abs(c - at) < 1.5 * reach)) continue;
            TrackPlace place = track.At(at);
            Vec3 before = place.Joint - track.At(at - reach).Joint, after = track.At(at + reach).Joint - place.Joint;
            Vec3 curvature = 2 / (before.Length + after.Length) * (after.Unit - before.Unit);
            Vec3 way = -Math.Cos(angle) * place.Inward + (up ? 1 : -1) * Math.Sin(angle) * place.Normal;
            yield return (at, Math.Max(0.05, 1 + onBlank * curvature.Dot(place.Inward)), Math.Max(0.05, 1 - formed * curvature.Dot(way)));
        }
    }

    private static IEnumerable<double> Corners(EdgeTrack track) => Enumerable.Range(1, Math.Max(0, track.Joint.Count - 2))
        .Where(i => (track.Joint[i] - track.Joint[i - 1]).AngleTo(track.Joint[i + 1] - track.Joint[i]) > Corner).Select(i => track.Distances[i]);

    // Notches stand so that between two of them a straight tab leaves the curve by no more than half the thickness, c² = 8 R t/2: their density, one over that pitch where
    // the lip strains too much, is summed up along the edge and shared out evenly.
    private static IEnumerable<LipNotch> Relief(
        SheetStock stock, EdgeTrack track, string edge, LipSpec lip, (double At, double Flat, double Formed)[] strains, double onBlank, double from)
    {
        if (lip.Relief == LipRelief.None || onBlank - from < 1 || strains.Length < 2) yield break;
        double mostStretch = 0.5 * Materials.Of(stock.Material).Material.UniformElongation, tip = Math.Max(1, stock.Thickness);
        double[] density = [.. strains.Select(Density)], sum = new double[strains.Length];
        for (int i = 1; i < strains.Length; i++) sum[i] = sum[i - 1] + 0.5 * (density[i - 1] + density[i]) * (strains[i].At - strains[i - 1].At);
        if (sum[^1] <= 0) yield break;
        int count = Math.Max(1, (int)Math.Round(sum[^1]));
        for (int k = 0; k < count; k++)
        {
            double wanted = sum[^1] * (k + 0.5) / count;
            int i = Array.FindIndex(sum, s => s >= wanted);
            double share = (wanted - sum[i - 1]) / (sum[i] - sum[i - 1]);
            double Between(double a, double b) => a + share * (b - a);
            double at = Between(strains[i - 1].At, strains[i].At), pitch = sum[^1] / count / Math.Max(Between(density[i - 1], density[i]), 1e-9);
            // What is too long on the blank is cut out; where the part is longer a slit opens by itself.
            double width = Math.Max(tip, (Between(strains[i - 1].Flat, strains[i].Flat) - Between(strains[i - 1].Formed, strains[i].Formed)) * pitch);
            TrackPlace place = track.At(at);
            Vec2 root = place.Flat - from * place.FlatInward, mouth = place.Flat - (onBlank + 1) * place.FlatInward;
            ImmutableArray<Vec2> outline = [root - 0.5 * tip * place.FlatAlong, root + 0.5 * tip * place.FlatAlong, mouth + 0.5 * width * place.FlatAlong, mouth - 0.5 * width * place.FlatAlong];
            yield return new LipNotch(edge, at, width, Polygons.Turned(outline, counterClockwise: true));
        }

        double Density((double At, double Flat, double Formed) place)
        {
            if (lip.ReliefPitch is { } pitch) return 1 / pitch;
            double strain = place.Formed / place.Flat - 1;
            if (strain < mostStretch && strain > -MostShrink) return 0;
            double curvature = Math.Abs(place.Flat - place.Formed) / Math.Max(onBlank, 1);
            return 1 / Math.Clamp(Math.Sqrt(4 * Math.Max(stock.Thickness, 0.5) / curvature), ClosestNotches, WidestNotches);
        }
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Joints;

/// <summary>Relief notches of a lip.</summary>
/// <param name="stock">Sheet.</param>
/// <param name="track">Edge of the lip.</param>
/// <param name="edge">Its name.</param>
/// <param name="near">Where its bend begins: distance outside the net edge on the blank, mm; negative inside.</param>
/// <param name="far">Where its bend ends.</param>
/// <param name="onBlank">From net edge to cut line, mm.</param>
internal sealed class LipNotching(SheetStock stock, EdgeTrack track, string edge, double near, double far, double onBlank)
{
    // Shrink of a free edge beyond which thin sheet is notched, as a fraction (common practice, no source).
    private const double MostShrink = 0.03;

    // Closest and widest pitch of notches that are laid by themselves, mm.
    private const double ClosestNotches = 12, WidestNotches = 80;

    private readonly double _tip = Math.Max(1, stock.Thickness);

    /// <summary>Notches along a curved lip. Between two of them a straight tab leaves the curve by no more than half the thickness, c² = 8 R t/2: their density, one over
    /// that pitch where the lip strains too much, is summed up along the edge and shared out evenly.</summary>
    public IEnumerable<LipNotch> Along(LipSpec lip, LipStrains strains)
    {
        double from = far + _tip;
        ImmutableArray<LipPlace> places = strains.Places;
        if (lip.Relief == LipRelief.None || onBlank - from < 1 || places.Length < 2) yield break;
        double[] density = [.. places.Select(p => Density(lip, p))], sum = new double[places.Length];
        double step = Enumerable.Range(1, places.Length - 1).Min(i => places[i].At - places[i - 1].At is > 1e-6 and var d ? d : double.PositiveInfinity);
        // Between places that lie apart there is a corner, or a bend with a notch of its own.
        for (int i = 1; i < places.Length; i++) sum[i] = sum[i - 1] + (places[i].At - places[i - 1].At > 1.5 * step ? 0 : 0.5 * (density[i - 1] + density[i]) * (places[i].At - places[i - 1].At));
        if (sum[^1] <= 0) yield break;
        int count = Math.Max(1, (int)Math.Round(sum[^1]));
        for (int k = 0; k < count; k++)
        {
            double wanted = sum[^1] * (k + 0.5) / count;
            int i = Array.FindIndex(sum, s => s >= wanted);
            double share = (wanted - sum[i - 1]) / (sum[i] - sum[i - 1]);
            double Between(double a, double b) => a + share * (b - a);
            double at = Between(places[i - 1].At, places[i].At), pitch = sum[^1] / count / Math.Max(Between(density[i - 1], density[i]), 1e-9);
            // What is too long on the blank is cut out; where the part is longer a slit opens by itself.
            double width = Math.Max(_tip, (Between(places[i - 1].Flat, places[i].Flat) - Between(places[i - 1].Formed, places[i].Formed)) * pitch);
            yield return Notch(at, [(from, 0.5 * _tip), (onBlank + 1, 0.5 * width)]);
        }
    }

    /// <summary>The notch where a sharp bend of the piece runs through the lip. Bent to the same side, the lips of the two flats would run into each other, each by half the angle.</summary>
    /// <param name="at">Where, along the joint line, mm.</param>
    /// <param name="bend">The bend of the piece.</param>
    /// <param name="up">The lip is bent towards the outside.</param>
    public LipNotch Across(double at, BendLine bend, bool up)
    {
        Vec2 line = (bend.Centre[^1] - bend.Centre[0]).Unit;
        double slant = Math.Max(0.3, Math.Abs(line.Cross(track.At(at).FlatAlong)));
        double half = 0.5 * bend.Length.Allowance / slant + 0.5 * _tip, opening = bend.Up == up ? Math.Tan(0.5 * bend.Angle) * (onBlank - far) : 0;
        return Notch(at, [(near, half), (far, half), (onBlank + 1, half + opening)]);
    }

    // From its root outward, half as wide at each distance outside the net edge as is asked.
    private LipNotch Notch(double at, (double Outward, double Half)[] steps)
    {
        TrackPlace place = track.At(at);
        Vec2 Corner((double Outward, double Half) step, int side) => place.Flat - step.Outward * place.FlatInward + side * step.Half * place.FlatAlong;
        ImmutableArray<Vec2> outline = [.. steps.Select(s => Corner(s, -1)), .. steps.Reverse().Select(s => Corner(s, 1))];
        return new LipNotch(edge, at, 2 * steps[^1].Half, Polygons.Turned(outline, counterClockwise: true));
    }

    private double Density(LipSpec lip, LipPlace place)
    {
        if (lip.ReliefPitch is { } pitch) return 1 / pitch;
        double mostStretch = 0.5 * stock.Metal.UniformElongation;
        if (place.Strain < mostStretch && place.Strain > -MostShrink) return 0;
        double curvature = Math.Abs(place.Flat - place.Formed) / Math.Max(onBlank, 1);
        return 1 / Math.Clamp(Math.Sqrt(4 * Math.Max(stock.Thickness, 0.5) / curvature), ClosestNotches, WidestNotches);
    }
}

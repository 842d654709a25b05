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
/// <param name="Widest">Largest outside width that the edge, which curves inward, leaves room for on the blank, mm; +∞ where it does not.</param>
/// <param name="Along">How it would lie along the other piece; null if there is none.</param>
internal sealed record LipLayout(double Width, BendLine Bend, LipStrain Strain, ImmutableArray<LipNotch> Notches, double Widest, LipAngles? Along)
{
    /// <summary>Width of the flat flange beyond the bend, mm.</summary>
    public double Flange => Width - Bend.Length.Allowance + Bend.Length.Setback;

    /// <summary>Lays out a lip.</summary>
    /// <param name="stock">Sheet.</param>
    /// <param name="track">Its edge.</param>
    /// <param name="edge">Name of the edge.</param>
    /// <param name="width">Outside width, mm.</param>
    /// <param name="lip">As asked for.</param>
    /// <param name="along">How it would lie along the other piece; null if there is none.</param>
    /// <param name="across">Sharp bends of the piece.</param>
    public static LipLayout Of(SheetStock stock, EdgeTrack track, string edge, double width, LipSpec lip, LipAngles? along, ImmutableArray<BendLine> across)
    {
        LipAngles angles = lip.Angle is { } asked ? new LipAngles(asked, asked, asked, along?.Up ?? true) : along ?? LipAngles.Square;
        bool up = lip.Up ?? angles.Up;
        double radius = lip.Radius ?? stock.Thickness;
        // A free edge is measured as any bend is; one that meets a piece stands where both faces meet.
        BendLength length = along is null ? BendAllowance.Of(stock, radius, angles.Mean) : BendAllowance.ToMeeting(stock, radius, angles.Mean);
        double near = -length.Setback, far = near + length.Allowance;
        var bend = new BendLine(
            0, edge, angles.Mean, angles.Least, angles.Greatest, radius, up, length, Beside(track, near + 0.5 * length.Allowance), [Beside(track, near), Beside(track, far)]);
        (double At, BendLine Bend)[] crossed = [.. across.SelectMany(b => track.Crossings(b.Centre).Select(at => (at, b)))];
        LipStrains strains = LipStrains.Of(track, width - length.Deduction, width, stock.Thickness, angles.Mean, up, [.. crossed.SelectMany(c => c.Bend.Tangents.Append(c.Bend.Centre).SelectMany(track.Crossings))]);
        var relief = new LipNotching(stock, track, edge, near, far, width - length.Deduction);
        ImmutableArray<LipNotch> notches = [.. relief.Along(lip, strains), .. crossed.Select(c => relief.Across(c.At, c.Bend, up))];
        return new LipLayout(width - length.Deduction, bend, new LipStrain(strains.MaxStretch, strains.MaxShrink, notches.Length), notches, strains.Widest + length.Deduction, along);
    }

    /// <summary>What the runs of one lip ask together.</summary>
    public static LipStrain Strains(IReadOnlyCollection<LipLayout> runs) => new(runs.Max(l => l.Strain.MaxStretch), runs.Max(l => l.Strain.MaxShrink), runs.Sum(l => l.Notches.Length));

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
}

using System.Collections.Immutable;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Uncertainty;

/// <summary>Turns a band into what a shop scribes: a few straight stretches, each with one whole width.</summary>
internal static class LeaveSteps
{
    // Scribing blocks are set to these, mm (common practice, no source); a band narrower than a scribed line is none.
    private const double Millimetre = 1, Sixteenth = ShopLength.MillimetresPerInch / 16, Line = 0.1;

    // A stretch shorter than this, mm, or than this share of the edge, joins a wider neighbour.
    private const double Shortest = 60, LeastShare = 0.15;

    /// <summary>Stretches from the first end of an edge to its last; everywhere at least as wide as the band, rounded up.</summary>
    public static ImmutableArray<LeaveStep> Of(ImmutableArray<BandPlace> places, LengthUnit units)
    {
        double unit = units == LengthUnit.Inch ? Sixteenth : Millimetre, least = Math.Max(Shortest, LeastShare * places[^1].At);
        var steps = new List<LeaveStep>();
        for (int i = 1; i < places.Length; i++)
        {
            double band = Math.Max(places[i - 1].Band, places[i].Band), width = band < Line ? 0 : unit * Math.Ceiling(band / unit - 1e-9);
            if (steps.Count > 0 && steps[^1].Width == width) steps[^1] = steps[^1] with { To = places[i].At };
            else steps.Add(new LeaveStep(places[i - 1].At, places[i].At, width));
        }
        while (steps.Count > 1 && steps.MinBy(s => s.To - s.From) is var shortest && shortest.To - shortest.From < least) Join(steps, steps.IndexOf(shortest));
        return [.. steps];
    }

    // With the neighbour that is nearest to it in width, one that is wider first.
    private static void Join(List<LeaveStep> steps, int at)
    {
        int with = new[] { at - 1, at + 1 }.Where(i => i >= 0 && i < steps.Count)
            .OrderBy(i => steps[i].Width < steps[at].Width).ThenBy(i => Math.Abs(steps[i].Width - steps[at].Width)).First();
        int first = Math.Min(at, with);
        steps[first] = new LeaveStep(steps[first].From, steps[first + 1].To, Math.Max(steps[first].Width, steps[first + 1].Width));
        steps.RemoveAt(first + 1);
        for (int i = steps.Count - 1; i > 0; i--)
        {
            if (steps[i].Width != steps[i - 1].Width) continue;
            steps[i - 1] = steps[i - 1] with { To = steps[i].To };
            steps.RemoveAt(i);
        }
    }
}

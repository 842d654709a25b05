using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Curves.Sections;

/// <summary>A row of places that stand for groups of section points.</summary>
/// <param name="Places">Means of the groups, mm; of a closed line the first is not repeated.</param>
/// <param name="Shares">Length of section that each stands for, 1 in the mean.</param>
internal sealed record ThinnedSection(ImmutableArray<Vec3> Places, ImmutableArray<double> Shares);

/// <summary>Makes an even row of places of the points of a section, which lie close together here and far apart there, as the triangles come.</summary>
internal static class ScanThinning
{
    /// <summary>Groups neighbouring points over a given length and takes the mean of each; the ends of an open line stay.</summary>
    /// <param name="places">Corners of the section; of a closed one the first is not repeated.</param>
    /// <param name="closed">It goes on from the last to the first.</param>
    /// <param name="step">Length of a group, mm, &gt; 0.</param>
    public static ThinnedSection Of(ImmutableArray<Vec3> places, bool closed, double step)
    {
        int n = places.Length;
        Vec3 At(int i) => places[closed ? (i % n + n) % n : Math.Clamp(i, 0, n - 1)];
        // Half of the way to either neighbour is a point's own.
        double[] own = [.. places.Select((p, i) => 0.5 * ((p - At(i - 1)).Length + (At(i + 1) - p).Length))];
        var (means, shares) = (new List<Vec3>(), new List<double>());
        (Vec3 sum, double length) = (default, 0);
        for (int i = 0; i < n; i++)
        {
            bool end = !closed && (i == 0 || i == n - 1);
            if (end) Close();
            sum += own[i] * places[i];
            length += own[i];
            if (end || length >= step) Close(end);
        }
        Close();
        double mean = shares.Average();
        return new ThinnedSection([.. means], [.. shares.Select(s => s / mean)]);

        void Close(bool end = false)
        {
            if (length > 0)
            {
                // Two groups whose points run to and fro over one place are one.
                bool joins = means.Count > 1 && (means[^1] - sum / length).Length < step / 4;
                if (joins)
                {
                    sum = end ? (length + shares[^1]) * (sum / length) : sum + shares[^1] * means[^1];
                    length += shares[^1];
                    means.RemoveAt(means.Count - 1);
                    shares.RemoveAt(shares.Count - 1);
                }
                means.Add(sum / length);
                shares.Add(length);
            }
            (sum, length) = (default, 0);
        }
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Forming;

/// <summary>In what order a joint is tacked and stitched, so that it is held before it can pull and no place gets hot twice running (common practice, no source).</summary>
internal static class TackPlanner
{
    // Distance of tacks in thicknesses, and its bounds, mm (common practice, no source).
    private const double PitchInThicknesses = 35, Closest = 20, Farthest = 100;

    // Stitches are laid in so many goes: 1, 4, 7 … then 2, 5, 8 …
    private const int Goes = 3;

    /// <summary>Distance of tacks for a thickness, mm; 50 where none is given.</summary>
    public static double Pitch(double thickness) => thickness <= 0 ? 50 : Math.Clamp(PitchInThicknesses * thickness, Closest, Farthest);

    /// <summary>The plan of a joint.</summary>
    /// <param name="joint">Its label.</param>
    /// <param name="runs">Length of its first edge, in one run or several, mm; whether it ends where it starts; and its places.</param>
    /// <param name="pitch">Greatest distance of tacks, mm.</param>
    public static TackPlan Of(string joint, IEnumerable<(double Length, bool IsClosed, Func<double, Vec3> At)> runs, double pitch)
    {
        var tacks = new List<Tack>();
        var stitches = ImmutableArray.CreateBuilder<Stitch>();
        (double start, int place) = (0, 0);
        foreach ((double length, bool closed, Func<double, Vec3> at) in runs)
        {
            int gaps = Math.Max(1, (int)Math.Ceiling(length / pitch - 1e-9));
            foreach ((int k, int round) in Order(gaps, closed)) tacks.Add(new Tack(0, place + k, start + length * k / gaps, at(length * k / gaps), round));
            foreach (int k in Skipped(gaps)) stitches.Add(new Stitch(stitches.Count + 1, start + length * (k + 1) / gaps, start + length * k / gaps));
            start += length;
            place += closed ? gaps : gaps + 1;
        }
        // A joint of several runs goes round by round over all of them.
        return new TackPlan(joint, pitch, [.. tacks.OrderBy(t => t.Round).Select((t, i) => t with { Number = i + 1 })], stitches.ToImmutable());
    }

    /// <summary>Places 0 … gaps in the order in which they are tacked: both ends and the middle, then the middle of every gap that is left, round by round. In a closed joint
    /// the last place is the first. Within a round after the first two that follow each other are never neighbours: one that is tacked already lies between.</summary>
    public static IEnumerable<(int Place, int Round)> Order(int gaps, bool closed)
    {
        yield return (0, 0);
        if (!closed) yield return (gaps, 0);
        List<(int From, int To)> left = [(0, gaps)];
        for (int round = 0; left.Count > 0; round++)
        {
            var halves = new List<(int, int)>();
            foreach ((int from, int to) in left)
            {
                if (to - from < 2) continue;
                int middle = (from + to) / 2;
                yield return (middle, round);
                halves.Add((from, middle));
                halves.Add((middle, to));
            }
            left = halves;
        }
    }

    /// <summary>Lengths 0 … gaps − 1 in the order in which they are welded.</summary>
    // Of four, 1 and 4, 2, 3 would end with neighbours.
    public static IEnumerable<int> Skipped(int gaps) => gaps == 4 ? [1, 3, 0, 2] : Enumerable.Range(0, Goes).SelectMany(go => Enumerable.Range(0, gaps).Where(k => k % Goes == go));
}

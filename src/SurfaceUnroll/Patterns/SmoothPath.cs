using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Patterns;

/// <summary>Draws a smooth edge of a blank through its places.</summary>
internal static class SmoothPath
{
    // Gap between chord and curve that is left as it is, mm: half of what the report's edges may miss.
    private const double Gap = 0.005;

    // A turn from chord to chord that is a corner, radians.
    private const double Corner = 0.15;

    /// <summary>The places with others between them, on the circle through neighbouring places where that leaves the chord by more than can be seen; corners stay.</summary>
    public static ImmutableArray<Vec2> Through(ImmutableArray<Vec2> places)
    {
        var path = ImmutableArray.CreateBuilder<Vec2>(places.Length);
        path.Add(places[0]);
        for (int i = 0; i + 1 < places.Length; i++)
        {
            Vec2 chord = places[i + 1] - places[i];
            double turn = Turn(places, i), gap = Math.Abs(turn) * chord.Length / 8;
            int parts = gap > Gap ? Math.Min(16, (int)Math.Ceiling(Math.Sqrt(gap / Gap))) : 1;
            for (int k = 1; k < parts; k++)
            {
                // Height of an arc over its chord at the share t of it, to second order: turn · length · t(1 − t)/2, on the outside of the turn.
                double t = (double)k / parts;
                path.Add(places[i] + t * chord - 0.5 * turn * t * (1 - t) * chord.Left);
            }
            path.Add(places[i + 1]);
        }
        return path.ToImmutable();
    }

    // Turn of the curve over a chord, to the left positive: the mean of the turns at its two ends, corners left out, each shared by the lengths that meet there.
    private static double Turn(ImmutableArray<Vec2> places, int i)
    {
        (double sum, int count) = (0, 0);
        foreach (int at in (ReadOnlySpan<int>)[i, i + 1])
        {
            if (at == 0 || at == places.Length - 1) continue;
            Vec2 before = places[at] - places[at - 1], after = places[at + 1] - places[at];
            double turn = Math.Atan2(before.Cross(after), before.Dot(after));
            if (Math.Abs(turn) > Corner) continue;
            sum += turn * 2 * (places[i + 1] - places[i]).Length / (before.Length + after.Length);
            count++;
        }
        return count == 0 ? 0 : sum / count;
    }
}

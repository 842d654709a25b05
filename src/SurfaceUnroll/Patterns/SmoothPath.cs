using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Patterns;

/// <summary>Draws a smooth edge of a blank through its places.</summary>
internal static class SmoothPath
{
    // Gap between chord and curve that is left as it is, mm: half of what the report's edges may miss.
    private const double Gap = 0.005;

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

    // To the left positive.
    private static double Turn(ImmutableArray<Vec2> places, int i)
    {
        return ChordTurn.Over(i, places.Length, k => Chord(k).Length, at => Math.Atan2(Chord(at - 1).Cross(Chord(at)), Chord(at - 1).Dot(Chord(at))));

        Vec2 Chord(int k) => places[k + 1] - places[k];
    }
}

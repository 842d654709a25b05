namespace SurfaceUnroll.Patterns;

/// <summary>How far a smooth edge turns over one of its chords.</summary>
internal static class ChordTurn
{
    // A turn from chord to chord that is a corner, radians.
    private const double Corner = 0.15;

    /// <summary>The mean of the turns at the two ends of a chord, radians, corners and the ends of the edge left out, each shared between the chords that meet there by their lengths.</summary>
    /// <param name="chord">Which chord, from 0.</param>
    /// <param name="places">Number of places of the edge.</param>
    /// <param name="length">Length of a chord, mm.</param>
    /// <param name="turn">Turn from the chord before a place to the one after it.</param>
    public static double Over(int chord, int places, Func<int, double> length, Func<int, double> turn)
    {
        (double sum, int count) = (0, 0);
        foreach (int at in (ReadOnlySpan<int>)[chord, chord + 1])
        {
            if (at == 0 || at == places - 1) continue;
            double angle = turn(at);
            if (Math.Abs(angle) > Corner) continue;
            sum += angle * 2 * length(chord) / (length(at - 1) + length(at));
            count++;
        }
        return count == 0 ? 0 : sum / count;
    }
}

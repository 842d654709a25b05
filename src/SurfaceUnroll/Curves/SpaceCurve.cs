using System.Collections.Immutable;

namespace SurfaceUnroll.Curves;

/// <summary>A measured curve in job space: an unbroken chain of smooth pieces, from its left end to its right end.</summary>
/// <param name="Pieces">At least one; each starts where the one before it ends. Where their tangents differ there is a corner.</param>
public sealed record SpaceCurve(ImmutableArray<CurvePiece> Pieces)
{
    /// <summary>Arc length of each piece, mm.</summary>
    public ImmutableArray<double> PieceLengths { get; } = [.. Pieces.Select(p => p.Length(0, 1))];

    /// <summary>Arc length of the whole, mm.</summary>
    public double Length => PieceLengths.Sum();

    /// <summary>The first, left end.</summary>
    public CurveSample Start => Pieces[0].At(0);

    /// <summary>The last, right end.</summary>
    public CurveSample End => Pieces[^1].At(1);

    /// <summary>The same curve run from right to left.</summary>
    public SpaceCurve Reversed() => new([.. Pieces.Reverse().Select(p => p.Reversed())]);

    /// <summary>Place and derivatives at an arc length from the left end, mm, clamped to [0, Length]. At a corner: of the piece before it.</summary>
    public CurveSample AtLength(double s)
    {
        (int piece, double t) = Locate(s);
        return Pieces[piece].At(t);
    }

    /// <summary>Piece and piece parameter at an arc length from the left end, mm, clamped to [0, Length].</summary>
    public (int Piece, double T) Locate(double s)
    {
        int i = 0;
        double rest = s;
        while (i < Pieces.Length - 1 && rest > PieceLengths[i])
            rest -= PieceLengths[i++];
        return (i, Invert(Pieces[i], PieceLengths[i], Math.Clamp(rest, 0, PieceLengths[i])));
    }

    // Newton on Length(0, t) = s, kept inside a shrinking bracket; the speed is the derivative.
    private static double Invert(CurvePiece piece, double length, double s)
    {
        if (s <= 0) return 0;
        if (s >= length) return 1;
        double lo = 0, hi = 1, t = s / length;
        for (int i = 0; i < 60; i++)
        {
            double miss = piece.Length(0, t) - s;
            if (Math.Abs(miss) <= 1e-13 * length) break;
            if (miss > 0) hi = t; else lo = t;
            double next = t - miss / piece.At(t).D1.Length;
            t = next > lo && next < hi ? next : 0.5 * (lo + hi);
        }
        return t;
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Curves.Drawn;

/// <summary>Which way a curve of a file runs, and where a closed one begins. Places are (0, across, up).</summary>
public static class DrawnDirection
{
    // Of the size of the curve: ends nearer to one across than this do not tell left from right.
    private const double Upright = 1e-6;

    // Chords for the area of a closed curve: enough to tell its sign.
    private const int ChordsPerPiece = 8;

    /// <summary>The chain from its left end to its right end; one that stands upright, as it was drawn. A closed one up on the left and over to the right.</summary>
    public static StrandChain LeftToRight(StrandChain chain)
    {
        if (chain.IsClosed) return Area(Samples(chain.Pieces)) > 0 ? chain.Turned() : chain;
        Vec3 start = chain.Pieces[0].At(0).Point, end = chain.Pieces[^1].At(1).Point;
        return start.Y - end.Y > Upright * chain.Length ? chain.Turned() : chain;
    }

    /// <summary>Area within a closed row of places, mm²; positive where it runs from across towards up, that is, over the top from right to left.</summary>
    public static double Area(ImmutableArray<Vec3> places)
    {
        double sum = 0;
        for (int i = 0; i < places.Length; i++)
        {
            Vec3 a = places[i], b = places[(i + 1) % places.Length];
            sum += 0.5 * (a.Y * b.Z - b.Y * a.Z);
        }
        return sum;
    }

    private static ImmutableArray<Vec3> Samples(ImmutableArray<CurvePiece> pieces) =>
        [.. pieces.SelectMany(p => Enumerable.Range(0, ChordsPerPiece).Select(i => p.At((double)i / ChordsPerPiece).Point))];
}

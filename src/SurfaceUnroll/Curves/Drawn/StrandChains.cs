using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Curves.Drawn;

/// <summary>One unbroken curve of a drawing.</summary>
/// <param name="Pieces">Each starts where the one before it ends.</param>
/// <param name="Strands">The strands that it is made of, by their indices, in order.</param>
/// <param name="IsClosed">It ends where it begins.</param>
/// <param name="WidestGap">The widest gap that was closed, mm.</param>
public sealed record StrandChain(ImmutableArray<CurvePiece> Pieces, ImmutableArray<int> Strands, bool IsClosed, double WidestGap)
{
    /// <summary>mm.</summary>
    public double Length { get; } = Pieces.Sum(p => p.Length(0, 1));

    /// <summary>The same curve run the other way.</summary>
    public StrandChain Turned() => this with { Pieces = [.. Pieces.Reverse().Select(p => p.Reversed())], Strands = [.. Strands.Reverse()] };
}

/// <summary>What came of chaining the strands of a drawing.</summary>
/// <param name="Chains">In the order of their first strands.</param>
/// <param name="Forks">Places where three or more ends meet, and the strands there.</param>
/// <param name="Twice">Strands that lie on an earlier one all along, and were left out.</param>
public sealed record ChainReading(ImmutableArray<StrandChain> Chains, ImmutableArray<(Vec3 Place, ImmutableArray<int> Strands)> Forks, ImmutableArray<int> Twice);

/// <summary>Makes unbroken curves of the loose lines of a drawing.</summary>
public static class StrandChains
{
    // Ends that are this near, mm, are left as they are: that is the rounding of arithmetic.
    private const double SameEnd = 1e-9;

    /// <summary>Chains strands whose ends are no farther apart than a tolerance. A gap is closed by moving both ends to the middle of it, and all of both pieces in proportion.</summary>
    /// <param name="strands">Each an unbroken row of pieces, flat.</param>
    /// <param name="within">mm, ≥ 0. A strand shorter than this is a speck, and left out.</param>
    public static ChainReading Of(ImmutableArray<ImmutableArray<CurvePiece>> strands, double within)
    {
        ImmutableArray<double> lengths = [.. strands.Select(s => s.Sum(p => p.Length(0, 1)))];
        var twice = ImmutableArray.CreateBuilder<int>();
        var kept = ImmutableArray.CreateBuilder<int>();
        var known = new Dictionary<(long, long), List<int>>();
        for (int i = 0; i < strands.Length; i++)
        {
            if (lengths[i] <= within) continue;
            if (IsKnown(i)) twice.Add(i);
            else kept.Add(i);
        }
        EndLinking linking = EndLinks.Of([.. kept.Select(i => (strands[i][0].At(0).Point, strands[i][^1].At(1).Point))], within);
        return new ChainReading(
            [.. linking.Rows.Select(row => Chain(row, strands, kept))],
            [.. linking.Forks.Select(f => (f.Place, f.Strands.Select(s => kept[s]).ToImmutableArray()))],
            twice.ToImmutable());

        // The same length, ends and middle as an earlier one.
        bool IsKnown(int i)
        {
            double cell = Math.Max(within, SameEnd);
            Vec3 middle = new SpaceCurve(strands[i]).AtLength(0.5 * lengths[i]).Point;
            (long y, long z) = ((long)Math.Floor(middle.Y / cell), (long)Math.Floor(middle.Z / cell));
            for (int n = 0; n < 9; n++)
            {
                if (!known.TryGetValue((y + n % 3 - 1, z + n / 3 - 1), out List<int>? near)) continue;
                if (near.Any(j => Same(i, j, middle))) return true;
            }
            if (!known.TryGetValue((y, z), out List<int>? own)) known[(y, z)] = own = [];
            own.Add(i);
            return false;
        }

        bool Same(int i, int j, Vec3 middle)
        {
            if (Math.Abs(lengths[i] - lengths[j]) > within) return false;
            if ((new SpaceCurve(strands[j]).AtLength(0.5 * lengths[j]).Point - middle).Length > within) return false;
            (Vec3 a, Vec3 b, Vec3 c, Vec3 d) = (strands[i][0].At(0).Point, strands[i][^1].At(1).Point, strands[j][0].At(0).Point, strands[j][^1].At(1).Point);
            return ((a - c).Length <= within && (b - d).Length <= within) || ((a - d).Length <= within && (b - c).Length <= within);
        }
    }

    private static StrandChain Chain(LinkedStrands row, ImmutableArray<ImmutableArray<CurvePiece>> strands, ImmutableArray<int>.Builder kept)
    {
        var pieces = new List<CurvePiece>();
        double widest = 0;
        foreach ((int index, bool reversed) in row.Links)
        {
            ImmutableArray<CurvePiece> strand = strands[kept[index]];
            int joint = pieces.Count;
            pieces.AddRange(reversed ? strand.Reverse().Select(p => p.Reversed()) : strand);
            if (joint > 0) widest = Math.Max(widest, Close(pieces, joint - 1, joint));
        }
        if (row.IsClosed) widest = Math.Max(widest, Close(pieces, pieces.Count - 1, 0));
        return new StrandChain([.. pieces], [.. row.Links.Select(l => kept[l.Strand])], row.IsClosed, widest);
    }

    private static double Close(List<CurvePiece> pieces, int before, int after)
    {
        Vec3 end = pieces[before].At(1).Point, start = pieces[after].At(0).Point;
        double gap = (end - start).Length;
        if (gap <= SameEnd) return gap;
        Vec3 middle = Vec3.Lerp(end, start, 0.5);
        pieces[before] = ShiftedPiece.Between(pieces[before], pieces[before].At(0).Point, middle);
        pieces[after] = ShiftedPiece.Between(pieces[after], middle, pieces[after].At(1).Point);
        return gap;
    }
}

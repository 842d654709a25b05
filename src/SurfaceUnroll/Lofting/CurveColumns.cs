using System.Collections.Immutable;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Lofting;

/// <summary>One column of a loft through several curves: a place on each, and which way each curve runs there on either side of the column.</summary>
/// <param name="Places">From front to rear, mm.</param>
/// <param name="Before">Derivatives by the share of the matching, on the left of the column, mm.</param>
/// <param name="After">The same on the right; differs at a corner.</param>
internal sealed record LoftColumn(ImmutableArray<Vec3> Places, ImmutableArray<Vec3> Before, ImmutableArray<Vec3> After);

/// <summary>One matching through all curves of a loft: equal shares of the length of each, or, where all have as many corners, of each stretch between corners.</summary>
internal sealed class CurveColumns
{
    // A turn of this (radians) and more is a corner.
    private const double CornerAngle = 0.02;

    // Largest turn of any curve from column to column, radians, and largest gap between curve and chord, mm.
    private const double Turn = 0.02, Sagitta = 0.008;

    // Shares, and fractions of a piece, this close are one place.
    private const double SamePlace = 1e-7;

    // Columns lie no closer than this share of the matching, and no farther apart than the other.
    private const double Closest = 1.0 / 1024, Farthest = 1.0 / 24;

    private readonly ImmutableArray<SpaceCurve> _curves;

    // For each curve the lengths at which the stretches start and end, as many for all.
    private readonly double[][] _breaks;

    /// <summary>The matching of curves that all run the same way.</summary>
    public CurveColumns(ImmutableArray<SpaceCurve> curves)
    {
        _curves = curves;
        double[][] corners = [.. curves.Select(Corners)];
        bool alike = corners.All(c => c.Length == corners[0].Length);
        _breaks = [.. curves.Select((c, i) => alike ? [0, .. corners[i], c.Length] : new[] { 0, c.Length })];
        var anchors = new SortedSet<double>(Shares());
        // A corner that is not matched to corners still has a column of its own.
        if (!alike)
            for (int i = 0; i < curves.Length; i++)
                foreach (double s in corners[i]) Anchor(s / curves[i].Length);
        Anchor(0.5);
        Shares01 = [.. Refined([.. anchors])];

        void Anchor(double share)
        {
            if (anchors.Min(a => Math.Abs(a - share)) > SamePlace) anchors.Add(share);
        }
    }

    /// <summary>Shares of the columns, from 0 to 1.</summary>
    public ImmutableArray<double> Shares01 { get; }

    /// <summary>The column at a share of the matching.</summary>
    public LoftColumn At(double share)
    {
        var (places, before, after) = (new Vec3[_curves.Length], new Vec3[_curves.Length], new Vec3[_curves.Length]);
        for (int i = 0; i < _curves.Length; i++)
        {
            (double s, double speedBefore, double speedAfter) = LengthAt(i, share);
            (int piece, double t) = _curves[i].Locate(s);
            ImmutableArray<CurvePiece> pieces = _curves[i].Pieces;
            CurveSample sample = pieces[piece].At(t);
            places[i] = sample.Point;
            before[i] = speedBefore * (t <= SamePlace && piece > 0 ? pieces[piece - 1].At(1) : sample).Tangent;
            after[i] = speedAfter * (t >= 1 - SamePlace && piece + 1 < pieces.Length ? pieces[piece + 1].At(0) : sample).Tangent;
        }
        return new LoftColumn([.. places], [.. before], [.. after]);
    }

    // Shares at which stretches start and end: in proportion to the mean length of each stretch.
    private IEnumerable<double> Shares()
    {
        int count = _breaks[0].Length - 1;
        double[] means = [.. Enumerable.Range(0, count).Select(k => _breaks.Average(b => (b[k + 1] - b[k]) / b[^1]))];
        double sum = 0, total = means.Sum();
        yield return 0;
        for (int k = 0; k < count; k++) yield return k == count - 1 ? 1 : (sum += means[k]) / total;
    }

    private (double S, double SpeedBefore, double SpeedAfter) LengthAt(int curve, double share)
    {
        double[] shares = [.. Shares()], at = _breaks[curve];
        int k = 0;
        while (k < shares.Length - 2 && share > shares[k + 1]) k++;
        double speed = (at[k + 1] - at[k]) / (shares[k + 1] - shares[k]);
        double after = share == shares[k + 1] && k < shares.Length - 2 ? (at[k + 2] - at[k + 1]) / (shares[k + 2] - shares[k + 1]) : speed;
        double s = share == shares[k + 1] ? at[k + 1] : at[k] + speed * (share - shares[k]);
        return (s, speed, after);
    }

    private static double[] Corners(SpaceCurve curve)
    {
        var corners = new List<double>();
        double s = 0;
        for (int i = 0; i + 1 < curve.Pieces.Length; i++)
        {
            s += curve.PieceLengths[i];
            if (curve.Pieces[i].At(1).D1.AngleTo(curve.Pieces[i + 1].At(0).D1) > CornerAngle) corners.Add(s);
        }
        return [.. corners];
    }

    private IEnumerable<double> Refined(double[] anchors)
    {
        yield return anchors[0];
        for (int i = 0; i + 1 < anchors.Length; i++)
            foreach (double share in Divide(anchors[i], anchors[i + 1]))
                yield return share;
    }

    private IEnumerable<double> Divide(double a, double b)
    {
        if (b - a <= Closest || (b - a <= Farthest && Fits(At(a), At(b)))) return [b];
        double middle = 0.5 * (a + b);
        return Divide(a, middle).Concat(Divide(middle, b));
    }

    private static bool Fits(LoftColumn left, LoftColumn right)
    {
        for (int i = 0; i < left.Places.Length; i++)
        {
            double turn = left.After[i].AngleTo(right.Before[i]);
            if (turn > Turn || turn * (right.Places[i] - left.Places[i]).Length / 8 > Sagitta) return false;
        }
        return true;
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Curves.Drawn;

/// <summary>Takes a B-spline, rational or not, apart into its Bézier pieces, exactly.</summary>
public static class NurbsPieces
{
    /// <summary>One piece for each span of the knots that has a length.</summary>
    /// <param name="degree">At least 1, at most <see cref="RationalPiece.MostPoints"/> − 1.</param>
    /// <param name="knots">Never falling; as many as control points, degree and 1 together. They need not be repeated at the ends, so a closed spline with
    /// its points given again at the end is a spline like any other.</param>
    /// <param name="points">Control points, mm; more than <paramref name="degree"/>.</param>
    /// <param name="weights">As many, all &gt; 0.</param>
    public static ImmutableArray<CurvePiece> Of(int degree, ImmutableArray<double> knots, ImmutableArray<Vec3> points, ImmutableArray<double> weights)
    {
        var pieces = ImmutableArray.CreateBuilder<CurvePiece>();
        for (int span = degree; span < points.Length; span++)
        {
            if (!(knots[span] < knots[span + 1])) continue;
            var own = new (Vec3 Place, double Weight)[degree + 1];
            for (int j = 0; j <= degree; j++) own[j] = Blossom(degree, knots, points, weights, span, j);
            if (BezierPieces.Rational([.. own.Select(q => q.Place / q.Weight)], [.. own.Select(q => q.Weight)]) is { } piece) pieces.Add(piece);
        }
        return pieces.ToImmutable();
    }

    // Control point j of the Bézier curve over a span is the polar form at its start (degree − j times) and its end (j times): L. Ramshaw, Blossoming, 1987.
    private static (Vec3 Place, double Weight) Blossom(int degree, ImmutableArray<double> knots, ImmutableArray<Vec3> points, ImmutableArray<double> weights, int span, int j)
    {
        var row = new (Vec3 Place, double Weight)[degree + 1];
        for (int i = 0; i <= degree; i++)
        {
            int k = span - degree + i;
            row[i] = (weights[k] * points[k], weights[k]);
        }
        for (int r = 1; r <= degree; r++)
        {
            double x = r <= degree - j ? knots[span] : knots[span + 1];
            for (int i = degree; i >= r; i--)
            {
                int k = span - degree + i;
                double share = (x - knots[k]) / (knots[k + degree + 1 - r] - knots[k]);
                row[i] = (Vec3.Lerp(row[i - 1].Place, row[i].Place, share), row[i - 1].Weight + share * (row[i].Weight - row[i - 1].Weight));
            }
        }
        return row[degree];
    }
}

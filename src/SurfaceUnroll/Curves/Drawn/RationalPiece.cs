using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Curves.Drawn;

/// <summary>A rational Bézier curve of any degree: Σ wᵢ·Bᵢ(t)·Pᵢ / Σ wᵢ·Bᵢ(t).</summary>
/// <param name="points">Control points, mm; two or more, at most <see cref="MostPoints"/>.</param>
/// <param name="weights">As many, all &gt; 0.</param>
public sealed class RationalPiece(ImmutableArray<Vec3> points, ImmutableArray<double> weights) : CurvePiece
{
    /// <summary>Most control points: degree 24, past what any drawing program writes.</summary>
    public const int MostPoints = 25;

    /// <inheritdoc/>
    public override CurveSample At(double t)
    {
        // De Casteljau's construction in homogeneous places, stopped one and two rows before its end, where the derivatives stand
        // (G. Farin, Curves and Surfaces for CAGD, ch. 5 and 13).
        int degree = points.Length - 1;
        Span<Vec3> row = stackalloc Vec3[MostPoints];
        Span<double> w = stackalloc double[MostPoints];
        for (int i = 0; i <= degree; i++) (row[i], w[i]) = (weights[i] * points[i], weights[i]);
        (Vec3 first, Vec3 second, double w1, double w2) = (default, default, 0, 0);
        for (int left = degree; left > 0; left--)
        {
            if (left == 2)
            {
                second = degree * (degree - 1) * (row[2] - 2 * row[1] + row[0]);
                w2 = degree * (degree - 1) * (w[2] - 2 * w[1] + w[0]);
            }
            if (left == 1) (first, w1) = (degree * (row[1] - row[0]), degree * (w[1] - w[0]));
            for (int i = 0; i < left; i++) (row[i], w[i]) = (Vec3.Lerp(row[i], row[i + 1], t), w[i] + t * (w[i + 1] - w[i]));
        }
        Vec3 place = row[0] / w[0], d1 = (first - w1 * place) / w[0];
        return new CurveSample(place, d1, (second - 2 * w1 * d1 - w2 * place) / w[0]);
    }

    /// <inheritdoc/>
    public override CurvePiece Reversed() => new RationalPiece([.. points.Reverse()], [.. weights.Reverse()]);

    /// <inheritdoc/>
    public override CurvePiece Placed(Frame frame) => new RationalPiece([.. points.Select(frame.Point)], weights);
}

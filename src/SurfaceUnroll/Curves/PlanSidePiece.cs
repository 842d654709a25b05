using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Curves;

/// <summary>Part of a plan view raised by its side view: (aft, right, height(aft)).</summary>
/// <param name="plan">Plan piece lying flat: x aft, y right.</param>
/// <param name="from">Parameter on <paramref name="plan"/> where t = 0.</param>
/// <param name="to">Parameter on <paramref name="plan"/> where t = 1.</param>
/// <param name="height">The one span of the side view over this part.</param>
/// <param name="frame">Where the curve stands.</param>
internal sealed class PlanSidePiece(CurvePiece plan, double from, double to, HeightSpan height, Frame frame) : CurvePiece
{
    // Closer to a piece's end or to the one before it than this (of the parameter), a crossing is that end: splitting there would leave a
    // sliver, and not splitting moves the curve by less than 1e-9 of the piece.
    private const double Sliver = 1e-9;

    private static readonly ImmutableArray<double> Shares = [0.25, 0.5, 0.75];

    // Chain rule: z' = h'·x', z'' = h''·x'² + h'·x''.
    public override CurveSample At(double t)
    {
        CurveSample s = plan.At(from + t * (to - from));
        Vec3 d1 = (to - from) * s.D1, d2 = (to - from) * (to - from) * s.D2;
        (double z, double slope, double bend) = height.At(s.Point.X);
        return frame.Sample(new CurveSample(
            s.Point with { Z = z },
            d1 with { Z = slope * d1.X },
            d2 with { Z = bend * d1.X * d1.X + slope * d2.X }));
    }

    public override CurvePiece Placed(Frame other) => new PlanSidePiece(plan, from, to, height, other.After(frame));

    /// <summary>Raises one plan piece, cut wherever it crosses a station of the side view, so that every part is smooth.</summary>
    public static IEnumerable<CurvePiece> Raise(CurvePiece plan, SideView side)
    {
        ImmutableArray<double> cuts = Cuts(plan, side);
        for (int i = 0; i + 1 < cuts.Length; i++)
        {
            double from = cuts[i], to = cuts[i + 1];
            HeightSpan height = side.Over(Inside(plan, from, to, side));
            var part = new PlanSidePiece(plan, from, to, height, Frame.Identity);
            bool straight = plan.IsStraight && (height.IsStraight || plan.At(0).D1.X == 0);
            yield return straight ? new LinePiece(part.At(0).Point, part.At(1).Point) : part;
        }
    }

    // An aft distance well within the one span that this part runs over: its middle may only touch a station, as the far end of a hoop does that was measured up to there.
    private static double Inside(CurvePiece plan, double from, double to, SideView side)
    {
        double[] places = [.. Shares.Select(share => plan.At(from + share * (to - from)).Point.X)];
        return side.Stations.IsEmpty ? places[0] : places.MaxBy(x => side.Stations.Min(station => Math.Abs(x - station)));
    }

    private static ImmutableArray<double> Cuts(CurvePiece plan, SideView side)
    {
        var aft = new Vec3(1, 0, 0);
        var cuts = ImmutableArray.CreateBuilder<double>();
        cuts.Add(0);
        foreach (double t in side.Stations.SelectMany(station => plan.Crossings(aft, station)).Order())
        {
            if (t - cuts[^1] > Sliver && 1 - t > Sliver) cuts.Add(t);
        }
        cuts.Add(1);
        return cuts.ToImmutable();
    }
}

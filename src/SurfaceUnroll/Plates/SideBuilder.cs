using System.Collections.Immutable;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Forming;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Plates;

/// <summary>Lays the side profile of a bent plate.</summary>
/// <param name="stock">Material, thickness and bend rule.</param>
/// <param name="radius">Inside radius of bends that have none of their own, mm.</param>
/// <param name="offset">From the measured face to the middle surface along the outside normal, mm.</param>
internal sealed class SideBuilder(SheetStock stock, double radius, double offset)
{
    private readonly ImmutableArray<SideSpan>.Builder _spans = ImmutableArray.CreateBuilder<SideSpan>();
    private readonly ImmutableArray<SideFault>.Builder _faults = ImmutableArray.CreateBuilder<SideFault>();

    /// <summary>The profile of a side, or all that keeps it from being laid.</summary>
    /// <param name="side">Points or a run.</param>
    public SideLaying Lay(SideProfile side)
    {
        if (side is SideRun run) Lay(run);
        else LayPoints((SidePoints)side);
        if (Sharpest() is { } roll) _faults.Add(roll);
        return new SideLaying(_faults.Count == 0 ? new SideChain(_spans.ToImmutable()) : null, _faults.ToImmutable());
    }

    // A rolled area may have an inside radius of nothing, but for rounding.
    private double LeastMiddle => 0.5 * stock.Thickness - 1e-9;

    // The sharpest place of all smooth areas, if the inside would fold there.
    private TightRoll? Sharpest()
    {
        TightRoll? sharpest = _spans.OfType<CubicSpan>().Select(s => s.Sharpest()).MinBy(s => s.MiddleRadius);
        return sharpest?.MiddleRadius < LeastMiddle ? sharpest : null;
    }

    // Radius of the measured face where the middle surface has its own: the outside is on the left, so a turn up is hollow on it.
    private double FaceRadius(double middle, double turn) => Math.Max(0, middle + Math.Sign(turn) * offset);

    private ArcSpan Bend(Vec2 from, double heading, double turn, double? own)
    {
        double inside = own ?? radius, middle = inside + 0.5 * stock.Thickness;
        return new ArcSpan(from, heading, FaceRadius(middle, turn), middle, turn, (inside, BendAllowance.Of(stock, inside, Math.Abs(turn))));
    }

    private void Lay(SideRun run)
    {
        (Vec2 place, double heading) = (run.Start, -run.Heading);
        for (int i = 0; i < run.Steps.Length; i++)
        {
            SideStep step = run.Steps[i];
            if (step is SideArc rolled && rolled.Radius + Math.Sign(rolled.Turn) * offset < LeastMiddle)
                _faults.Add(new TightArc(i, rolled.Radius, 0.5 * stock.Thickness - Math.Sign(rolled.Turn) * offset));
            // Turns are positive down in the job.
            SideSpan span = step switch
            {
                SideLine line => new FlatSpan(place, place + line.Length * Vec2.FromAngle(heading)),
                SideArc arc => new ArcSpan(place, heading, arc.Radius, arc.Radius + Math.Sign(arc.Turn) * offset, -arc.Turn, null),
                SideBend bend => Bend(place, heading, -bend.Turn, bend.Radius),
                _ => throw new ArgumentOutOfRangeException(nameof(run), step, "There is no such step."),
            };
            _spans.Add(span);
            place = span.At(1).Face;
            heading += (span as ArcSpan)?.Turn ?? 0;
        }
    }

    // Height sections between bends; each bend is an arc that touches the section before it and the one after.
    private void LayPoints(SidePoints side)
    {
        int[] bends = [0, .. Enumerable.Range(1, side.Points.Length - 2).Where(i => side.Points[i].IsBend), side.Points.Length - 1];
        SideView[] sections = [.. Enumerable.Range(0, bends.Length - 1).Select(k => SideView.Through([.. side.Points[bends[k]..(bends[k + 1] + 1)].Select(p => p.Place)], side.Fit))];
        double from = side.Points[0].Place.X;
        for (int k = 0; k < sections.Length; k++)
        {
            bool last = k == sections.Length - 1;
            double to = side.Points[bends[k + 1]].Place.X;
            if (last)
            {
                Add(sections[k], from, to);
                break;
            }
            if (Corner(sections[k], sections[k + 1], side.Points[bends[k + 1]]) is not { } corner)
            {
                Add(sections[k], from, to);
                from = to;
                continue;
            }
            if (corner.FromAft < from || corner.ToAft > side.Points[bends[k + 2]].Place.X)
            {
                _faults.Add(new CrampedBend(bends[k + 1] + 1));
                return;
            }
            Add(sections[k], from, corner.FromAft);
            _spans.Add(corner.Bend);
            from = corner.ToAft;
        }
    }

    private void Add(SideView view, double from, double to)
    {
        double[] cuts = [from, .. view.Stations.Where(s => s > from && s < to), to];
        for (int i = 0; i + 1 < cuts.Length; i++)
        {
            if (cuts[i + 1] - cuts[i] <= 1e-9) continue;
            HeightSpan height = view.Over(0.5 * (cuts[i] + cuts[i + 1]));
            _spans.Add(height.IsStraight
                ? new FlatSpan(new Vec2(cuts[i], height.At(cuts[i]).Height), new Vec2(cuts[i + 1], height.At(cuts[i + 1]).Height))
                : new CubicSpan(height, cuts[i], cuts[i + 1], offset));
        }
    }

    // The arc of the bend's radius between two sections: its centre lies that far from both. Newton from where straight sides would be touched.
    // Null where the sections go on straight into each other.
    private (double FromAft, double ToAft, ArcSpan Bend)? Corner(SideView before, SideView after, SidePoint point)
    {
        double apex = point.Place.X;
        (double inHeading, double outHeading) = (Heading(before, apex), Heading(after, apex));
        double turn = outHeading - inHeading;
        if (Math.Abs(turn) < 1e-6) return null;
        double face = FaceRadius((point.Radius ?? radius) + 0.5 * stock.Thickness, turn), side = Math.Sign(turn) * face;
        double reach = face * Math.Tan(0.5 * Math.Abs(turn));
        double a = apex - reach * Math.Cos(inHeading), b = apex + reach * Math.Cos(outHeading);
        for (int i = 0; i < 40; i++)
        {
            Vec2 miss = Offset(after, b, side) - Offset(before, a, side);
            if (miss.Length < 1e-11) break;
            const double step = 1e-4;
            Vec2 da = (1 / (2 * step)) * (Offset(before, a + step, side) - Offset(before, a - step, side));
            Vec2 db = (1 / (2 * step)) * (Offset(after, b + step, side) - Offset(after, b - step, side));
            double det = da.Cross(db);
            if (Math.Abs(det) < 1e-12) break;
            a += miss.Cross(db) / det;
            b += miss.Cross(da) / det;
        }
        Vec2 from = Place(before, a);
        double heading = Heading(before, a);
        return (a, b, Bend(from, heading, Heading(after, b) - heading, point.Radius));
    }

    private static double Heading(SideView view, double aft) => Math.Atan(At(view, aft).Slope);

    private static Vec2 Place(SideView view, double aft) => new(aft, At(view, aft).Height);

    private static Vec2 Offset(SideView view, double aft, double side) => Place(view, aft) + side * new Vec2(1, At(view, aft).Slope).Unit.Left;

    // Past the ends of a section the straight that it goes on with.
    private static (double Height, double Slope, double Bend) At(SideView view, double aft) => view.Over(aft).At(aft);
}

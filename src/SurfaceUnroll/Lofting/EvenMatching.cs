using System.Collections.Immutable;

namespace SurfaceUnroll.Lofting;

/// <summary>Element lines at equal fractions of each curve's length.</summary>
internal sealed class EvenMatching(Directrix front, Directrix rear, double end) : IMatching
{
    /// <inheritdoc/>
    public ImmutableArray<Match> Anchors
    {
        get
        {
            // Both sides of a corner share one length, so a joint gives a line for every coordinate that stands at its length.
            IEnumerable<Match> atFront = front.Joints.Select(x => new Match(x, Partner(rear, front.LengthAt(x) / front.Length)));
            IEnumerable<Match> atRear = rear.Joints.Select(y => new Match(Partner(front, rear.LengthAt(y) / rear.Length), y));
            IEnumerable<Match> ends = [new Match(0, 0), new Match(end, end)];
            var anchors = new List<Match>();
            foreach (Match match in atFront.Concat(atRear).Concat(ends).Where(m => m.Progress <= 2 * end).OrderBy(m => m.Progress))
                if (anchors.Count == 0 || Follows(anchors[^1], match))
                    anchors.Add(match);
            return [.. anchors];
        }
    }

    /// <inheritdoc/>
    public Match Between(Match left, Match right)
    {
        double f0 = front.LengthAt(left.Front) / front.Length, f1 = front.LengthAt(right.Front) / front.Length;
        if (f1 - f0 <= 1e-12) return Match.Lerp(left, right, 0.5);
        double fraction = 0.5 * (f0 + f1);
        return new Match(front.AtLength(fraction * front.Length), rear.AtLength(fraction * rear.Length));
    }

    private static double Partner(Directrix curve, double fraction) => fraction >= 1 ? 1 : curve.AtLength(fraction * curve.Length);

    private static bool Follows(Match before, Match match) =>
        match.Front >= before.Front && match.Rear >= before.Rear && match.Progress > before.Progress + 1e-12;
}

using System.Collections.Immutable;

namespace SurfaceUnroll.Lofting.Nearest;

/// <summary>A moved edge and its anchors.</summary>
internal sealed record FreedomSolution(MovedStations Stations, ImmutableArray<int> Anchors);

/// <summary>Looks for the stations at which the tangent planes of the fixed edge begin, turn back and end (the anchors), and for the best edge over each such choice.</summary>
/// <remarks>Stations before the first anchor are the mantle of a cone about the left end of the fixed edge, those after the last one about its right end; a cone about an end touches any curve. In between the planes
/// follow each other, and where the fixed edge begins to turn the other way, so does the moved one. A straight edge has one plane, and one anchor.</remarks>
internal sealed class FreedomStructure(FixedEdge edge, ImmutableArray<EdgeStation> stations, EdgeEnd end)
{
    private readonly NearestSearch _search = new(edge, stations, end);

    // Quadratic problems after which no other choice of anchors is tried: a wild curve has an answer in time too, if not the best or any.
    private const int Patience = 300;

    // Steps at which the place of a straight edge's plane is looked for first.
    private const int Tried = 16;

    // Gain of cost (as a share, and in mm²) for which the ends of the fans are moved.
    private const double Gain = 1e-3, LeastGain = 1e-7;

    /// <summary>The best edge within limits.</summary>
    /// <param name="limits">How far it may go.</param>
    /// <param name="from">Where to begin; the path of least twist if null.</param>
    public FreedomSolution Solve(MoveLimits limits, FreedomSolution? from = null)
    {
        int until = _search.Rounds + Patience;
        FreedomSolution best = from is null ? Started(limits) : At(from, from.Anchors, limits);
        for (int stride = Math.Max(1, stations.Length / 8); stride >= 1; stride /= 2)
        {
            bool better = true;
            while (better)
            {
                better = false;
                foreach (ImmutableArray<int> anchors in Neighbours(best.Anchors, stride))
                {
                    if (_search.Rounds >= until) return best;
                    FreedomSolution next = At(best, anchors, limits);
                    if (!IsBetter(next.Stations, best.Stations)) continue;
                    (best, better) = (next, true);
                    break;
                }
            }
        }
        return best;
    }

    /// <summary>The smallest freedom within which there is an edge, to a tolerance, mm.</summary>
    public double Least(MoveLimits limits, double tooSmall, FreedomSolution enough, double tolerance)
    {
        double lo = tooSmall, hi = enough.Stations.Largest;
        FreedomSolution best = enough;
        while (hi - lo > tolerance)
        {
            double middle = 0.5 * (lo + hi);
            FreedomSolution tried = At(best, best.Anchors, limits with { Most = middle });
            if (tried.Stations.Miss <= NearestSearch.Met) (hi, best) = (middle, tried);
            else lo = middle;
        }
        return hi;
    }

    private FreedomSolution Started(MoveLimits limits)
    {
        StartPath path = StartPath.Find(edge, stations, end is EdgeEnd.Middle or EdgeEnd.MiddleCorner);
        var still = new MovedStations(new double[stations.Length], new double[stations.Length], [.. path.Turned], 0, double.PositiveInfinity);
        var start = new FreedomSolution(_search.Search(still, path.Anchors, limits), path.Anchors);
        if (path.Anchors.Length > 1) return start;
        // A place far from both ends knows nothing of them, so the one plane of a straight edge is tried all along.
        for (int k = 0; k <= Tried; k++)
        {
            ImmutableArray<int> anchors = [k * (stations.Length - 1) / Tried];
            var next = new FreedomSolution(_search.Search(still, anchors, limits), anchors);
            if (IsBetter(next.Stations, start.Stations)) start = next;
        }
        return start;
    }

    private FreedomSolution At(FreedomSolution from, ImmutableArray<int> anchors, MoveLimits limits) => new(_search.Search(from.Stations, anchors, limits), anchors);

    // One anchor moved by a stride, or as far as its neighbours let it.
    private IEnumerable<ImmutableArray<int>> Neighbours(ImmutableArray<int> anchors, int stride)
    {
        for (int k = 0; k < anchors.Length; k++)
        {
            // Past the middle of a mirrored edge the other half begins.
            if (k == anchors.Length - 1 && (end is EdgeEnd.Middle or EdgeEnd.MiddleCorner)) continue;
            if ((k == 0 && !edge.LeftFan) || (k == anchors.Length - 1 && !edge.RightFan)) continue;
            int least = k > 0 ? anchors[k - 1] + 1 : 0, most = k + 1 < anchors.Length ? anchors[k + 1] - 1 : stations.Length - 1;
            foreach (int to in new[] { Math.Max(least, anchors[k] - stride), Math.Min(most, anchors[k] + stride) })
                if (to != anchors[k]) yield return anchors.SetItem(k, to);
        }
    }

    private static bool IsBetter(MovedStations next, MovedStations than)
    {
        if (than.Miss > NearestSearch.Met) return next.Miss < 0.5 * than.Miss;
        return next.Miss <= NearestSearch.Met && next.Cost < (1 - Gain) * than.Cost - LeastGain;
    }
}

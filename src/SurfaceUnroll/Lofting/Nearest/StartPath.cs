using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Lofting.Nearest;

/// <summary>Which tangent plane of the fixed edge each place of the other one is near to: where the search begins.</summary>
/// <param name="Turned">For each station the turn of the fixed edge, increasing.</param>
/// <param name="Anchors">Stations at which the planes begin, turn back, and end; see <see cref="FreedomStructure"/>.</param>
internal sealed record StartPath(ImmutableArray<double> Turned, ImmutableArray<int> Anchors)
{
    // Places of the fixed edge that are looked at.
    private const int Places = 161;

    // What a line that leaves an end fan with twist is charged with: as much edge, as a share of the whole, would have to be bent for it.
    private const double Crease = 0.1;

    // Orders what twist leaves open; six orders below a real twist.
    private const double EvenSpacing = 1e-6;

    /// <summary>The monotone path of least twist (Wang and Tang, 2005, as for any sheet), the lines of fans about the ends of either edge free of cost: a cone about an end touches any curve.</summary>
    /// <param name="edge">The fixed edge.</param>
    /// <param name="stations">Of the other edge.</param>
    /// <param name="mirrored">The last station lies in a plane of symmetry, so there is no fan.</param>
    public static StartPath Find(FixedEdge edge, ImmutableArray<EdgeStation> stations, bool mirrored)
    {
        ImmutableArray<double> turns = edge.Turned > 0 ? edge.Even(Places) : [0];
        DirectrixSample[] planes = [.. turns.Select(edge.At)];
        int rows = stations.Length, columns = turns.Length;
        double length = stations[^1].Length;
        var best = new double[rows, columns];
        var from = new (int I, int K)[rows, columns];
        var cost = new double[rows, columns];
        for (int i = 0; i < rows; i++)
        {
            EdgeStation s = stations[i];
            var sample = new DirectrixSample(new Vec3(s.Place.X, s.Place.Y, 0), new Vec3(s.Along.X, s.Along.Y, 0));
            for (int k = 0; k < columns; k++)
            {
                double lead = (columns > 1 ? (double)k / (columns - 1) : 0.5) - s.Length / length;
                cost[i, k] = Torsality.Cost(planes[k], sample) + EvenSpacing * lead * lead;
                best[i, k] = i == 0 && k == 0 ? 0 : double.PositiveInfinity;
                Take(i - 1, k - 1, i, k);
                Take(i - 1, k, i, k);
                Take(i, k - 1, i, k);
            }
        }
        return Trace(edge, from, turns, mirrored);

        void Take(int i0, int k0, int i, int k)
        {
            if (i0 < 0 || k0 < 0) return;
            Fan before = FanAt(i0, k0, i, k);
            double covered = (stations[i].Length - stations[i0].Length) / length + (columns > 1 ? (double)(k - k0) / (columns - 1) : 0);
            double total = best[i0, k0] + (before == Fan.None ? 0.5 * (cost[i0, k0] + cost[i, k]) * covered : 0);
            // Where a path leaves one fan, or enters the last, its plane must touch both sides.
            Fan earlier = i0 == 0 && k0 == 0 ? before : FanAt(from[i0, k0].I, from[i0, k0].K, i0, k0);
            if (earlier != before) total += Crease * cost[i0, k0];
            if (total < best[i, k]) (best[i, k], from[i, k]) = (total, (i0, k0));
        }

        Fan FanAt(int i0, int k0, int i, int k)
        {
            if (i0 == i && i == 0) return edge.LeftFan ? Fan.OwnLeft : Fan.None;
            if (k0 == k && k == 0 && columns > 1) return edge.LeftFan ? Fan.FixedLeft : Fan.None;
            if (mirrored) return Fan.None;
            if (i0 == i && i == rows - 1) return edge.RightFan ? Fan.OwnRight : Fan.None;
            if (k0 == k && k == columns - 1 && columns > 1) return edge.RightFan ? Fan.FixedRight : Fan.None;
            return Fan.None;
        }
    }

    private static StartPath Trace(FixedEdge edge, (int I, int K)[,] from, ImmutableArray<double> turns, bool mirrored)
    {
        (int rows, int columns) = (from.GetLength(0), from.GetLength(1));
        var low = new int[rows];
        var high = new int[rows];
        Array.Fill(low, int.MaxValue);
        for (int i = rows - 1, k = columns - 1; ;)
        {
            (low[i], high[i]) = (Math.Min(low[i], k), Math.Max(high[i], k));
            if (i == 0 && k == 0) break;
            (i, k) = from[i, k];
        }
        double[] turned = [.. Enumerable.Range(0, rows).Select(i => 0.5 * (turns[low[i]] + turns[high[i]]))];
        if (columns == 1) return new StartPath([.. turned], [rows / 2]);
        int first = 0, last = rows - 1;
        while (edge.LeftFan && first < rows - 2 && high[first + 1] == 0) first++;
        while (edge.RightFan && !mirrored && last > first + 1 && low[last - 1] == columns - 1) last--;
        var anchors = new List<int> { first };
        // Each needs a station of its own.
        foreach (double turn in edge.Inflections.Take(rows - 2)) anchors.Add(Math.Clamp(Array.FindIndex(turned, t => t >= turn), anchors[^1] + 1, Math.Max(anchors[^1] + 1, last - 1)));
        anchors.Add(Math.Max(last, anchors[^1] + 1));
        for (int k = 0; k < anchors.Count; k++) anchors[k] = Math.Min(anchors[k], rows - anchors.Count + k);
        return new StartPath([.. turned], [.. anchors]);
    }

    private enum Fan
    {
        None,
        OwnLeft,
        FixedLeft,
        OwnRight,
        FixedRight,
    }
}

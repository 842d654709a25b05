using System.Collections.Immutable;

namespace SurfaceUnroll.Geometry;

/// <summary>A row of strands that meet end to end.</summary>
/// <param name="Links">Strands by their indices in the order of the row, and which of them run from their end to their start.</param>
/// <param name="IsClosed">The last ends where the first begins.</param>
public sealed record LinkedStrands(ImmutableArray<(int Strand, bool Reversed)> Links, bool IsClosed);

/// <summary>What came of linking strands.</summary>
/// <param name="Rows">Every strand stands in one of them, once.</param>
/// <param name="Forks">Places where three or more ends meet, and the strands there. Rows end at them.</param>
public sealed record EndLinking(ImmutableArray<LinkedStrands> Rows, ImmutableArray<(Vec3 Place, ImmutableArray<int> Strands)> Forks);

/// <summary>Finds which strands go on as which, by the places of their ends alone.</summary>
public static class EndLinks
{
    /// <summary>Links strands whose ends are no farther apart than a tolerance.</summary>
    /// <param name="ends">Start and end of each strand, mm.</param>
    /// <param name="within">mm, ≥ 0. Ends that are near each other by way of others are taken for one place.</param>
    public static EndLinking Of(ImmutableArray<(Vec3 Start, Vec3 End)> ends, double within)
    {
        int[] place = Places(ends, within);
        ILookup<int, int> at = Enumerable.Range(0, place.Length).ToLookup(e => place[e]);
        bool Goes(int end) => at[place[end]].Count() == 2;
        int Partner(int end) => at[place[end]].Single(e => e != end);
        bool[] done = new bool[ends.Length];
        var rows = ImmutableArray.CreateBuilder<LinkedStrands>();
        LinkedStrands Walk(int end)
        {
            var links = ImmutableArray.CreateBuilder<(int, bool)>();
            int first = end;
            while (true)
            {
                done[end / 2] = true;
                links.Add((end / 2, end % 2 == 1));
                int far = end ^ 1;
                if (!Goes(far)) return new LinkedStrands(links.ToImmutable(), false);
                end = Partner(far);
                if (end == first) return new LinkedStrands(links.ToImmutable(), true);
            }
        }
        // Open rows first, from an end that nothing meets; what is left then are rings.
        for (int end = 0; end < 2 * ends.Length; end++)
            if (!done[end / 2] && !Goes(end)) rows.Add(Walk(end));
        for (int strand = 0; strand < ends.Length; strand++)
            if (!done[strand]) rows.Add(Walk(2 * strand));
        return new EndLinking(
            [.. rows.OrderBy(r => r.Links.Min(l => l.Strand))],
            [.. at.Where(g => g.Count() > 2).Select(g => (At(ends, g.First()), g.Select(e => e / 2).Distinct().ToImmutableArray()))]);
    }

    private static Vec3 At(ImmutableArray<(Vec3 Start, Vec3 End)> ends, int end) => end % 2 == 0 ? ends[end / 2].Start : ends[end / 2].End;

    // For each end (2·strand, and one more for its far end) the lowest end that lies at its place. Ends are looked for in a grid whose cells are as wide as the tolerance.
    private static int[] Places(ImmutableArray<(Vec3 Start, Vec3 End)> ends, double within)
    {
        int[] parent = [.. Enumerable.Range(0, 2 * ends.Length)];
        int Root(int e)
        {
            while (parent[e] != e) e = parent[e] = parent[parent[e]];
            return e;
        }
        double cell = Math.Max(within, 1e-9);
        var grid = new Dictionary<(long, long, long), List<int>>();
        for (int e = 0; e < parent.Length; e++)
        {
            Vec3 p = At(ends, e);
            (long x, long y, long z) = ((long)Math.Floor(p.X / cell), (long)Math.Floor(p.Y / cell), (long)Math.Floor(p.Z / cell));
            for (int n = 0; n < 27; n++)
            {
                if (!grid.TryGetValue((x + n % 3 - 1, y + n / 3 % 3 - 1, z + n / 9 - 1), out List<int>? near)) continue;
                foreach (int other in near.Where(o => (At(ends, o) - p).Length <= within))
                {
                    (int a, int b) = (Root(e), Root(other));
                    parent[Math.Max(a, b)] = Math.Min(a, b);
                }
            }
            if (!grid.TryGetValue((x, y, z), out List<int>? own)) grid[(x, y, z)] = own = [];
            own.Add(e);
        }
        return [.. parent.Select((_, e) => Root(e))];
    }
}

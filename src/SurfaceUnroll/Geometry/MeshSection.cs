using System.Collections.Immutable;

namespace SurfaceUnroll.Geometry;

/// <summary>One line in which a plane cuts a mesh.</summary>
/// <param name="Places">Corners in order, mm, in the plane; of a closed one the last is the first.</param>
public sealed record SectionLine(ImmutableArray<Vec3> Places)
{
    /// <summary>mm.</summary>
    public double Length { get; } = Places.Skip(1).Zip(Places, (b, a) => (b - a).Length).Sum();

    /// <summary>It ends where it begins.</summary>
    public bool IsClosed => Places.Length > 2 && Places[0] == Places[^1];
}

/// <summary>Cuts meshes by planes.</summary>
public static class MeshSection
{
    /// <summary>The lines in which a plane cuts a mesh, put together over gaps no wider than a tolerance, longest first.</summary>
    /// <param name="mesh">Any triangles; they need not hang together.</param>
    /// <param name="origin">A place of the plane, mm.</param>
    /// <param name="normal">Square to it, of unit length.</param>
    /// <param name="within">mm, ≥ 0.</param>
    public static ImmutableArray<SectionLine> Of(TriangleMesh mesh, Vec3 origin, Vec3 normal, double within)
    {
        double[] height = [.. mesh.Places.Select(p => (p - origin).Dot(normal))];
        var neighbours = new Dictionary<(int, int), List<(int, int)>>();
        foreach ((int a, int b, int c) in mesh.Faces)
        {
            // A vertex in the plane counts as above it, so that every triangle is crossed by two of its edges or by none.
            if (height[a] >= 0 == height[b] >= 0 && height[b] >= 0 == height[c] >= 0) continue;
            (int, int)[] crossed = [.. new[] { (a, b), (b, c), (c, a) }.Where(e => height[e.Item1] >= 0 != height[e.Item2] >= 0).Select(e => (Math.Min(e.Item1, e.Item2), Math.Max(e.Item1, e.Item2)))];
            Note(crossed[0], crossed[1]);
            Note(crossed[1], crossed[0]);
        }
        Vec3 At((int Low, int High) edge)
        {
            (double low, double high) = (height[edge.Low], height[edge.High]);
            return Vec3.Lerp(mesh.Places[edge.Low], mesh.Places[edge.High], low / (low - high));
        }
        ImmutableArray<ImmutableArray<Vec3>> lines = [.. Lines(neighbours).Select(line => line.Select(At).ToImmutableArray()).Select(WithoutRepeats).Where(l => l.Length > 1)];
        return [.. Joined(lines, within).OrderByDescending(l => l.Length)];

        void Note((int, int) edge, (int, int) next)
        {
            if (!neighbours.TryGetValue(edge, out List<(int, int)>? list)) neighbours[edge] = list = new List<(int, int)>(2);
            list.Add(next);
        }
    }

    // Walks from edge to edge: open lines first, then rings. Where more than two triangles share an edge the lines end.
    private static IEnumerable<List<(int, int)>> Lines(Dictionary<(int, int), List<(int, int)>> neighbours)
    {
        var walked = new HashSet<((int, int), (int, int))>();
        foreach (KeyValuePair<(int, int), List<(int, int)>> ends in neighbours.Where(n => n.Value.Count != 2))
            foreach ((int, int) next in ends.Value)
                if (!walked.Contains((ends.Key, next))) yield return Walk(ends.Key, next);
        foreach (KeyValuePair<(int, int), List<(int, int)>> ring in neighbours.Where(n => n.Value.Count == 2))
            if (!walked.Contains((ring.Key, ring.Value[0])) && !walked.Contains((ring.Key, ring.Value[1]))) yield return Walk(ring.Key, ring.Value[0]);

        List<(int, int)> Walk((int, int) from, (int, int) to)
        {
            var line = new List<(int, int)> { from };
            while (true)
            {
                walked.Add((from, to));
                walked.Add((to, from));
                line.Add(to);
                if (neighbours[to].Count != 2 || to == line[0]) return line;
                (from, to) = (to, neighbours[to][0] == from ? neighbours[to][1] : neighbours[to][0]);
            }
        }
    }

    // A plane through a vertex crosses all edges there at one place, but for rounding. The last place stays, so that a ring stays closed.
    private static ImmutableArray<Vec3> WithoutRepeats(ImmutableArray<Vec3> places)
    {
        double near = 1e-9 * places.Max(p => (p - places[0]).Length);
        var kept = ImmutableArray.CreateBuilder<Vec3>();
        foreach (Vec3 p in places)
            if (kept.Count == 0 || (p - kept[^1]).Length > near) kept.Add(p);
        if (kept.Count > 1) kept[^1] = places[^1];
        return kept.ToImmutable();
    }

    private static IEnumerable<SectionLine> Joined(ImmutableArray<ImmutableArray<Vec3>> lines, double within)
    {
        foreach (LinkedStrands row in EndLinks.Of([.. lines.Select(l => (l[0], l[^1]))], within).Rows)
        {
            var places = new List<Vec3>();
            foreach ((int index, bool reversed) in row.Links)
            {
                IEnumerable<Vec3> own = reversed ? lines[index].Reverse() : lines[index];
                places.AddRange(places.Count > 0 && places[^1] == own.First() ? own.Skip(1) : own);
            }
            if (row.IsClosed && places.Count > 2 && places[0] != places[^1]) places.Add(places[0]);
            if (places.Count > 1) yield return new SectionLine([.. places]);
        }
    }
}

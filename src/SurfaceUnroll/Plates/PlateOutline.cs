using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Plates;

/// <summary>One edge of a plate.</summary>
/// <param name="Name">Of its curve, or chord.</param>
/// <param name="Path">On the blank, counter-clockwise round the plate, mm.</param>
/// <param name="Against">The edge itself runs against that.</param>
internal sealed record PlateEdge(string Name, ImmutableArray<Vec2> Path, bool Against);

/// <summary>Joins curves to the outline of a plate.</summary>
internal static class PlateOutline
{
    /// <summary>Name of a straight line that closes what the curves leave open.</summary>
    public const string Chord = "chord";

    // Ends of curves nearer than this, mm, meet.
    private const double Meeting = 0.05;

    /// <summary>The edges round a plate, counter-clockwise, from curves in any order and direction.</summary>
    public static ImmutableArray<PlateEdge> Of(IReadOnlyList<(string Name, ImmutableArray<Vec2> Path)> curves)
    {
        var edges = ImmutableArray.CreateBuilder<PlateEdge>();
        List<(string Name, ImmutableArray<Vec2> Path)> rest = [.. curves];
        (string first, ImmutableArray<Vec2> path) = rest[0];
        rest.RemoveAt(0);
        edges.Add(new PlateEdge(first, path, false));
        while (rest.Count > 0)
        {
            Vec2 end = edges[^1].Path[^1];
            int next = Enumerable.Range(0, rest.Count).MinBy(i => Math.Min((rest[i].Path[0] - end).Length, (rest[i].Path[^1] - end).Length));
            (string name, ImmutableArray<Vec2> way) = rest[next];
            rest.RemoveAt(next);
            bool against = (way[^1] - end).Length < (way[0] - end).Length;
            if (against) way = [.. way.Reverse()];
            Join(end, way[0]);
            edges.Add(new PlateEdge(name, way.SetItem(0, edges[^1].Path[^1]), against));
        }
        Join(edges[^1].Path[^1], path[0]);
        PlateEdge closing = edges[^1];
        edges[^1] = closing with { Path = closing.Path.SetItem(closing.Path.Length - 1, path[0]) };
        double area = edges.Sum(e => e.Path.Zip(e.Path.Skip(1), (a, b) => 0.5 * a.Cross(b)).Sum());
        return area >= 0 ? edges.ToImmutable() : [.. edges.AsEnumerable().Reverse().Select(e => new PlateEdge(e.Name, [.. e.Path.Reverse()], !e.Against))];

        void Join(Vec2 from, Vec2 to)
        {
            if ((to - from).Length > Meeting) edges.Add(new PlateEdge(Free(Chord), [from, to], false));
        }

        string Free(string name)
        {
            bool Taken(string n) => edges.Any(e => e.Name == n) || curves.Any(c => c.Name == n);
            return Taken(name) ? Enumerable.Range(2, int.MaxValue - 2).Select(k => $"{name} {k}").First(n => !Taken(n)) : name;
        }
    }

    /// <summary>The same edges with a place wherever they cross one of some heights.</summary>
    public static ImmutableArray<PlateEdge> CutAt(ImmutableArray<PlateEdge> edges, ImmutableArray<double> heights) =>
        [.. edges.Select(e => e with { Path = CutAt(e.Path, heights) })];

    private static ImmutableArray<Vec2> CutAt(ImmutableArray<Vec2> path, ImmutableArray<double> heights)
    {
        const double near = 1e-9;
        var cut = ImmutableArray.CreateBuilder<Vec2>(path.Length);
        cut.Add(path[0]);
        for (int i = 0; i + 1 < path.Length; i++)
        {
            Vec2 a = path[i], b = path[i + 1];
            (double low, double high) = (Math.Min(a.Y, b.Y), Math.Max(a.Y, b.Y));
            IEnumerable<double> between = heights.Where(h => h > low + near && h < high - near);
            if (b.Y < a.Y) between = between.Reverse();
            foreach (double h in between) cut.Add(new Vec2(a.X + (h - a.Y) / (b.Y - a.Y) * (b.X - a.X), h));
            cut.Add(b);
        }
        return cut.ToImmutable();
    }
}

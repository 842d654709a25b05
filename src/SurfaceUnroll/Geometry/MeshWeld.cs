using System.Collections.Immutable;

namespace SurfaceUnroll.Geometry;

/// <summary>Finds vertices along the borders of a mesh that lie at one place without being one.</summary>
public static class MeshWeld
{
    /// <summary>How near border vertices must be to count as one, as a part of the longest side of the mesh's box: ten times what is lost when
    /// coordinates are stored as single floats, and a micrometre on a metre of sheet.</summary>
    public const double Nearness = 1e-6;

    // Cells wider than the reach, so that nearly every vertex looks into one cell only. 21 bits an axis hold 1/(4·Nearness) cells with room.
    private const double CellsPerReach = 0.25;
    private const int Bits = 21;

    /// <summary>The vertex that each vertex becomes when those of the borders are welded: itself, or an earlier one.</summary>
    /// <returns>Null if there is nothing to weld.</returns>
    public static int[]? Borders(ReadOnlySpan<Vec3> places, MeshEdges edges)
    {
        bool[] onBorder = new bool[places.Length];
        for (int s = 0; s < edges.Sides; s++)
        {
            if (edges.Twin(s) == MeshEdges.None) onBorder[edges.From(s)] = onBorder[edges.To(s)] = true;
        }
        (Vec3 low, double size) = Extent(places);
        var grid = new Grid(low, Nearness * size);
        int[] becomes = new int[places.Length];
        bool any = false;
        for (int v = 0; v < places.Length; v++)
        {
            becomes[v] = onBorder[v] ? grid.NearOrAdd(v, places) : v;
            any |= becomes[v] != v;
        }
        return any ? becomes : null;
    }

    /// <summary>The faces with their vertices replaced.</summary>
    public static ImmutableArray<(int A, int B, int C)> Apply(ImmutableArray<(int A, int B, int C)> faces, int[] becomes) =>
        [.. faces.Select(f => (becomes[f.A], becomes[f.B], becomes[f.C]))];

    private static (Vec3 Low, double Size) Extent(ReadOnlySpan<Vec3> places)
    {
        if (places.IsEmpty) return (Vec3.Zero, 0);
        (Vec3 low, Vec3 high) = (places[0], places[0]);
        foreach (Vec3 p in places)
        {
            low = new Vec3(Math.Min(low.X, p.X), Math.Min(low.Y, p.Y), Math.Min(low.Z, p.Z));
            high = new Vec3(Math.Max(high.X, p.X), Math.Max(high.Y, p.Y), Math.Max(high.Z, p.Z));
        }
        Vec3 span = high - low;
        return (low, Math.Max(span.X, Math.Max(span.Y, span.Z)));
    }

    // Vertices that were kept, by cells of space. They lie farther apart than the reach, so a cell holds few.
    private sealed class Grid(Vec3 low, double reach)
    {
        private readonly Dictionary<ulong, List<int>> _cells = [];

        public int NearOrAdd(int vertex, ReadOnlySpan<Vec3> places)
        {
            Vec3 p = places[vertex];
            (ulong x0, ulong x1) = Range(p.X - low.X);
            (ulong y0, ulong y1) = Range(p.Y - low.Y);
            (ulong z0, ulong z1) = Range(p.Z - low.Z);
            for (ulong x = x0; x <= x1; x++)
            {
                for (ulong y = y0; y <= y1; y++)
                {
                    for (ulong z = z0; z <= z1; z++)
                    {
                        if (Near(Key(x, y, z), p, places) is { } near) return near;
                    }
                }
            }
            ulong key = Key(Cell(p.X - low.X), Cell(p.Y - low.Y), Cell(p.Z - low.Z));
            if (!_cells.TryGetValue(key, out List<int>? kept)) _cells[key] = kept = [];
            kept.Add(vertex);
            return vertex;
        }

        private int? Near(ulong key, Vec3 p, ReadOnlySpan<Vec3> places)
        {
            if (!_cells.TryGetValue(key, out List<int>? kept)) return null;
            foreach (int other in kept)
            {
                if ((places[other] - p).Length <= reach) return other;
            }
            return null;
        }

        private (ulong First, ulong Last) Range(double along) => (Cell(Math.Max(0, along - reach)), Cell(along + reach));

        private ulong Cell(double along) => reach > 0 ? (ulong)(along / reach * CellsPerReach) : 0;

        private static ulong Key(ulong x, ulong y, ulong z) => x << 2 * Bits | y << Bits | z;
    }
}

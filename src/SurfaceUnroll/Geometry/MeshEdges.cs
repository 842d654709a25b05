using System.Collections.Immutable;

namespace SurfaceUnroll.Geometry;

/// <summary>Which triangles of a mesh meet along which edge, found in time proportional to their number.</summary>
/// <remarks>Side <c>k</c> of face <c>f</c> has the number <c>3 f + k</c> and runs from corner <c>k</c> of the face to the next one.</remarks>
public sealed class MeshEdges
{
    /// <summary>In place of a twin: no other face has this edge.</summary>
    public const int None = -1;

    /// <summary>In place of a twin: three or more faces have this edge.</summary>
    public const int Many = -2;

    // Sorting by insertion is the quickest for the few edges of a common vertex; the hub of a large fan has thousands.
    private const int FewEdges = 24;

    private readonly int[] _corners;
    private readonly int[] _twins;

    private MeshEdges(int[] corners, int[] twins, ImmutableArray<(int Side, int Faces)> shared)
    {
        _corners = corners;
        _twins = twins;
        Shared = shared;
    }

    /// <summary>Number of sides, three a face.</summary>
    public int Sides => _corners.Length;

    /// <summary>Edges of three or more faces: one of their sides, and how many faces.</summary>
    public ImmutableArray<(int Side, int Faces)> Shared { get; }

    /// <summary>The other side along the same edge, whichever way it runs; <see cref="None"/> on a border, <see cref="Many"/> on a shared edge.</summary>
    public int Twin(int side) => _twins[side];

    /// <summary>Vertex that a side starts from.</summary>
    public int From(int side) => _corners[side];

    /// <summary>Vertex that a side runs to.</summary>
    public int To(int side) => _corners[Next(side)];

    /// <summary>The next side of the same face.</summary>
    public static int Next(int side) => side % 3 == 2 ? side - 2 : side + 1;

    /// <summary>The side before, of the same face.</summary>
    public static int Previous(int side) => side % 3 == 0 ? side + 2 : side - 1;

    /// <summary>Finds the edges.</summary>
    /// <param name="vertices">Number of vertices.</param>
    /// <param name="faces">Vertex indices in range, the three of a face different.</param>
    public static MeshEdges Of(int vertices, ReadOnlySpan<(int A, int B, int C)> faces)
    {
        int[] corners = new int[3 * faces.Length];
        for (int f = 0; f < faces.Length; f++) (corners[3 * f], corners[3 * f + 1], corners[3 * f + 2]) = faces[f];
        return new Builder(corners).Build(vertices);
    }

    // Sides are gathered by the lower vertex of their edge (a counting sort), then sorted by the higher one.
    private sealed class Builder(int[] corners)
    {
        private readonly int[] _twins = new int[corners.Length];
        private readonly ImmutableArray<(int, int)>.Builder _shared = ImmutableArray.CreateBuilder<(int, int)>();

        public MeshEdges Build(int vertices)
        {
            int[] ends = new int[vertices + 1];
            for (int s = 0; s < corners.Length; s++) ends[Lower(s) + 1]++;
            for (int v = 0; v < vertices; v++) ends[v + 1] += ends[v];
            int[] order = new int[corners.Length];
            int[] filled = ends[..^1];
            for (int s = 0; s < corners.Length; s++) order[filled[Lower(s)]++] = s;
            for (int v = 0; v < vertices; v++) Pair(order.AsSpan(ends[v]..ends[v + 1]));
            return new MeshEdges(corners, _twins, _shared.ToImmutable());
        }

        private int Lower(int side) => Math.Min(corners[side], corners[Next(side)]);

        private int Higher(int side) => Math.Max(corners[side], corners[Next(side)]);

        private void Pair(Span<int> sides)
        {
            Sort(sides);
            for (int start = 0; start < sides.Length;)
            {
                int end = start + 1;
                while (end < sides.Length && Higher(sides[end]) == Higher(sides[start])) end++;
                Note(sides[start..end]);
                start = end;
            }
        }

        private void Note(ReadOnlySpan<int> edge)
        {
            if (edge is [int a, int b]) (_twins[a], _twins[b]) = (b, a);
            else if (edge is [int alone]) _twins[alone] = None;
            else
            {
                foreach (int side in edge) _twins[side] = Many;
                _shared.Add((edge[0], edge.Length));
            }
        }

        private void Sort(Span<int> sides)
        {
            if (sides.Length > FewEdges)
            {
                long[] keys = new long[sides.Length];
                for (int i = 0; i < keys.Length; i++) keys[i] = (long)Higher(sides[i]) << 32 | (uint)sides[i];
                Array.Sort(keys);
                for (int i = 0; i < keys.Length; i++) sides[i] = (int)keys[i];
                return;
            }
            for (int i = 1; i < sides.Length; i++)
            {
                (int side, int key, int j) = (sides[i], Higher(sides[i]), i);
                for (; j > 0 && Higher(sides[j - 1]) > key; j--) sides[j] = sides[j - 1];
                sides[j] = side;
            }
        }
    }
}

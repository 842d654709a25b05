using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Lofting;

namespace SurfaceUnroll.Flattening;

/// <summary>The triangles of a grid.</summary>
/// <param name="Grid">The grid.</param>
/// <param name="Mesh">Its triangles; places that coincide are one vertex, triangles without area are left out, and so are vertices of no other.</param>
/// <param name="VertexOf">Vertex at each place of the grid, row by row.</param>
public sealed record GridMesh(SheetGrid Grid, TriangleMesh Mesh, ImmutableArray<int> VertexOf)
{
    // A triangle is slim whose area, over its longest side squared, is less.
    private const double Slim = 1e-3;

    // Neighbours closer than this (mm) are one place.
    private const double Coincident = 1e-7;

    /// <summary>Vertex at a row and a column.</summary>
    public int At(int row, int column) => VertexOf[row * Grid.Columns + column];

    /// <summary>True if the vertex at a row and a column stands there, and not beside it.</summary>
    public bool IsAt(int row, int column) => (Mesh.Places[At(row, column)] - Grid.At(row, column)).Length <= Coincident;

    /// <summary>Vertices along an edge, each once: front and rear from left to right, left and right from front to rear.</summary>
    /// <param name="name">front, right, rear or left.</param>
    public ImmutableArray<int> Edge(string name)
    {
        (int rows, int columns) = (Grid.Rows, Grid.Columns);
        IEnumerable<int> vertices = name switch
        {
            "front" => Enumerable.Range(0, columns).Select(c => At(0, c)),
            "rear" => Enumerable.Range(0, columns).Select(c => At(rows - 1, c)),
            "left" => Enumerable.Range(0, rows).Select(r => At(r, 0)),
            _ => Enumerable.Range(0, rows).Select(r => At(r, columns - 1)),
        };
        return [.. vertices.Distinct()];
    }

    /// <summary>Two triangles to a cell; the diagonals of the right half of a mirrored sheet are mirrored.</summary>
    public static GridMesh Of(SheetGrid grid)
    {
        (int rows, int columns) = (grid.Rows, grid.Columns);
        int[] vertex = new int[rows * columns];
        var places = ImmutableArray.CreateBuilder<Vec3>(rows * columns);
        for (int r = 0; r < rows; r++)
        {
            for (int c = 0; c < columns; c++)
            {
                Vec3 p = grid.At(r, c);
                int at = r * columns + c;
                if (c > 0 && (p - grid.At(r, c - 1)).Length <= Coincident) vertex[at] = vertex[at - 1];
                else if (r > 0 && (p - grid.At(r - 1, c)).Length <= Coincident) vertex[at] = vertex[at - columns];
                else
                {
                    vertex[at] = places.Count;
                    places.Add(p);
                }
            }
        }
        var faces = ImmutableArray.CreateBuilder<(int, int, int)>(2 * rows * columns);
        for (int r = 0; r + 1 < rows; r++)
        {
            for (int c = 0; c + 1 < columns; c++)
            {
                int a = vertex[r * columns + c], b = vertex[r * columns + c + 1], d = vertex[(r + 1) * columns + c], e = vertex[(r + 1) * columns + c + 1];
                bool rightHalf = grid.IsMirrored && 2 * c + 1 >= columns;
                double falling = Math.Min(Slimness(a, d, e), Slimness(a, e, b)), rising = Math.Min(Slimness(a, d, b), Slimness(d, e, b));
                // Beside the tip of a fan one diagonal may run along an edge.
                bool other = Math.Min(falling, rising) < Slim && (rightHalf ? falling > 2 * rising : rising > 2 * falling);
                if (rightHalf != other)
                {
                    Face(a, d, b);
                    Face(d, e, b);
                }
                else
                {
                    Face(a, d, e);
                    Face(a, e, b);
                }
            }
        }
        return Compact(grid, places.ToImmutable(), faces, vertex);

        // Of a triangle without area, which is left out, nothing hangs on it.
        double Slimness(int a, int b, int c) => a == b || b == c || c == a ? double.PositiveInfinity : FaceCheck.Slimness(places[a], places[b], places[c]);

        void Face(int a, int b, int c)
        {
            if (a == b || b == c || c == a) return;
            if (!FaceCheck.IsThin(places[a], places[b], places[c])) faces.Add((a, b, c));
        }
    }

    // Where an element line runs along an edge, cells have no area, and places of no other lie on the line between their neighbours: they go with the nearest place that is left.
    private static GridMesh Compact(SheetGrid grid, ImmutableArray<Vec3> places, ImmutableArray<(int A, int B, int C)>.Builder faces, int[] vertex)
    {
        int[] used = [.. faces.SelectMany(f => new[] { f.A, f.B, f.C }).Distinct().Order()];
        if (used.Length == places.Length || used.Length == 0) return new GridMesh(grid, new TriangleMesh(places, faces.ToImmutable()), ImmutableArray.Create(vertex));
        int[] now = new int[places.Length];
        Array.Fill(now, -1);
        for (int i = 0; i < used.Length; i++) now[used[i]] = i;
        for (int v = 0; v < now.Length; v++)
            if (now[v] < 0) now[v] = Enumerable.Range(0, used.Length).MinBy(i => (places[used[i]] - places[v]).Length);
        return new GridMesh(grid, new TriangleMesh([.. used.Select(v => places[v])], [.. faces.Select(f => (now[f.A], now[f.B], now[f.C]))]), [.. vertex.Select(v => now[v])]);
    }
}

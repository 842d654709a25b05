using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Lofting;

namespace SurfaceUnroll.Flattening;

/// <summary>Finds out whether a mesh is a grid, its vertices numbered row by row, as programs write that made it from a grid.</summary>
public static class GridRecognition
{
    /// <summary>The grid of a mesh.</summary>
    /// <param name="mesh">Any mesh; every index is that of a vertex.</param>
    /// <returns>The grid with the mesh's own triangles; null unless every cell has two triangles, cut along either diagonal, all turned the same way, and there are no others.</returns>
    public static GridMesh? Of(TriangleMesh mesh)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        // r·c vertices and 2(r − 1)(c − 1) faces: r + c follows, and r and c are the roots of t² − (r + c)t + r·c.
        long count = mesh.Places.Length, sum = count + 1 - mesh.Faces.Length / 2, square = sum * sum - 4 * count;
        if (mesh.Faces.IsEmpty || mesh.Faces.Length % 2 != 0 || sum < 4 || square < 0) return null;
        long root = (long)Math.Round(Math.Sqrt(square));
        if (root * root != square || (sum + root) % 2 != 0) return null;
        int more = (int)((sum + root) / 2), fewer = (int)(sum - more);
        return fewer < 2 ? null : Try(mesh, fewer, more) ?? (more == fewer ? null : Try(mesh, more, fewer));
    }

    private static GridMesh? Try(TriangleMesh mesh, int rows, int columns)
    {
        // For each cell the corners that its faces leave out, as bits: 0 and 1 in the upper row from the left, 2 and 3 in the lower one.
        byte[] left = new byte[(rows - 1) * (columns - 1)];
        int turn = 0;
        foreach ((int a, int b, int c) in mesh.Faces)
        {
            (int Row, int Column) p = Math.DivRem(a, columns), q = Math.DivRem(b, columns), r = Math.DivRem(c, columns);
            int row = Math.Min(p.Row, Math.Min(q.Row, r.Row)), column = Math.Min(p.Column, Math.Min(q.Column, r.Column));
            if (Math.Max(p.Row, Math.Max(q.Row, r.Row)) != row + 1 || Math.Max(p.Column, Math.Max(q.Column, r.Column)) != column + 1) return null;
            int twice = (q.Column - p.Column) * (r.Row - p.Row) - (q.Row - p.Row) * (r.Column - p.Column);
            // Corners of one cell, so this is −1, 0 or 1; 0 where a corner is named twice.
            if (twice == 0 || twice == -turn) return null;
            turn = twice;
            int missing = 15 & ~(Bit(p) | Bit(q) | Bit(r)), cell = row * (columns - 1) + column;
            if ((left[cell] & missing) != 0) return null;
            left[cell] |= (byte)missing;

            int Bit((int Row, int Column) corner) => 1 << (2 * (corner.Row - row) + corner.Column - column);
        }
        foreach (byte missing in left)
        {
            if (missing is not (0b1001 or 0b0110)) return null;
        }
        // The faces of our grids turn clockwise in (column, row). Others are grids whose columns run from the right.
        var vertexOf = new int[rows * columns];
        for (int r = 0; r < rows; r++)
            for (int c = 0; c < columns; c++)
                vertexOf[r * columns + c] = r * columns + (turn < 0 ? c : columns - 1 - c);
        ImmutableArray<Vec3> places = turn < 0 ? mesh.Places : [.. vertexOf.Select(v => mesh.Places[v])];
        return new GridMesh(new SheetGrid(rows, columns, places, IsMirrored: false), mesh, ImmutableArray.Create(vertexOf));
    }
}

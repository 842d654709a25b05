using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns;

/// <summary>The borders of a sheet's mesh on the blank.</summary>
internal static class MeshBorders
{
    /// <summary>Every closed border as its vertices in the order in which the metal lies on the left; the outer one, of the largest area, first.</summary>
    public static ImmutableArray<ImmutableArray<int>> Of(SheetMesh mesh)
    {
        var edges = MeshEdges.Of(mesh.Formed.Length, mesh.Faces.AsSpan());
        ILookup<int, int> from = Enumerable.Range(0, edges.Sides).Where(s => edges.Twin(s) == MeshEdges.None).ToLookup(edges.From);
        HashSet<int> left = [.. from.SelectMany(g => g)];
        var loops = new List<ImmutableArray<int>>();
        while (left.Count > 0)
        {
            int side = left.Min();
            var loop = ImmutableArray.CreateBuilder<int>();
            while (left.Remove(side))
            {
                loop.Add(edges.From(side));
                // Where two borders touch in a vertex either way on is right: the loops are told apart by their area.
                side = from[edges.To(side)].FirstOrDefault(left.Contains, side);
            }
            loops.Add(loop.ToImmutable());
        }
        return [.. loops.OrderByDescending(l => Polygons.SignedArea([.. l.Select(v => mesh.Flat[v])]))];
    }

    /// <summary>Formed area, mm².</summary>
    public static double FormedArea(SheetMesh mesh) => GridPanel.FormedArea(new TriangleMesh(mesh.Formed, mesh.Faces));

    /// <summary>Area on the blank, mm².</summary>
    public static double FlatArea(SheetMesh mesh) => GridPanel.FlatArea(new TriangleMesh(mesh.Formed, mesh.Faces), mesh.Flat);
}

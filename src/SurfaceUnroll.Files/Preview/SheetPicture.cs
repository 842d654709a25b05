using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.Preview;

/// <summary>The sides that belong to one triangle only: the rim of a sheet and of the holes in it.</summary>
internal static class SheetPicture
{
    /// <summary>Sides on the border, counter-clockwise round the sheet seen from outside.</summary>
    public static ImmutableArray<(int From, int To)> Border(SheetMesh mesh)
    {
        var edges = MeshEdges.Of(mesh.Formed.Length, mesh.Faces.AsSpan());
        return [.. Enumerable.Range(0, edges.Sides).Where(side => edges.Twin(side) == MeshEdges.None)
            .Select(side => (edges.From(side), edges.To(side)))];
    }

    /// <summary>Number of closed loops of the border: one more than holes.</summary>
    public static int Loops(ImmutableArray<(int From, int To)> border)
    {
        Dictionary<int, int> next = border.DistinctBy(s => s.From).ToDictionary(s => s.From, s => s.To);
        int loops = 0;
        while (next.Count > 0)
        {
            int at = next.Keys.First();
            while (next.Remove(at, out int to)) at = to;
            loops++;
        }
        return loops;
    }
}

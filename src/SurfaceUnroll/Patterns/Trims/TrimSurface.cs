using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Trims;

/// <summary>The measured face of a panel that trims others, run on straight past its edges.</summary>
internal sealed class TrimSurface
{
    private readonly SheetMesh _mesh;
    private readonly Vec3[] _normals;
    private readonly TriangleTree _tree;

    /// <summary>The surface of the pieces of one panel.</summary>
    public TrimSurface(IReadOnlyList<SheetMesh> pieces)
    {
        _mesh = pieces.Count == 1 ? pieces[0] : Joined(pieces);
        _normals = MeshNormals.Of(_mesh.Face, _mesh.Faces);
        _tree = new TriangleTree(_mesh.Face, _mesh.Faces);
    }

    /// <summary>Signed distance to the tangent plane at the nearest place, mm, positive outside, and the unit normal there.</summary>
    public (double Distance, Vec3 Normal) At(Vec3 place)
    {
        VertexBlend on = _tree.Nearest(place).On(_mesh.Faces);
        Vec3 normal = on.Of(_normals).Unit;
        return ((place - on.Of(_mesh.Face)).Dot(normal), normal);
    }

    private static SheetMesh Joined(IReadOnlyList<SheetMesh> meshes)
    {
        int[] starts = [.. meshes.Select((_, i) => meshes.Take(i).Sum(m => m.Formed.Length))];
        return new SheetMesh(
            [.. meshes.SelectMany(m => m.Formed)], [.. meshes.SelectMany(m => m.Flat)],
            [.. meshes.SelectMany((m, i) => m.Faces.Select(f => (f.A + starts[i], f.B + starts[i], f.C + starts[i])))])
        { Face = [.. meshes.SelectMany(m => m.Face)] };
    }
}

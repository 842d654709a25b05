using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Jobs;

/// <summary>Strain from blank to part at every vertex of a sheet's mesh.</summary>
/// <param name="Vertices">As many as the mesh has vertices, in its order.</param>
public sealed record StrainMap(ImmutableArray<VertexStrain> Vertices)
{
    /// <summary>The strain at the vertices of a mesh that was cut out of this one.</summary>
    internal StrainMap At(IEnumerable<VertexBlend> vertices) => new([.. vertices.Select(v => new VertexStrain(
        v.Of(i => Vertices[i].Major), v.Of(i => Vertices[i].Minor), Vertices[v.Main].MajorDirection, v.Of(i => Vertices[i].Thickness)))]);
}

/// <summary>Principal strains at one place, engineering strain from blank to part, as fractions.</summary>
/// <param name="Major">The larger; negative where metal is shrunk every way.</param>
/// <param name="Minor">The smaller; positive where metal is stretched every way.</param>
/// <param name="MajorDirection">Unit vector on the blank along which <paramref name="Major"/> acts; the other acts square to it. Its sign means nothing.</param>
/// <param name="Thickness">Change of thickness of a metal that keeps its volume: 1/((1 + Major)(1 + Minor)) − 1.</param>
public readonly record struct VertexStrain(double Major, double Minor, Vec2 MajorDirection, double Thickness)
{
    /// <summary>Largest stretch, ≥ 0.</summary>
    public double Stretch => Math.Max(0, Major);

    /// <summary>Largest shrink, ≥ 0.</summary>
    public double Shrink => Math.Max(0, -Minor);
}

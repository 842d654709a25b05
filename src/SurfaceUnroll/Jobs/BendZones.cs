using System.Collections.Immutable;
using NetTopologySuite.Geometries.Utilities;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Jobs;

/// <summary>Where the metal of a piece bends.</summary>
/// <param name="Bend">The bend.</param>
/// <param name="Area">Between its tangent lines, on the blank.</param>
/// <param name="RoundHole">The bend of a lip round an opening.</param>
internal sealed record BendZone(BendLine Bend, NetTopologySuite.Geometries.Geometry Area, bool RoundHole)
{
    /// <summary>The zones of all bends that have two tangent lines.</summary>
    public static ImmutableArray<BendZone> Of(PanelDevelopment panel)
    {
        HashSet<string> holes = [.. panel.Openings.Select(o => o.Name)];
        HashSet<string> closed = [.. panel.Mesh.Chains.Where(c => c.Vertices.Length > 2 && c.Vertices[0] == c.Vertices[^1]).Select(c => c.Name)];
        var zones = ImmutableArray.CreateBuilder<BendZone>();
        foreach (BendLine bend in panel.Bends.Where(b => b.Tangents.Length > 1))
        {
            NetTopologySuite.Geometries.Geometry? area = bend.Lip is { } edge && closed.Contains(edge)
                ? Ring(bend.Tangents[0], bend.Tangents[1])
                : Polygons.Simple([.. bend.Tangents[0], .. bend.Tangents[1].Reverse()]);
            if (area is { IsEmpty: false }) zones.Add(new BendZone(bend, area, bend.Lip is { } lip && holes.Contains(lip)));
        }
        return zones.ToImmutable();
    }

    // A tangent line of a closed lip may overlap itself a little where it ends, or at a corner that it goes round on the inside.
    private static NetTopologySuite.Geometries.Geometry? Ring(ImmutableArray<Vec2> a, ImmutableArray<Vec2> b)
    {
        if (a.Length < 3 || b.Length < 3) return null;
        NetTopologySuite.Geometries.Geometry first = GeometryFixer.Fix(Polygons.Of(a)), second = GeometryFixer.Fix(Polygons.Of(b));
        return first.Area > second.Area ? Polygons.Without(first, second) : Polygons.Without(second, first);
    }
}

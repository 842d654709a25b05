using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Patterns.Strain;

/// <summary>One of the worst places of a sheet.</summary>
/// <param name="Number">1, 2, 3 … from the worst.</param>
/// <param name="Kind">Stretch or shrink.</param>
/// <param name="Size">Strain, ≥ 0, as a fraction.</param>
/// <param name="Thickness">Change of thickness there, as a fraction.</param>
/// <param name="Formed">Place on the formed sheet, job space, mm.</param>
/// <param name="Flat">Place on the blank, mm.</param>
/// <param name="Where">How to find it with a tape, in the job's units.</param>
public sealed record StrainSpot(int Number, StrainKind Kind, double Size, double Thickness, Vec3 Formed, Vec2 Flat, string Where);

/// <summary>Finds the worst places of a sheet.</summary>
public static class StrainSpots
{
    private const int Most = 6;

    // Below this, as a fraction, a sheet only bends.
    private const double Least = 0.001;

    // A place is named only if its strain is this part of the worst of its kind, and this part of the blank's size away from worse ones.
    private const double PartOfWorst = 1.0 / 3, PartOfSize = 0.1;

    // A place is one of its own only if the strain falls by this part on every way to a worse one: else it is the same ridge, or a ripple on it.
    private const double Fall = 0.1;

    /// <summary>The worst places, up to six, each kind with its worst three before the other has more.</summary>
    /// <param name="mesh">Formed and flat places.</param>
    /// <param name="map">Strain at its vertices.</param>
    /// <param name="edges">Edges of the blank; may be empty.</param>
    /// <param name="elements">Element lines; may be empty.</param>
    /// <param name="units">Of the job.</param>
    public static ImmutableArray<StrainSpot> Of(
        SheetMesh mesh, StrainMap map, ImmutableArray<BlankEdge> edges, ImmutableArray<ElementLine> elements, LengthUnit units)
    {
        var links = new MeshLinks(mesh);
        (StrainKind Kind, int Vertex)[][] kinds =
        [
            .. new[] { StrainKind.Stretch, StrainKind.Shrink }.Select(kind => Worst(mesh, links, map.Field(kind)).Select(v => (kind, v)).ToArray()),
        ];
        double Size((StrainKind Kind, int Vertex) place) => map.Vertices[place.Vertex].Size(place.Kind);
        var words = new SpotWords(mesh, links, edges, elements, units);
        return
        [
            .. kinds.SelectMany(k => k.Take(Most / 2)).Concat(kinds.SelectMany(k => k.Skip(Most / 2)).OrderByDescending(Size)).Take(Most)
                .OrderByDescending(Size)
                .Select((place, i) => new StrainSpot(
                    i + 1, place.Kind, Size(place), map.Vertices[place.Vertex].Thickness,
                    mesh.Formed[place.Vertex], mesh.Flat[place.Vertex], words.Where(place.Vertex))),
        ];
    }

    private static List<int> Worst(SheetMesh mesh, MeshLinks links, ImmutableArray<double> field)
    {
        List<int> taken = [];
        if (field.IsEmpty) return taken;
        Box box = Box.Around(mesh.Flat);
        double least = Math.Max(Least, PartOfWorst * field.Max()), apart = PartOfSize * Math.Max(box.Width, box.Height);
        foreach (int v in Peaks(links, field).Where(v => field[v] >= least))
            if (taken.TrueForAll(t => (mesh.Flat[t] - mesh.Flat[v]).Length > apart)) taken.Add(v);
        return taken;
    }

    // Vertices flood the sheet from the highest down. Where two floods meet, the one with the lower peak ends: it counts if it fell far enough.
    private static List<int> Peaks(MeshLinks links, ImmutableArray<double> field)
    {
        int[] order = [.. Enumerable.Range(0, field.Length).Where(v => !links.Neighbours[v].IsEmpty).OrderByDescending(v => field[v])];
        int[] parent = [.. Enumerable.Repeat(-1, field.Length)];
        HashSet<int> peaks = [];
        foreach (int v in order)
        {
            parent[v] = v;
            int[] met = [.. links.Neighbours[v].Where(n => parent[n] >= 0).Select(Root).Distinct().OrderByDescending(r => field[r]).ThenBy(r => r)];
            if (met.Length == 0) peaks.Add(v);
            else parent[v] = met[0];
            foreach (int lower in met.Skip(1))
            {
                parent[lower] = met[0];
                if (field[lower] - field[v] < Fall * field[lower]) peaks.Remove(lower);
            }
        }
        return [.. peaks.OrderByDescending(v => field[v]).ThenBy(v => v)];

        // The peak of the flood that a vertex lies in.
        int Root(int v)
        {
            while (parent[v] != v) v = parent[v] = parent[parent[v]];
            return v;
        }
    }
}

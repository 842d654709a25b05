using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Strain;

/// <summary>A connected part of the blank that is stretched or shrunk more than the rest.</summary>
/// <param name="Kind">Stretch or shrink.</param>
/// <param name="Vertices">Its vertices.</param>
/// <param name="Worst">Largest strain of that kind in it, ≥ 0, as a fraction.</param>
/// <param name="Box">Around its vertices on the blank, mm.</param>
/// <param name="Middle">Its middle by area, on the blank, mm.</param>
/// <param name="Area">Faces round its vertices, on the blank, mm².</param>
/// <param name="RimShare">The part of the sheet's whole rim that lies in it, 0 to 1.</param>
/// <param name="Direction">Unit vector on the blank along which nearly all of the strain acts; null if it acts every way or turns within the area.</param>
/// <param name="AlongRim">True if the strain in it acts along the rim.</param>
internal sealed record FormingArea(
    StrainKind Kind, ImmutableArray<int> Vertices, double Worst, Box Box, Vec2 Middle, double Area, double RimShare, Vec2? Direction, bool AlongRim)
{
    // An area holds all that is at least this, and at least this part of the worst of its kind.
    private const double Least = 0.001, PartOfWorst = 1.0 / 3;

    // Strain square to the larger one that is less than this part of it does not count.
    private const double OneWay = 0.25;

    // How well directions must agree: 1 if they are all one, 0 if they are spread evenly.
    private const double Agreement = 0.8;

    /// <summary>All areas of a sheet, the worst first.</summary>
    public static ImmutableArray<FormingArea> Of(SheetMesh mesh, StrainMap map)
    {
        var links = new MeshLinks(mesh);
        return [.. new[] { StrainKind.Stretch, StrainKind.Shrink }.SelectMany(kind => OfKind(mesh, links, map, kind)).OrderByDescending(a => a.Worst)];
    }

    private static IEnumerable<FormingArea> OfKind(SheetMesh mesh, MeshLinks links, StrainMap map, StrainKind kind)
    {
        ImmutableArray<double> field = map.Field(kind);
        double least = Math.Max(Least, PartOfWorst * field.DefaultIfEmpty(0).Max());
        bool[] seen = new bool[field.Length];
        for (int start = 0; start < field.Length; start++)
        {
            if (seen[start] || field[start] < least || links.Neighbours[start].IsEmpty) continue;
            seen[start] = true;
            List<int> inside = [start];
            for (int i = 0; i < inside.Count; i++)
            {
                foreach (int next in links.Neighbours[inside[i]].Where(n => !seen[n] && field[n] >= least))
                {
                    seen[next] = true;
                    inside.Add(next);
                }
            }
            yield return From(mesh, links, map, kind, inside);
        }
    }

    private static FormingArea From(SheetMesh mesh, MeshLinks links, StrainMap map, StrainKind kind, List<int> inside)
    {
        double area = inside.Sum(v => links.Areas[v]), rim = 0, rimInside = 0;
        HashSet<int> members = [.. inside];
        List<(Vec2 Along, Vec2 Strain, double Weight)> onRim = [];
        foreach ((int from, int to) in links.Rim)
        {
            Vec2 along = mesh.Flat[to] - mesh.Flat[from];
            rim += along.Length;
            if (!members.Contains(from) || !members.Contains(to)) continue;
            rimInside += along.Length;
            onRim.Add((along.Unit, map.Vertices[from].Direction(kind), along.Length));
        }
        Vec2 middle = Vec2.Zero, doubled = Vec2.Zero;
        double weight = 0, other = 0;
        foreach (int v in inside)
        {
            VertexStrain strain = map.Vertices[v];
            double w = links.Areas[v] * strain.Size(kind);
            middle += links.Areas[v] / area * mesh.Flat[v];
            // An axis has no sense: doubling its angle makes one out of both.
            Vec2 d = strain.Direction(kind);
            doubled += w * new Vec2(d.X * d.X - d.Y * d.Y, 2 * d.X * d.Y);
            weight += w;
            other += w * Math.Max(0, kind == StrainKind.Stretch ? strain.Minor : -strain.Major) / strain.Size(kind);
        }
        bool oneWay = weight > 0 && other < OneWay * weight;
        Vec2? direction = oneWay && doubled.Length > Agreement * weight ? Vec2.FromAngle(0.5 * Math.Atan2(doubled.Y, doubled.X)) : null;
        double aligned = onRim.Sum(r => r.Weight * Math.Pow(r.Along.Dot(r.Strain), 2));
        bool alongRim = oneWay && direction is null && rimInside > 0 && aligned > Agreement * rimInside;
        return new FormingArea(
            kind, [.. inside], inside.Max(v => map.Vertices[v].Size(kind)), Box.Around(inside.Select(v => mesh.Flat[v])), middle, area,
            rim > 0 ? rimInside / rim : 0, direction, alongRim);
    }
}

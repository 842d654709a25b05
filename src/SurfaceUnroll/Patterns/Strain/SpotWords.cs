using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Patterns.Strain;

/// <summary>Says where a place of a sheet is, so that it can be found with a tape.</summary>
internal sealed class SpotWords
{
    // Nearer than this to a line or an edge, a place is on it for the shop, mm.
    private const double OnLine = 10, OnEdge = 1;

    private readonly SheetMesh mesh;
    private readonly MeshLinks links;
    private readonly ElementLine[] lines;
    private readonly (string Name, Polyline Line)[] edges;
    private readonly LengthUnit units;

    public SpotWords(SheetMesh mesh, MeshLinks links, ImmutableArray<BlankEdge> edges, ImmutableArray<ElementLine> elements, LengthUnit units)
    {
        (this.mesh, this.links, this.units) = (mesh, links, units);
        lines = [.. elements.Where(e => e.Number > 0 && e.Length > 0)];
        this.edges = [.. edges.Where(e => e.Flat.Length > 1 && e.FlatLength > 0).Select(e => (e.Name, new Polyline(e.Flat, false)))];
    }

    /// <summary>By the nearest numbered line if there are any; else by the two nearest edges; else by the rim and the place in space.</summary>
    public string Where(int vertex)
    {
        if (lines.Length > 0) return ByLine(mesh.Formed[vertex], mesh.Flat[vertex]);
        return edges.Length > 2 ? ByEdges(mesh.Flat[vertex]) : ByRim(vertex);
    }

    private string ByLine(Vec3 formed, Vec2 flat)
    {
        (ElementLine line, double along, double off) = lines.Select(l => Foot(l, formed)).MinBy(foot => foot.Off);
        string from = along < OnEdge ? "at the front edge" : line.Length - along < OnEdge ? "at the rear edge" : $"{Print(along)} from the front edge";
        string number = line.Number.ToString(CultureInfo.InvariantCulture);
        if (off <= OnLine) return along < OnEdge || line.Length - along < OnEdge ? $"{from}, on line {number}" : $"{from} along line {number}";
        bool right = (line.Rear - line.Front).Cross(flat - line.Front) > 0;
        return $"{from}, {Print(off)} {(right ? "right" : "left")} of line {number}";
    }

    // The foot of the plumb on the line, as length from its front end, and how far off the place is.
    private static (ElementLine Line, double Along, double Off) Foot(ElementLine line, Vec3 p)
    {
        (double along, double off, double walked) = (0, double.PositiveInfinity, 0);
        ImmutableArray<Vec3> path = line.FormedPath;
        for (int i = 0; i + 1 < path.Length; i++)
        {
            Vec3 side = path[i + 1] - path[i], direction = side.Unit;
            double reach = Math.Clamp((p - path[i]).Dot(direction), 0, side.Length), distance = (p - (path[i] + reach * direction)).Length;
            if (distance < off) (along, off) = (walked + reach, distance);
            walked += side.Length;
        }
        return (line, along, off);
    }

    // Over the blank, since a straight tape does not follow a formed sheet.
    private string ByEdges(Vec2 flat)
    {
        // One of front and rear, and one of left and right: from two edges that face each other a place is not found.
        (string Name, double Distance)[] near =
        [
            .. edges.Select(e => (e.Name, e.Line.Nearest(flat).Distance)).OrderBy(e => e.Distance).DistinctBy(e => e.Name is "left" or "right").OrderBy(e => e.Distance),
        ];
        string[] words = [.. near.Select(e => e.Distance < OnEdge ? $"at the {e.Name} edge" : $"{Print(e.Distance)} from the {e.Name} edge")];
        return string.Join(", ", words) + ", over the blank";
    }

    private string ByRim(int vertex)
    {
        Vec2 flat = mesh.Flat[vertex];
        (Vec3 at, double distance) = links.Rim.Select(side => OnSide(side.From, side.To, flat)).MinBy(foot => foot.Distance);
        string x = Number(at.X), y = Number(at.Y), z = Number(at.Z), place = $"x {x}, y {y}, z {z}";
        return distance < OnEdge ? $"on the rim at {place}" : $"{Print(distance)} in from the rim, nearest to {place}";
    }

    private (Vec3 At, double Distance) OnSide(int from, int to, Vec2 p)
    {
        (Vec2 at, double distance, _, double share) = new Polyline([mesh.Flat[from], mesh.Flat[to]], false).Nearest(p);
        return (Vec3.Lerp(mesh.Formed[from], mesh.Formed[to], at == mesh.Flat[to] ? 1 : share), distance);
    }

    private string Print(double mm) => ShopLength.Print(mm, units, 0);

    private string Number(double mm) => ShopLength.PrintNumber(mm, units, 0);
}

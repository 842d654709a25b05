using System.Collections.Immutable;
using NetTopologySuite.Geometries;
using NetTopologySuite.Simplify;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Trims;

/// <summary>A panel after a trim.</summary>
internal static class TrimmedPanel
{
    /// <summary>The panel with what stays of its mesh, edges, lines and strain.</summary>
    /// <param name="panel">Before, its cut line still the net outline.</param>
    /// <param name="field">What stays.</param>
    /// <param name="trim">Its mesh, cut.</param>
    public static PanelDevelopment Of(PanelDevelopment panel, TrimField field, MeshTrim trim)
    {
        SheetMesh mesh = trim.Mesh;
        HashSet<int> kept = [.. mesh.Chains.SelectMany(c => Thinned(mesh, c)), .. trim.Borders[0].Except(mesh.Chains.SelectMany(c => c.Vertices))];
        ImmutableArray<Vec2> outline = BlankOutline.Closed(trim.Borders[0].Where(kept.Contains).Select(v => mesh.Flat[v]));
        Polygon inside = Polygons.Of(outline);
        // Areas of the whole were known better than by its triangles; what stays is taken by the same ratio.
        double formed = panel.FormedArea * MeshBorders.FormedArea(mesh) / MeshBorders.FormedArea(panel.Mesh);
        double flat = panel.FlatArea * MeshBorders.FlatArea(mesh) / MeshBorders.FlatArea(panel.Mesh);
        return panel with
        {
            FormedArea = formed,
            FlatArea = flat,
            Edges = [.. mesh.Chains.Select(c => Untouched(panel, c, mesh) ?? Edge(c, mesh))],
            Elements = [.. panel.Elements.SelectMany(e => Parts(e, field.Beside(panel.Offset * e.Normal)))],
            Cut = outline,
            Mesh = mesh,
            Map = panel.Map?.At(trim.From),
            DrawnMap = panel.DrawnMap?.At(trim.From),
            Bends = [.. panel.Bends.SelectMany(b => Of(b, inside))],
            Slits = [.. panel.Slits.Where(s => inside.Covers(new Point(s.Tip.X, s.Tip.Y)))],
        };
    }

    // An edge that lost nothing keeps its exact numbers.
    private static BlankEdge? Untouched(PanelDevelopment panel, EdgeChain chain, SheetMesh mesh)
    {
        // Edges and chains of a panel stand in one order; an edge may have several runs of one name.
        for (int i = 0; i < panel.Edges.Length; i++)
        {
            ImmutableArray<int> before = panel.Mesh.Chains[i].Vertices;
            if (panel.Edges[i].Name == chain.Name && before.Length == chain.Vertices.Length
                && panel.Mesh.Flat[before[0]] == mesh.Flat[chain.Vertices[0]] && panel.Mesh.Flat[before[^1]] == mesh.Flat[chain.Vertices[^1]]) return panel.Edges[i];
        }
        return null;
    }

    // Places of an edge in line to within this on the blank, mm, are not drawn: near a curved surface a mesh is cut into very small triangles.
    private const double InLine = 0.002;

    private static IEnumerable<int> Thinned(SheetMesh mesh, EdgeChain chain)
    {
        if (chain.Vertices.Length < 3) return chain.Vertices;
        Coordinate[] path = [.. chain.Vertices.Select(v => new CoordinateZ(mesh.Flat[v].X, mesh.Flat[v].Y, v))];
        return DouglasPeuckerLineSimplifier.Simplify(path, InLine).Select(c => (int)c.Z);
    }

    private static BlankEdge Edge(EdgeChain chain, SheetMesh mesh)
    {
        ImmutableArray<Vec2> flat = [.. Thinned(mesh, chain).Select(v => mesh.Flat[v])];
        return new BlankEdge(chain.Name, EdgeLengths.Formed(mesh, chain.Vertices), EdgeLengths.Flat(flat), flat);
    }

    // What stays of an element line, with the radii that it has there: they change evenly along the line.
    private static IEnumerable<ElementLine> Parts(ElementLine line, TrimField field)
    {
        // A line that a relief cut crosses has two places there on the blank, and is taken whole or not at all.
        if (line.Length == 0 || line.Path.Length != line.FormedPath.Length)
        {
            if (field.Value(line.FormedFront) >= 0) yield return line;
            yield break;
        }
        ImmutableArray<Vec3> formed = line.FormedPath;
        double[] running = PathLength.Running(formed);
        var run = new List<(double At, Vec3 Formed, Vec2 Flat)>();
        double before = 0;
        for (int i = 0; i < formed.Length; i++)
        {
            double value = field.Value(formed[i]);
            if (i > 0 && value * before < 0)
            {
                double share = field.Root(formed[i - 1], formed[i], before, value);
                run.Add((running[i - 1] + share * (running[i] - running[i - 1]), Vec3.Lerp(formed[i - 1], formed[i], share), Vec2.Lerp(line.Path[i - 1], line.Path[i], share)));
            }
            if (value < 0 && run.Count > 0)
            {
                if (run.Count > 1) yield return Part();
                run.Clear();
            }
            if (value >= 0) run.Add((running[i], formed[i], line.Path[i]));
            before = value;
        }
        if (run.Count > 1) yield return Part();

        ElementLine Part() => line with
        {
            FormedFront = run[0].Formed,
            FormedRear = run[^1].Formed,
            Front = run[0].Flat,
            Rear = run[^1].Flat,
            FormedPath = [.. run.Select(r => r.Formed)],
            Path = [.. run.Select(r => r.Flat)],
            BendRadiusFront = Radius(run[0].At),
            BendRadiusRear = Radius(run[^1].At),
        };

        double Radius(double at) => double.IsFinite(line.BendRadiusFront + line.BendRadiusRear)
            ? line.BendRadiusFront + at / running[^1] * (line.BendRadiusRear - line.BendRadiusFront)
            : double.PositiveInfinity;
    }

    private static IEnumerable<BendLine> Of(BendLine bend, Polygon inside)
    {
        foreach (ImmutableArray<Vec2> centre in Inside(bend.Centre, inside))
            yield return bend with { Centre = centre, Tangents = [.. bend.Tangents.Select(t => Beside(t, centre, inside)).OfType<ImmutableArray<Vec2>>()] };
    }

    // Of a tangent line the longest run beside a run of the centre line.
    private static ImmutableArray<Vec2>? Beside(ImmutableArray<Vec2> tangent, ImmutableArray<Vec2> centre, Polygon inside)
    {
        ImmutableArray<Vec2>[] runs = [.. Inside(tangent, inside).Where(t => Math.Min(t[0].X, t[^1].X) < Math.Max(centre[0].X, centre[^1].X) && Math.Max(t[0].X, t[^1].X) > Math.Min(centre[0].X, centre[^1].X))];
        return runs.Length == 0 ? null : runs.MaxBy(r => (r[^1] - r[0]).Length);
    }

    private static IEnumerable<ImmutableArray<Vec2>> Inside(ImmutableArray<Vec2> path, Polygon inside)
    {
        NetTopologySuite.Geometries.Geometry rest = Polygons.Shared(new LineString([.. path.Select(p => new Coordinate(p.X, p.Y))]), inside);
        for (int i = 0; i < rest.NumGeometries; i++)
            if (rest.GetGeometryN(i) is LineString { IsEmpty: false } line) yield return [.. line.Coordinates.Select(c => new Vec2(c.X, c.Y))];
    }
}

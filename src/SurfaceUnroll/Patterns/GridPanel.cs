using System.Collections.Immutable;
using SurfaceUnroll.Flattening;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Lofting;

namespace SurfaceUnroll.Patterns;

/// <summary>The pattern of a flattened grid: its blank upright, with edges, lines, outline and strain.</summary>
internal static class GridPanel
{
    /// <summary>The pattern of a grid, with relief cuts if there are any.</summary>
    /// <param name="spec">Panel or piece.</param>
    /// <param name="uncut">Grid and blank.</param>
    /// <param name="cut">The same with relief cuts; null if there are none.</param>
    /// <param name="pitch">Distance of the numbered lines that the job asks for, mm; null where it does not.</param>
    public static PanelDevelopment Of(PanelSpec spec, FlattenedGrid uncut, SlitGrid? cut, double? pitch)
    {
        SheetGrid grid = uncut.Mesh.Grid;
        TriangleMesh formed = cut?.Mesh ?? uncut.Mesh.Mesh;
        FlattenedMesh blank = cut?.Blank ?? uncut.Blank;
        ImmutableArray<Vec2> flat = Upright(blank.Flat, uncut.Mesh);
        // Where a cut opens, a place of the sheet has two on the blank.
        Dictionary<int, int> twins = cut?.Flanks.SelectMany(f => f).DistinctBy(f => f.Near).ToDictionary(f => f.Near, f => f.Far) ?? [];
        ImmutableArray<ElementLine> lines = GridLines.Of(grid, (r, c) => Places(uncut.Mesh.At(r, c), cut is not null && IsAcross(uncut.Mesh, twins, r, c)), pitch);
        ImmutableArray<BlankEdge> edges = [.. SheetGrid.EdgeNames.Select(name => Edge(name, uncut.Mesh, v => Places(v, true)))];
        // A chain runs over the mouth of a cut, as the edge on the blank does.
        ImmutableArray<EdgeChain> chains =
            [.. SheetGrid.EdgeNames.Select(name => new EdgeChain(name, [.. uncut.Mesh.Edge(name).SelectMany(v => twins.TryGetValue(v, out int twin) ? new[] { v, twin } : [v])]))];
        var strain = new StrainSummary(blank.MaxStretch, blank.MaxShrink, blank.Energy);
        var twist = new TwistSummary(lines.Max(l => l.Twist), lines.Average(l => l.Twist));
        return new PanelDevelopment(
            spec, Verdict.NeedsStretching, twist, twist, strain, FormedArea(formed), FlatArea(formed, flat),
            edges, lines, cut is null ? Outline(edges) : Loop(DiscCheck.Border(formed), flat), new SheetMesh(formed.Places, flat, formed.Faces) { Chains = chains })
        {
            Map = StrainField.Of(formed, flat),
        };

        ImmutableArray<Vec2> Places(int vertex, bool both) => both && twins.TryGetValue(vertex, out int twin) ? [flat[vertex], flat[twin]] : [flat[vertex]];
    }

    // True if the cut at a place runs across its column, and not along it.
    private static bool IsAcross(GridMesh mesh, Dictionary<int, int> twins, int row, int column) =>
        (column > 0 && twins.ContainsKey(mesh.At(row, column - 1))) || (column + 1 < mesh.Grid.Columns && twins.ContainsKey(mesh.At(row, column + 1)));

    /// <summary>Formed area of a mesh, mm².</summary>
    internal static double FormedArea(TriangleMesh mesh) =>
        mesh.Faces.Sum(f => 0.5 * (mesh.Places[f.B] - mesh.Places[f.A]).Cross(mesh.Places[f.C] - mesh.Places[f.A]).Length);

    /// <summary>Area of its blank, mm².</summary>
    internal static double FlatArea(TriangleMesh mesh, ImmutableArray<Vec2> flat) =>
        mesh.Faces.Sum(f => 0.5 * (flat[f.B] - flat[f.A]).Cross(flat[f.C] - flat[f.A]));

    /// <summary>A border on the blank.</summary>
    internal static ImmutableArray<Vec2> Loop(ImmutableArray<int> border, ImmutableArray<Vec2> flat) => [.. border.Select(v => flat[v])];

    // Counter-clockwise: left from front to rear, rear to the right, right back to the front, front back to the left.
    private static ImmutableArray<Vec2> Outline(ImmutableArray<BlankEdge> edges)
    {
        IEnumerable<Vec2> Side(string name) => edges.Single(e => e.Name == name).Flat;
        return BlankOutline.Closed(Side("left").Concat(Side("rear")).Concat(Side("right").Reverse()).Concat(Side("front").Reverse()));
    }

    // The middle of the front edge at the origin, the middle of the rear edge straight below it.
    private static ImmutableArray<Vec2> Upright(ImmutableArray<Vec2> flat, GridMesh mesh)
    {
        Vec2 front = DrawingPlaces.HalfWay([.. mesh.Edge("front").Select(v => flat[v])]), rear = DrawingPlaces.HalfWay([.. mesh.Edge("rear").Select(v => flat[v])]);
        return [.. flat.Select(Blank.Upright(front, rear))];
    }

    // A relief cut opens an edge: its length leaves out the gap, and its line on the blank runs over it.
    private static BlankEdge Edge(string name, GridMesh mesh, Func<int, ImmutableArray<Vec2>> places)
    {
        ImmutableArray<int> chain = mesh.Edge(name);
        Vec3[] formed = [.. chain.Select(v => mesh.Mesh.Places[v])];
        ImmutableArray<Vec2>[] onBlank = [.. chain.Select(places)];
        if (chain.Length < 2) return new BlankEdge(name, 0, 0, [onBlank[0][0], onBlank[0][0]]);
        double[] running = EdgeLengths.Running(formed);
        double flatLength = 0;
        for (int i = 0; i + 1 < formed.Length; i++)
        {
            // The strain along the edge is that of its chords.
            flatLength += (running[i + 1] - running[i]) * (onBlank[i + 1][0] - onBlank[i][^1]).Length / (formed[i + 1] - formed[i]).Length;
        }
        return new BlankEdge(name, running[^1], flatLength, SmoothPath.Through([.. onBlank.SelectMany(p => p)]));
    }
}

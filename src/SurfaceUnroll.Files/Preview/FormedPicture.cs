using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.Preview;

/// <summary>The formed sheet as flat facets and lines from back to front (painter's algorithm), still in mm.</summary>
internal sealed class FormedPicture
{
    // Enough to look smooth at picture size, few enough for a file of some tens of kB.
    private const int StraightStrips = 72, StraightPieces = 5;

    // A crowned sheet bends both ways.
    private const int CrownedStrips = 36, CrownedPieces = 20;

    private readonly Camera _camera;
    private readonly bool _crowned;
    private readonly int _pieces;
    private readonly ImmutableArray<ElementLine> _lines;
    private readonly List<Shape> _shapes = [];

    private FormedPicture(PanelDevelopment panel, Camera camera)
    {
        _camera = camera;
        _crowned = panel.Spec.Loft.Length > 2;
        _pieces = _crowned ? CrownedPieces : StraightPieces;
        _lines = Thinned(panel.Elements, _crowned ? CrownedStrips : StraightStrips);
    }

    /// <summary>One thing to paint.</summary>
    /// <param name="Points">On the picture, mm, y up.</param>
    /// <param name="Colour">Fill of a facet or colour of a line.</param>
    /// <param name="LineWidth">Picture units; 0 for a filled facet.</param>
    /// <param name="Nearness">To the eye, mm.</param>
    internal readonly record struct Shape(ImmutableArray<Vec2> Points, string Colour, double LineWidth, double Nearness);

    /// <summary>What to paint, in order.</summary>
    public static ImmutableArray<Shape> Of(PanelDevelopment panel, Camera camera)
    {
        var picture = new FormedPicture(panel, camera);
        // The few lines across a bent plate do not show its outline.
        if (panel.Elements.IsEmpty || panel.Spec.Kind == "bent")
        {
            ImmutableArray<(int From, int To)> border = SheetPicture.Border(panel.Mesh);
            picture.AddTriangles(panel.Mesh, border);
            // Where the triangles leave the openings out, one looks through them.
            if (SheetPicture.Loops(border) == 1) picture.AddOpenings(panel.Openings);
        }
        else
        {
            picture.AddFacets();
            picture.AddLines();
            picture.AddOpenings(panel.Openings);
        }
        return [.. picture._shapes.OrderBy(s => s.Nearness)];
    }

    /// <summary>Lines that are drawn, and enough of those between for the curvature to show.</summary>
    private static ImmutableArray<ElementLine> Thinned(ImmutableArray<ElementLine> all, int strips)
    {
        int step = Math.Max(1, (all.Length + strips - 1) / strips);
        return [.. all.Where((line, i) => line.Number > 0 || i % step == 0 || i == all.Length - 1)];
    }

    private void AddFacets()
    {
        for (int i = 0; i + 1 < _lines.Length; i++)
        {
            for (int k = 0; k < _pieces; k++)
            {
                Vec3 a = At(i, k), b = At(i, k + 1), c = At(i + 1, k + 1), d = At(i + 1, k);
                Vec3 normal = (c - a).Cross(d - b).Unit;
                if (normal == Vec3.Zero) continue;
                // A strip between straight lines carries the mean normal of the two: its facets then have one shade.
                Vec3 smooth = _crowned ? normal : (_lines[i].Normal + _lines[i + 1].Normal).Unit;
                string colour = Palette.Facet(smooth == Vec3.Zero ? normal : smooth, _camera);
                Add([a, b, c, d], colour, 0, 0);
            }
        }
    }

    // A sheet without lines: its own triangles, and its rim in ink.
    private void AddTriangles(SheetMesh mesh, ImmutableArray<(int From, int To)> border)
    {
        double[] nearest = [.. mesh.Formed.Select(_camera.Nearness)];
        foreach ((int a, int b, int c) in mesh.Faces)
        {
            Vec3 p = mesh.Formed[a], q = mesh.Formed[b], r = mesh.Formed[c];
            Add([p, q, r], Palette.Facet((q - p).Cross(r - p).Unit, _camera), 0, 0);
            double nearness = (_camera.Nearness(p) + _camera.Nearness(q) + _camera.Nearness(r)) / 3;
            foreach (int v in (ReadOnlySpan<int>)[a, b, c]) nearest[v] = Math.Max(nearest[v], nearness);
        }
        // A side of the rim is painted after every triangle that touches it.
        foreach ((int from, int to) in border) AddAt(Math.Max(nearest[from], nearest[to]), [mesh.Formed[from], mesh.Formed[to]], Palette.Ink, 1.6);
    }

    // Filled with the colour of the paper over the facets that it lies on; what is nearer to the eye by more than their depth still hides it.
    private void AddOpenings(ImmutableArray<BlankOpening> openings)
    {
        if (openings.IsEmpty) return;
        double facet = _lines.IsEmpty ? 0 : Enumerable.Range(0, _lines.Length).SelectMany(i => Enumerable.Range(0, _pieces).Select(k => FacetDepth(i, k))).Max();
        // The fill comes before its line: shapes of one depth keep their order.
        foreach (BlankOpening opening in openings.Where(o => o.Formed.Length > 2))
        {
            Vec3[] rim = [.. opening.Formed];
            double nearness = rim.Average(_camera.Nearness) + 0.5 * (Depth(rim) + facet);
            AddAt(nearness, rim, Palette.Paper, 0);
            AddAt(nearness, [.. rim, rim[0]], Palette.Ink, 1);
        }
    }

    private double Depth(Vec3[] places) => places.Max(_camera.Nearness) - places.Min(_camera.Nearness);

    private void AddLines()
    {
        // A line lies between facets: it is lifted by half their own depth, or a neighbour would paint over half of it.
        for (int i = 0; i < _lines.Length; i++)
        {
            bool end = i == 0 || i == _lines.Length - 1;
            if (!end && _lines[i].Number == 0) continue;
            for (int k = 0; k < _pieces; k++)
            {
                Add([At(i, k), At(i, k + 1)], end ? Palette.Ink : Palette.Element, end ? 1.6 : 0.8, 0.5 * Math.Max(FacetDepth(i - 1, k), FacetDepth(i, k)));
            }
        }
        for (int i = 0; i + 1 < _lines.Length; i++)
        {
            foreach (int k in (ReadOnlySpan<int>)[0, _pieces])
            {
                Add([At(i, k), At(i + 1, k)], Palette.Ink, 1.6, 0.5 * FacetDepth(i, Math.Min(k, _pieces - 1)));
            }
        }
    }

    private double FacetDepth(int strip, int piece)
    {
        if (strip < 0 || strip + 1 >= _lines.Length) return 0;
        double a = _camera.Nearness(At(strip, piece)), b = _camera.Nearness(At(strip + 1, piece));
        double c = _camera.Nearness(At(strip, piece + 1)), d = _camera.Nearness(At(strip + 1, piece + 1));
        return Math.Max(Math.Max(a, b), Math.Max(c, d)) - Math.Min(Math.Min(a, b), Math.Min(c, d));
    }

    private void Add(Vec3[] corners, string colour, double width, double lift)
    {
        double nearness = corners.Sum(_camera.Nearness) / corners.Length + lift;
        AddAt(nearness, corners, colour, width);
    }

    private void AddAt(double nearness, Vec3[] corners, string colour, double width) =>
        _shapes.Add(new Shape([.. corners.Select(_camera.Project)], colour, width, nearness));

    // By equal steps of the line's own places: straight lines have two, those of a crowned sheet many.
    private Vec3 At(int line, int piece)
    {
        ImmutableArray<Vec3> path = _lines[line].FormedPath;
        double at = (path.Length - 1) * piece / (double)_pieces;
        int i = Math.Min((int)at, path.Length - 2);
        return Vec3.Lerp(path[i], path[i + 1], at - i);
    }
}

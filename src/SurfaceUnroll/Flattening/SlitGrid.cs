using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Lofting;

namespace SurfaceUnroll.Flattening;

/// <summary>One relief cut along a line of a grid.</summary>
/// <param name="Edge">front, right, rear or left.</param>
/// <param name="Line">Column of a cut from the front or the rear, row of a cut from the left or the right.</param>
/// <param name="Steps">Cells that it runs in from the edge, at least one, short of the far edge.</param>
public readonly record struct GridSlit(string Edge, int Line, int Steps)
{
    /// <summary>Place of the grid that the cut comes to after so many cells.</summary>
    public (int Row, int Column) Place(SheetGrid grid, int step) => Edge switch
    {
        "front" => (step, Line),
        "rear" => (grid.Rows - 1 - step, Line),
        "left" => (Line, step),
        _ => (Line, grid.Columns - 1 - step),
    };
}

/// <summary>A flattened grid with relief cuts.</summary>
/// <param name="Uncut">The grid and its blank without the cuts.</param>
/// <param name="Mesh">Its triangles with the cuts open: the far flank of each cut has vertices of its own.</param>
/// <param name="Blank">The blank with the cuts.</param>
/// <param name="Flanks">For each cut, from the edge to the last place before its tip, its two vertices: nearer to and farther from the left or the front end.</param>
public sealed record SlitGrid(FlattenedGrid Uncut, TriangleMesh Mesh, FlattenedMesh Blank, ImmutableArray<ImmutableArray<(int Near, int Far)>> Flanks)
{
    /// <summary>Cuts a flattened grid and flattens it again.</summary>
    /// <param name="uncut">Without the cuts.</param>
    /// <param name="slits">Cuts that do not meet.</param>
    /// <param name="shrinkCost">What shrinking costs against stretching by as much, ≥ 1.</param>
    /// <param name="held">Names of the edges that keep their length; a cut divides its edge in two.</param>
    /// <param name="cancellation">Stops between steps.</param>
    public static SlitGrid Of(
        FlattenedGrid uncut, ImmutableArray<GridSlit> slits, double shrinkCost, ImmutableArray<string> held, CancellationToken cancellation = default)
    {
        GridMesh mesh = uncut.Mesh;
        (int Row, int Column)[] placeOf = new (int, int)[mesh.Mesh.Places.Length];
        for (int r = mesh.Grid.Rows - 1; r >= 0; r--)
            for (int c = mesh.Grid.Columns - 1; c >= 0; c--)
                placeOf[mesh.At(r, c)] = (r, c);
        (int A, int B, int C)[] faces = [.. mesh.Mesh.Faces];
        List<Vec3> places = [.. mesh.Mesh.Places];
        List<Vec2> flat = [.. uncut.Blank.Flat];
        var flanks = ImmutableArray.CreateBuilder<ImmutableArray<(int, int)>>();
        foreach (GridSlit slit in slits)
        {
            bool alongColumn = slit.Edge is "front" or "rear";
            var twin = new Dictionary<int, int>();
            var flank = ImmutableArray.CreateBuilder<(int, int)>();
            for (int k = 0; k < slit.Steps; k++)
            {
                (int row, int column) = slit.Place(mesh.Grid, k);
                int vertex = mesh.At(row, column);
                if (!twin.TryAdd(vertex, places.Count)) continue;
                places.Add(places[vertex]);
                flat.Add(flat[vertex]);
                flank.Add((vertex, twin[vertex]));
            }
            flanks.Add(flank.ToImmutable());
            for (int t = 0; t < faces.Length; t++)
            {
                (int a, int b, int c) = faces[t];
                if (!twin.ContainsKey(a) && !twin.ContainsKey(b) && !twin.ContainsKey(c)) continue;
                int farthest = Math.Max(Across(a), Math.Max(Across(b), Across(c)));
                if (farthest > slit.Line) faces[t] = (Twin(a), Twin(b), Twin(c));
            }

            int Across(int vertex) => vertex >= placeOf.Length ? slit.Line : alongColumn ? placeOf[vertex].Column : placeOf[vertex].Row;
            int Twin(int vertex) => twin.TryGetValue(vertex, out int other) ? other : vertex;
        }
        var cut = new TriangleMesh([.. places], [.. faces]);
        Dictionary<int, int> farSide = flanks.ToDictionary(f => f[0].Item1, f => f[0].Item2);
        var options = new FlatteningOptions
        {
            ShrinkCost = shrinkCost,
            Starts = [[.. flat]],
            Held = [.. GridFlattening.Held(mesh, held).SelectMany(chain => Divided(chain, farSide)).Where(chain => chain.Length > 1)],
        };
        return new SlitGrid(uncut, cut, Flattener.Flatten(cut, options, cancellation), flanks.ToImmutable());
    }

    /// <summary>True if two cuts have a place of the grid in common.</summary>
    public static bool Meet(SheetGrid grid, ImmutableArray<GridSlit> slits)
    {
        var passed = new HashSet<(int, int)>();
        return slits.SelectMany(slit => Enumerable.Range(0, slit.Steps + 1).Select(k => slit.Place(grid, k))).Any(place => !passed.Add(place));
    }

    // An edge in parts, from mouth to mouth.
    private static IEnumerable<ImmutableArray<int>> Divided(ImmutableArray<int> chain, Dictionary<int, int> farSide)
    {
        List<int> part = [];
        foreach (int vertex in chain)
        {
            part.Add(vertex);
            if (!farSide.TryGetValue(vertex, out int far)) continue;
            yield return [.. part];
            part = [far];
        }
        yield return [.. part];
    }
}

using System.Collections.Immutable;
using NetTopologySuite.Geometries;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Plates;

/// <summary>A flat or bent plate: its outline on the blank and where the metal lies.</summary>
/// <param name="Shape">Where the metal lies.</param>
/// <param name="Edges">Counter-clockwise round the blank, each ending where the next one starts.</param>
internal sealed record Plate(PlateShape Shape, ImmutableArray<PlateEdge> Edges)
{
    // Corners nearer than this, mm, are one.
    private const double Nearness = 1e-7;

    /// <summary>The closed outline, counter-clockwise.</summary>
    public ImmutableArray<Vec2> Outline { get; } = Closed(Edges);

    /// <summary>Heights on the blank between which the plate counts as flat.</summary>
    public ImmutableArray<double> Stations { get; } = Shape.Stations(Edges.SelectMany(e => e.Path).Min(p => p.Y), Edges.SelectMany(e => e.Path).Max(p => p.Y));

    /// <summary>Triangles that lie close to the formed metal: none reaches over a station.</summary>
    /// <param name="offset">From the measured face to the middle surface along the outside normal, mm.</param>
    public SheetMesh Mesh(double offset)
    {
        var pool = new PlacePool(Nearness);
        ImmutableArray<PlateEdge> edges = PlateOutline.CutAt(Edges, Stations);
        ImmutableArray<EdgeChain> chains = [.. edges.Select(e => new EdgeChain(e.Name, Chain(e)))];
        var faces = ImmutableArray.CreateBuilder<(int, int, int)>();
        Polygon whole = Polygons.Of(Closed(edges));
        for (int k = 0; k + 1 < Stations.Length; k++)
        {
            foreach (Polygon part in Polygons.Parts(Stations.Length == 2 ? whole : Polygons.Shared(whole, Band(whole, Stations[k], Stations[k + 1]))))
            {
                foreach ((Vec2 a, Vec2 b, Vec2 c) in Polygons.Triangles(part))
                {
                    (int i, int j, int l) = (pool.Of(a), pool.Of(b), pool.Of(c));
                    if (i != j && j != l && l != i) faces.Add((i, j, l));
                }
            }
        }
        ImmutableArray<Vec2> flat = pool.Places;
        (Vec3 Face, Vec3 Normal)[] formed = [.. flat.Select(Shape.At)];
        return new SheetMesh([.. formed.Select(f => f.Face + offset * f.Normal)], flat, faces.ToImmutable()) { Chains = chains, Face = [.. formed.Select(f => f.Face)] };

        ImmutableArray<int> Chain(PlateEdge edge)
        {
            IEnumerable<Vec2> path = edge.Against ? edge.Path.Reverse() : edge.Path;
            var chain = ImmutableArray.CreateBuilder<int>();
            foreach (int v in path.Select(pool.Of))
                if (chain.Count == 0 || chain[^1] != v) chain.Add(v);
            return chain.ToImmutable();
        }
    }

    /// <summary>Where a line across the plate at a height runs over metal, from left to right.</summary>
    public IEnumerable<(double Left, double Right)> Across(double height)
    {
        double[] crossings = [.. Outline.Zip(Outline.Skip(1).Append(Outline[0])).Where(e => e.First.Y > height != e.Second.Y > height)
            .Select(e => e.First.X + (height - e.First.Y) / (e.Second.Y - e.First.Y) * (e.Second.X - e.First.X)).Order()];
        for (int i = 0; i + 1 < crossings.Length; i += 2) yield return (crossings[i], crossings[i + 1]);
    }

    /// <summary>Area of the blank between two heights, mm².</summary>
    public double AreaBetween(double low, double high)
    {
        Polygon whole = Polygons.Of(Outline);
        return Polygons.Shared(whole, Band(whole, low, high)).Area;
    }

    private static Polygon Band(Polygon whole, double low, double high)
    {
        Envelope box = whole.EnvelopeInternal;
        return Polygons.Of([new Vec2(box.MinX - 1, low), new Vec2(box.MaxX + 1, low), new Vec2(box.MaxX + 1, high), new Vec2(box.MinX - 1, high)]);
    }

    private static ImmutableArray<Vec2> Closed(ImmutableArray<PlateEdge> edges)
    {
        var loop = ImmutableArray.CreateBuilder<Vec2>();
        foreach (Vec2 p in edges.SelectMany(e => e.Path))
            if (loop.Count == 0 || (p - loop[^1]).Length > Nearness) loop.Add(p);
        while (loop.Count > 1 && (loop[^1] - loop[0]).Length <= Nearness) loop.RemoveAt(loop.Count - 1);
        return loop.ToImmutable();
    }
}

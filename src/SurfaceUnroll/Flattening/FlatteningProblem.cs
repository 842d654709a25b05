using System.Collections.Immutable;
using SurfaceUnroll.Flattening.Sparse;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Flattening;

/// <summary>A mesh made ready for flattening: vertices in the order of elimination, triangles laid out, fronts found.</summary>
internal sealed class FlatteningProblem
{
    private readonly int[] _order;

    private FlatteningProblem(int[] order, int[] rank, RestTriangles rest, MeshGraph graph, BlockSystem matrix, FrontalCholesky factor)
    {
        (_order, Rank, Rest, Graph, Matrix, Factor) = (order, rank, rest, graph, matrix, factor);
    }

    /// <summary>Place of each vertex of the mesh in the order of elimination.</summary>
    public int[] Rank { get; }

    /// <summary>Triangles in the order of elimination.</summary>
    public RestTriangles Rest { get; }

    /// <summary>Neighbours in the order of elimination.</summary>
    public MeshGraph Graph { get; }

    /// <summary>Matrix over vertices and edges.</summary>
    public BlockSystem Matrix { get; }

    /// <summary>Room for its factor.</summary>
    public FrontalCholesky Factor { get; }

    /// <summary>Prepares a mesh.</summary>
    /// <param name="mesh">Its faces have area.</param>
    /// <param name="held">Chains of vertices that will be held.</param>
    public static FlatteningProblem Of(TriangleMesh mesh, ImmutableArray<ImmutableArray<int>> held)
    {
        int[] corners = RestTriangles.CornersOf(mesh);
        // Places along a held edge act on each other two by two, as if they were a triangle.
        int[] linked = [.. corners, .. HeldEdges.Bends(held).SelectMany(b => new[] { b.A, b.B, b.C })];
        Dissection dissection = Dissection.Of(MeshGraph.Of(mesh.Places.Length, linked), mesh.Places.AsSpan());
        int[] order = dissection.Order, rank = new int[order.Length];
        for (int i = 0; i < order.Length; i++) rank[order[i]] = i;
        for (int i = 0; i < linked.Length; i++) linked[i] = rank[linked[i]];
        corners = linked[..corners.Length];
        Vec3[] places = Array.ConvertAll(order, v => mesh.Places[v]);
        MeshGraph graph = MeshGraph.Of(places.Length, linked);
        BlockSystem matrix = BlockSystem.Of(graph);
        var factor = new FrontalCholesky(matrix, FrontTree.Of(matrix, dissection.Root));
        return new FlatteningProblem(order, rank, RestTriangles.Of(places, corners), graph, matrix, factor);
    }

    /// <summary>Two values a vertex, in the order of elimination.</summary>
    public double[] ToSolver(ReadOnlySpan<Vec2> places)
    {
        double[] x = new double[2 * _order.Length];
        for (int i = 0; i < _order.Length; i++) (x[2 * i], x[2 * i + 1]) = places[_order[i]];
        return x;
    }

    /// <summary>Places in the mesh's own order.</summary>
    public ImmutableArray<Vec2> FromSolver(double[] x)
    {
        var places = new Vec2[_order.Length];
        for (int i = 0; i < _order.Length; i++) places[_order[i]] = new Vec2(x[2 * i], x[2 * i + 1]);
        return ImmutableArray.Create(places);
    }
}

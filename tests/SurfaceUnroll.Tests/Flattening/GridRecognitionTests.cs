using SurfaceUnroll.Flattening;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Tests.Flattening;

public class GridRecognitionTests
{
    [Theory]
    [InlineData(2, 2)]
    [InlineData(2, 7)]
    [InlineData(7, 2)]
    [InlineData(5, 5)]
    [InlineData(12, 9)]
    public void A_grid_with_faces_in_any_order_and_cells_cut_either_way_is_found(int rows, int columns)
    {
        var random = new Random(rows + 100 * columns);
        TriangleMesh mesh = FormedShapes.Grid(rows, columns, FormedShapes.Crown);
        mesh = Shuffled(mesh with { Faces = [.. mesh.Faces.Chunk(2).SelectMany(f => random.Next(2) == 0 ? f : CutTheOtherWay(f[0], f[1]))] }, random);
        GridMesh grid = Assert.IsType<GridMesh>(GridRecognition.Of(mesh));
        Assert.Equal((rows, columns), (grid.Grid.Rows, grid.Grid.Columns));
        Assert.Same(mesh, grid.Mesh);
        Assert.All(Enumerable.Range(0, rows * columns), v => Assert.Equal(mesh.Places[v], grid.Grid.Places[v]));
        Assert.All(Enumerable.Range(0, rows * columns), v => Assert.Equal(v, grid.VertexOf[v]));
    }

    [Fact]
    public void A_grid_with_its_faces_the_other_way_round_is_found_with_its_columns_from_the_right()
    {
        TriangleMesh mesh = FormedShapes.Grid(6, 4, FormedShapes.Crown).Turned(_ => true);
        GridMesh grid = Assert.IsType<GridMesh>(GridRecognition.Of(mesh));
        Assert.Equal(mesh.Places[0], grid.Grid.At(0, 3));
        Assert.Equal(mesh.Places[7], grid.Grid.At(1, 0));
        Assert.Equal(7, grid.At(1, 0));
        // The grid's own triangles are then turned as the mesh's are.
        Assert.True(Normal(GridMesh.Of(grid.Grid).Mesh, 0).Dot(Normal(mesh, 0)) > 0);
    }

    [Fact]
    public void What_is_no_grid_is_told_from_one()
    {
        TriangleMesh mesh = FormedShapes.Grid(6, 4, FormedShapes.Crown);
        Assert.Null(GridRecognition.Of(FormedShapes.Scattered(6, 4, FormedShapes.Crown, seed: 1)));
        Assert.Null(GridRecognition.Of(FormedShapes.Disc(4, (x, y) => new Vec3(x, y, 0))));
        Assert.Null(GridRecognition.Of(TestMeshes.Tube()));
        Assert.Null(GridRecognition.Of(mesh.Turned(f => f == 5)));
        Assert.Null(GridRecognition.Of(mesh.Without(5)));
        Assert.Null(GridRecognition.Of(mesh.Without(4, 5)));
        Assert.Null(GridRecognition.Of(mesh with { Faces = [.. mesh.Faces.RemoveAt(5), mesh.Faces[4]] }));
        Assert.Null(GridRecognition.Of(mesh with { Faces = [.. mesh.Faces.RemoveAt(5), (0, 0, 1)] }));
        Assert.Null(GridRecognition.Of(mesh with { Faces = [] }));
    }

    [Fact]
    public void Two_faces_of_a_cell_that_overlap_are_no_cell()
    {
        // Corners 0 1 / 4 5 of the first cell: (0, 4, 5) and (0, 4, 1) both have the edge 0–4.
        TriangleMesh mesh = FormedShapes.Grid(6, 4, FormedShapes.Crown);
        Assert.Null(GridRecognition.Of(mesh with { Faces = mesh.Faces.SetItem(1, (0, 4, 1)) }));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Coarse_to_fine_ends_at_the_same_blank_as_in_one_go(bool turned)
    {
        var random = new Random(7);
        TriangleMesh mesh = FormedShapes.Grid(30, 23, FormedShapes.Helicoid);
        mesh = mesh with { Faces = [.. mesh.Faces.Chunk(2).SelectMany(f => random.Next(2) == 0 ? f : CutTheOtherWay(f[0], f[1]))] };
        if (turned) mesh = mesh.Turned(_ => true);
        FlattenedMesh fast = MeshFlattening.Flatten(mesh), slow = Flattener.Flatten(mesh);
        Assert.Equal(FlatteningStart.Given, fast.Start);
        Assert.Equal(FlatteningStart.Conformal, slow.Start);
        // Either descent ends where the next step would gain less than a millionth.
        Assert.Equal(slow.Energy, fast.Energy, 1e-6 * slow.Energy);
        Assert.Equal(slow.MaxStretch, fast.MaxStretch, 1e-4);
    }

    [Fact]
    public void A_grid_that_lies_double_where_every_second_place_is_taken_is_still_flattened()
    {
        // A strip to and fro: its places 0, 2, 4 … along it coincide.
        TriangleMesh mesh = FormedShapes.Grid(21, 5, (u, v) => new Vec3(20 * v, (int)Math.Round(20 * u) % 2 == 0 ? 0 : 10, 0));
        FlattenedMesh blank = MeshFlattening.Flatten(mesh);
        Assert.Equal(0, blank.MaxStretch, 1e-6);
        Assert.Equal(0, blank.MaxShrink, 1e-6);
    }

    private static (int, int, int)[] CutTheOtherWay((int A, int B, int C) first, (int A, int B, int C) second) =>
        [(first.A, first.B, second.C), (second.C, first.B, first.C)];

    private static TriangleMesh Shuffled(TriangleMesh mesh, Random random)
    {
        (int A, int B, int C)[] faces = [.. mesh.Faces.Select((f, i) => (i % 3) switch { 0 => f, 1 => (f.B, f.C, f.A), _ => (f.C, f.A, f.B) })];
        random.Shuffle(faces);
        return mesh with { Faces = [.. faces] };
    }

    private static Vec3 Normal(TriangleMesh mesh, int face)
    {
        (int a, int b, int c) = mesh.Faces[face];
        return (mesh.Places[b] - mesh.Places[a]).Cross(mesh.Places[c] - mesh.Places[a]);
    }
}

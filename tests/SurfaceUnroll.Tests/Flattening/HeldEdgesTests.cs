using System.Collections.Immutable;
using SurfaceUnroll.Flattening;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Lofting;

namespace SurfaceUnroll.Tests.Flattening;

/// <summary>Edges that keep their length on the blank.</summary>
public class HeldEdgesTests
{
    public static TheoryData<string, string> Cases => new()
    {
        { "crown", "front" },
        { "crown", "front rear" },
        { "crown", "left front right rear" },
        { "hypar", "left" },
        { "helicoid", "left right" },
        { "ball", "front right" },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void Edge_keeps_its_length_on_coarse_and_fine_grids_at_a_cost_that_settles(string shape, string names)
    {
        ImmutableArray<string> held = [.. names.Split(' ')];
        double[] costs = [.. new[] { 9, 17, 33, 65 }.Select(n => Cost(shape, n, held))];
        Assert.All(costs, c => Assert.True(c > 0));
        // What holding costs is a figure of the sheet and not of the grid: its changes get smaller as the grid gets finer.
        double before = Math.Abs(costs[2] - costs[1]), last = Math.Abs(costs[3] - costs[2]);
        Assert.True(last < 0.8 * before, string.Join(" ", costs));
        Assert.True(last < 0.1 * costs[3], string.Join(" ", costs));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    public void An_edge_of_a_free_mesh_is_held_too(double shrinkCost)
    {
        TriangleMesh mesh = FormedShapes.Disc(10, FormedShapes.Cap);
        ImmutableArray<int> border = DiscCheck.Border(mesh);
        ImmutableArray<int> half = border[..(border.Length / 2)];
        var options = new FlatteningOptions { ShrinkCost = shrinkCost };
        FlattenedMesh free = BlankAsserts.Flatten(mesh, options), blank = BlankAsserts.Flatten(mesh, options with { Held = [half] });
        AssertHeld(mesh, blank, half);
        Assert.True(blank.Energy > free.Energy);
        // The rim would shrink by a tenth if it were free.
        Assert.Contains(half.Zip(half.Skip(1)), e => Math.Abs(Strain(mesh, free, e.First, e.Second)) > 0.05);
    }

    // What holding edges adds to the energy.
    private static double Cost(string shape, int n, ImmutableArray<string> held)
    {
        Func<double, double, Vec3> place = shape switch { "crown" => FormedShapes.Crown, "hypar" => FormedShapes.Hypar, "helicoid" => FormedShapes.Helicoid, _ => FormedShapes.BallSquare };
        var grid = new SheetGrid(n, n, FormedShapes.Grid(n, n, place).Places, IsMirrored: false);
        FlattenedGrid free = GridFlattening.Flatten(grid, 1, []), blank = GridFlattening.Flatten(grid, 1, held);
        BlankAsserts.NoneTurned(blank.Mesh.Mesh, blank.Blank.Flat);
        foreach (string name in held) AssertHeld(blank.Mesh.Mesh, blank.Blank, blank.Mesh.Edge(name));
        return blank.Blank.Energy - free.Blank.Energy;
    }

    private static void AssertHeld(TriangleMesh mesh, FlattenedMesh blank, ImmutableArray<int> edge) =>
        Assert.All(edge.Zip(edge.Skip(1)), e => Assert.Equal(0, Strain(mesh, blank, e.First, e.Second), 1e-4));

    private static double Strain(TriangleMesh mesh, FlattenedMesh blank, int a, int b) =>
        (blank.Flat[a] - blank.Flat[b]).Length / (mesh.Places[a] - mesh.Places[b]).Length - 1;
}

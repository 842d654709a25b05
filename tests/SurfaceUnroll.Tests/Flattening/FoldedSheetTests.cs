using System.Collections.Immutable;
using SurfaceUnroll.Flattening;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Tests.Flattening;

/// <summary>What was folded from a flat sheet comes out as that sheet.</summary>
public class FoldedSheetTests
{
    private static readonly Dictionary<string, FoldedShapes> Shapes = new()
    {
        ["cylinder"] = FoldedShapes.Cylinder(24, 10),
        ["cone"] = FoldedShapes.Fan(24, 10, c => new Vec3(0.6 * Math.Cos(c * 0.15), 0.6 * Math.Sin(c * 0.15), 0.8)),
        ["fan of creases at random"] = FoldedShapes.Fan(16, 12, Creases(11)),
        ["crumpled map"] = FoldedShapes.Miura(0.9, 6, 3),
        ["map nearly shut"] = FoldedShapes.Miura(1.5, 8, 2),
    };

    public static TheoryData<string, bool> Cases
    {
        get
        {
            var cases = new TheoryData<string, bool>();
            foreach (string name in Shapes.Keys)
            {
                cases.Add(name, false);
                cases.Add(name, true);
            }
            return cases;
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Sheet_is_laid_back_flat_without_strain(string name, bool fromACircle)
    {
        FoldedShapes shape = Shapes[name];
        ImmutableArray<ImmutableArray<Vec2>> starts = fromACircle ? [BlankAsserts.Barycentric(shape.Mesh)] : [];
        FlattenedMesh blank = BlankAsserts.Flatten(shape.Mesh, new FlatteningOptions { Starts = starts });
        Assert.Equal(fromACircle ? FlatteningStart.Given : FlatteningStart.Conformal, blank.Start);
        Assert.InRange(blank.MaxStretch, 0, 1e-6);
        Assert.InRange(blank.MaxShrink, 0, 1e-6);
        Assert.All(shape.Mesh.Faces, f => Assert.Equal(1, (blank.Flat[f.A] - blank.Flat[f.B]).Length / (shape.Mesh.Places[f.A] - shape.Mesh.Places[f.B]).Length, 1e-6));
        // Not only every edge, the whole blank is the sheet that was folded. Strains of 1e-6 along it could add up to as much.
        Assert.InRange(BlankAsserts.Difference(blank.Flat, shape.Flat), 0, 1e-6);
    }

    [Fact]
    public void Whole_grid_coarse_to_fine_comes_out_flat_too_though_coarse_grids_skip_creases()
    {
        FoldedShapes shape = FoldedShapes.Miura(0.9, 7, 3);
        FlattenedMesh blank = MeshFlattening.Flatten(shape.Mesh);
        BlankAsserts.NoneTurned(shape.Mesh, blank.Flat);
        Assert.InRange(BlankAsserts.Difference(blank.Flat, shape.Flat), 0, 1e-6);
    }

    // Directions that go on by a tenth of a radian and up and down at random.
    private static Func<int, Vec3> Creases(int seed)
    {
        var random = new Random(seed);
        Vec3[] directions = [.. Enumerable.Range(0, 17).Select(c =>
        {
            double up = (c % 2 == 0 ? 1 : -1) * (0.1 + 0.2 * random.NextDouble()), round = 0.1 * c;
            return new Vec3(Math.Cos(up) * Math.Cos(round), Math.Cos(up) * Math.Sin(round), Math.Sin(up));
        })];
        return c => directions[c];
    }
}

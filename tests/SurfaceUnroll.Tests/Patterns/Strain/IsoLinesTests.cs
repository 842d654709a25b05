using System.Collections.Immutable;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns.Strain;

namespace SurfaceUnroll.Tests.Patterns.Strain;

public class IsoLinesTests
{
    [Fact]
    public void Level_of_the_square_of_the_radius_is_one_closed_circle()
    {
        SheetMesh mesh = StrainSamples.Grid(200, 160, 100, 80);
        ImmutableArray<double> field = [.. mesh.Flat.Select(p => p.Dot(p))];
        IsoLine circle = Assert.Single(IsoLines.Of(mesh, field, 60 * 60));
        Assert.True(circle.Closed);
        // Linear between vertices up to 2.83 mm apart, above the square by up to f″h²/8 = 2 mm²; over f′ = 120 mm.
        Assert.All(circle.Points, p => Assert.InRange(p.Length, 60 - 0.0168, 60 + 1e-9));
        // Larger values on the left: clockwise round the middle.
        Assert.True(circle.Points.Zip(circle.Points.Skip(1), (a, b) => a.Cross(b)).Sum() < 0);
    }

    [Fact]
    public void Circle_that_the_rim_cuts_is_four_lines_that_end_on_the_rim()
    {
        SheetMesh mesh = StrainSamples.Grid(200, 200, 50, 50);
        ImmutableArray<IsoLine> lines = IsoLines.Of(mesh, [.. mesh.Flat.Select(p => p.Dot(p))], 120 * 120);
        Assert.Equal(4, lines.Length);
        Assert.All(lines, line =>
        {
            Assert.False(line.Closed);
            Assert.Equal(100, Rim(line.Points[0]), 9);
            Assert.Equal(100, Rim(line.Points[^1]), 9);
        });
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void Line_through_vertices_is_whole_and_there_once(double level)
    {
        // Every vertex of a row has exactly the level.
        SheetMesh mesh = StrainSamples.Grid(100, 40, 10, 4);
        IsoLine line = Assert.Single(IsoLines.Of(mesh, [.. mesh.Flat.Select(p => p.Y / 10)], level));
        Assert.False(line.Closed);
        Assert.Equal(11, line.Points.Length);
        Assert.All(line.Points, p => Assert.Equal(10 * level, p.Y, 12));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void Ridge_valley_and_rim_that_only_touch_the_level_have_no_line(double sign)
    {
        SheetMesh mesh = StrainSamples.Grid(100, 40, 10, 4);
        Assert.Empty(IsoLines.Of(mesh, [.. mesh.Flat.Select(p => sign * Math.Abs(p.Y))], 0));
        Assert.Empty(IsoLines.Of(mesh, [.. mesh.Flat.Select(p => sign * (20 - p.Y))], 0));
    }

    [Fact]
    public void Saddle_at_a_vertex_breaks_and_doubles_nothing()
    {
        SheetMesh mesh = StrainSamples.Grid(100, 100, 10, 10);
        ImmutableArray<IsoLine> lines = IsoLines.Of(mesh, [.. mesh.Flat.Select(p => p.X * p.Y)], 0);
        Assert.Equal(2, lines.Length);
        Assert.Equal(200, lines.Sum(l => StrainSamples.Pieces(l.Points, l.Closed).Sum(p => (p.Item2 - p.Item1).Length)), 9);
        Assert.All(lines, l => Assert.Equal(50, Rim(l.Points[0]), 9));
    }

    // Few different values: levels often fall on vertices, edges and whole faces.
    [Property(MaxTest = 300)]
    public Property Random_fields_give_lines_at_their_level_once_each_closed_or_ending_on_the_rim() =>
        Prop.ForAll(Gen.Choose(-3, 3).ArrayOf(42).ToArbitrary(), Gen.Elements(0.0, 1.0, 0.37).ToArbitrary(), (values, level) =>
        {
            SheetMesh mesh = StrainSamples.Grid(60, 50, 6, 5);
            ImmutableArray<double> field = [.. values.Select(v => (double)v)];
            ImmutableArray<IsoLine> lines = IsoLines.Of(mesh, field, level);
            (Vec2, Vec2)[] pieces = [.. lines.SelectMany(l => StrainSamples.Pieces(l.Points, l.Closed))];
            Assert.Equal(pieces.Length, pieces.Distinct().Count());
            Assert.All(lines.SelectMany(l => l.Points), p => Assert.Equal(level, At(mesh, field, p), 9));
            Assert.All(lines.Where(l => !l.Closed), l => Assert.True(OnRim(l.Points[0]) && OnRim(l.Points[^1])));
            // Every edge between vertices on both sides of the level is crossed exactly once.
            int crossed = Edges(mesh).Count(e => (field[e.A] - level) * (field[e.B] - level) < 0);
            Assert.Equal(crossed, lines.SelectMany(l => l.Points).Count(p => !mesh.Flat.Contains(p)));

            static bool OnRim(Vec2 p) => Math.Abs(Math.Abs(p.X) - 30) < 1e-9 || Math.Abs(Math.Abs(p.Y) - 25) < 1e-9;
        });

    private static double Rim(Vec2 p) => Math.Max(Math.Abs(p.X), Math.Abs(p.Y));

    private static IEnumerable<(int A, int B)> Edges(SheetMesh mesh) => mesh.Faces
        .SelectMany(f => new[] { (f.A, f.B), (f.B, f.C), (f.C, f.A) })
        .Select(e => (A: Math.Min(e.Item1, e.Item2), B: Math.Max(e.Item1, e.Item2))).Distinct();

    // The field on the edge that a place lies on.
    private static double At(SheetMesh mesh, ImmutableArray<double> field, Vec2 p)
    {
        (int a, int b) = Edges(mesh).MinBy(e => (p - mesh.Flat[e.A]).Length + (p - mesh.Flat[e.B]).Length - (mesh.Flat[e.A] - mesh.Flat[e.B]).Length);
        double t = (p - mesh.Flat[a]).Length / (mesh.Flat[b] - mesh.Flat[a]).Length;
        return field[a] + t * (field[b] - field[a]);
    }
}

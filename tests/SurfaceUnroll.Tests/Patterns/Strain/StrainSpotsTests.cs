using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns.Strain;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Tests.Patterns.Strain;

public class StrainSpotsTests
{
    private static double Bump(Vec2 p, double x, double y, double height) => height * Math.Exp(-((p - new Vec2(x, y)).Dot(p - new Vec2(x, y)) / 800));

    private static ImmutableArray<StrainSpot> Spots(SheetMesh mesh, StrainMap map, LengthUnit units = LengthUnit.Millimetre) =>
        StrainSpots.Of(mesh, map, [], [], units);

    [Fact]
    public void Worst_places_are_the_peaks_in_order_of_their_size()
    {
        SheetMesh mesh = StrainSamples.Grid(400, 300, 80, 60);
        StrainMap map = StrainSamples.Signed(mesh, p => Bump(p, -100, 50, 0.02) + Bump(p, 120, 0, 0.03) + Bump(p, 0, -100, 0.005) - Bump(p, 0, 100, 0.025));
        ImmutableArray<StrainSpot> spots = Spots(mesh, map);
        Assert.Equal(
            [(1, StrainKind.Stretch, new Vec2(120, 0)), (2, StrainKind.Shrink, new Vec2(0, 100)), (3, StrainKind.Stretch, new Vec2(-100, 50))],
            spots.Select(s => (s.Number, s.Kind, new Vec2(Math.Round(s.Flat.X, 9), Math.Round(s.Flat.Y, 9)))));
        Assert.Equal(0.03, spots[0].Size, 4);
        Assert.Equal(-0.03 / 1.03, spots[0].Thickness, 4);
    }

    [Fact]
    public void Ripples_and_near_neighbours_are_one_place()
    {
        SheetMesh mesh = StrainSamples.Grid(400, 300, 80, 60);
        // A ridge of even height across the sheet with ripples of a twentieth; two peaks 30 mm apart.
        Assert.Single(Spots(mesh, StrainSamples.Signed(mesh, p => 0.02 * Math.Exp(-p.Y * p.Y / 800) * (1 + 0.05 * Math.Cos(p.X / 8)))));
        Assert.Single(Spots(mesh, StrainSamples.Signed(mesh, p => 0.02 * Math.Exp(-p.Dot(p) / 900) * (1 - 0.9 * Math.Cos(Math.PI * p.X / 15)))));
    }

    [Fact]
    public void Many_peaks_leave_six_and_three_of_each_kind()
    {
        SheetMesh mesh = StrainSamples.Grid(400, 400, 80, 80);
        StrainMap map = StrainSamples.Signed(mesh, p => Math.Sin(p.X / 20) * Math.Sin(p.Y / 20) * (0.02 + 0.00001 * p.X));
        ImmutableArray<StrainSpot> spots = Spots(mesh, map);
        Assert.Equal(6, spots.Length);
        Assert.Equal(3, spots.Count(s => s.Kind == StrainKind.Stretch));
    }

    [Fact]
    public void Sheet_that_only_bends_has_no_worst_place()
    {
        SheetMesh mesh = StrainSamples.Grid(400, 300, 8, 6);
        Assert.Empty(Spots(mesh, StrainSamples.Signed(mesh, p => 0.00099 * p.X / 200)));
    }

    [Theory]
    [InlineData(60, "200 mm from the front edge along line 7")]
    [InlineData(75, "200 mm from the front edge, 15 mm right of line 7")]
    [InlineData(45, "200 mm from the front edge, 15 mm left of line 7")]
    public void Place_on_a_panel_with_lines_is_told_along_the_nearest(double x, string where)
    {
        // Lines 60 mm apart, line 7 at x = 60, the front edge at y = 150.
        SheetMesh mesh = StrainSamples.Grid(660, 300, 132, 60);
        ImmutableArray<ElementLine> lines = [.. Enumerable.Range(1, 12).Select(n => Line(n, 60 * (n - 6)))];
        StrainMap map = StrainSamples.Signed(mesh, p => Bump(p, x, -50, 0.01));
        Assert.Equal(where, Assert.Single(StrainSpots.Of(mesh, map, [], lines, LengthUnit.Millimetre)).Where);
    }

    [Fact]
    public void Place_at_the_end_of_a_line_is_at_the_edge()
    {
        SheetMesh mesh = StrainSamples.Grid(660, 300, 132, 60);
        StrainMap map = StrainSamples.Signed(mesh, p => Bump(p, 60, 150, 0.01));
        Assert.Equal("at the front edge, on line 7", Assert.Single(StrainSpots.Of(mesh, map, [], [Line(7, 60)], LengthUnit.Inch)).Where);
    }

    [Fact]
    public void Place_on_a_mesh_is_told_from_the_rim_in_the_units_of_the_job()
    {
        SheetMesh mesh = StrainSamples.Grid(660, 300, 132, 60, p => new Vec3(-p.Y, p.X, 25.4));
        StrainMap map = StrainSamples.Signed(mesh, p => Bump(p, 60, -50, 0.01));
        Assert.Equal("100 mm in from the rim, nearest to x 150, y 60, z 25", Assert.Single(Spots(mesh, map)).Where);
        Assert.Equal("3 15/16\" in from the rim, nearest to x 5 29/32, y 2 23/64, z 1", Assert.Single(Spots(mesh, map, LengthUnit.Inch)).Where);
    }

    [Fact]
    public void Place_between_named_edges_is_told_from_the_two_nearest()
    {
        SheetMesh mesh = StrainSamples.Grid(600, 300, 60, 30);
        BlankEdge Edge(string name, Vec2 a, Vec2 b) => new(name, (b - a).Length, (b - a).Length, [a, b]);
        ImmutableArray<BlankEdge> edges =
        [
            Edge("front", new(-300, 150), new(300, 150)), Edge("right", new(300, 150), new(300, -150)),
            Edge("rear", new(-300, -150), new(300, -150)), Edge("left", new(-300, 150), new(-300, -150)),
        ];
        StrainMap map = StrainSamples.Signed(mesh, p => Bump(p, 200, 80, 0.01));
        Assert.Equal(
            "70 mm from the front edge, 100 mm from the right edge, over the blank",
            Assert.Single(StrainSpots.Of(mesh, map, edges, [], LengthUnit.Millimetre)).Where);
    }

    // A line straight down a flat sheet whose formed place is (−y, x, 0).
    private static ElementLine Line(int number, double x) => new(
        number, new Vec3(-150, x, 0), new Vec3(150, x, 0), new Vec2(x, 150), new Vec2(x, -150), 0, 0, new Vec3(0, 0, 1), 0,
        double.PositiveInfinity, double.PositiveInfinity, true);
}

using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Lofting;

namespace SurfaceUnroll.Tests.Lofting;

public class RuledGridTests
{
    private static readonly RuledSheet Sheet = Loft.Between(
        Shapes.Arch(), Shapes.Moved(Shapes.Hoop(), Shapes.Rotation(Shapes.X, 0.3), new Vec3(0, 0, 20)), ElementMatching.BendOnly);

    [Fact]
    public void Edges_are_kept_within_a_hundredth_of_a_millimetre_by_fewer_lines()
    {
        SheetGrid grid = RuledGrid.Of(Sheet);
        Assert.True(grid.Columns < Sheet.Strips.Length / 2);
        Vec3[] front = [.. grid.Row(0)], rear = [.. grid.Row(grid.Rows - 1)];
        foreach (Station s in Sheet.Strips.SelectMany(s => new[] { s.Left, s.Middle, s.Right }))
        {
            Assert.InRange(Crowned.Distance(s.Front, front), 0, 0.01);
            Assert.InRange(Crowned.Distance(s.Rear, rear), 0, 0.01);
        }
    }

    [Fact]
    public void Columns_are_straight_element_lines()
    {
        SheetGrid grid = RuledGrid.Of(Sheet);
        for (int c = 0; c < grid.Columns; c++)
            Assert.Equal((grid.At(grid.Rows - 1, c) - grid.At(0, c)).Length, Crowned.Length(grid.Column(c)), 1e-9);
    }

    [Fact]
    public void Columns_stand_close_on_edges_that_are_straight()
    {
        RuledSheet hypar = Loft.Between(
            AnalyticPiece.Polyline(new Vec3(0, -100, -50), new Vec3(0, 100, 50)), AnalyticPiece.Polyline(new Vec3(200, -100, 50), new Vec3(200, 100, -50)), ElementMatching.Even);
        Assert.InRange(RuledGrid.Of(hypar).Columns, 33, 257);
    }
}

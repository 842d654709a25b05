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
    public void An_edge_that_all_but_stands_still_has_a_tip()
    {
        // All but a cone: the rear goes on by a fiftieth of a millimetre while the front goes round by a right angle, and before and behind that both go straight on.
        static Station Line(Vec3 front, Vec3 rear) => new(front, rear, new Vec3(0, 1, 0), new Vec3(0, 1, 0), new Vec3(0, 0, 1), 0);
        Station[] lines =
        [
            Line(new Vec3(0, -150, 100), new Vec3(200, -50, 0)),
            .. Enumerable.Range(0, 21).Select(i => Line(new Vec3(0, 100 * Math.Sin(Math.PI * (i - 10) / 40), 100 * Math.Cos(Math.PI * (i - 10) / 40)), new Vec3(200, 0.001 * (i - 10), 0))),
            Line(new Vec3(0, 150, 100), new Vec3(200, 50, 0)),
        ];
        Strip[] strips = [.. lines.Zip(lines.Skip(1), (a, b) => new Strip(a, Line(Vec3.Lerp(a.Front, b.Front, 0.5), Vec3.Lerp(a.Rear, b.Rear, 0.5)), b, false, false))];
        SheetGrid grid = RuledGrid.Of(new RuledSheet([.. strips], false));
        Vec3[] rear = [.. grid.Row(grid.Rows - 1)];
        Assert.Equal(lines[0].Rear, rear[0]);
        Assert.Equal(lines[^1].Rear, rear[^1]);
        double[] steps = [.. rear.Zip(rear.Skip(1), (a, b) => (b - a).Length)];
        Assert.All(steps, step => Assert.True(step == 0 || step > 1, $"a step of {step} mm"));
        Assert.Equal(100, steps.Sum(), 0.05);
        // The front, which goes on, keeps its places.
        Assert.All(grid.Row(0).Zip(grid.Row(0).Skip(1)), s => Assert.True((s.Second - s.First).Length > 1));
    }

    [Fact]
    public void Columns_stand_close_on_edges_that_are_straight()
    {
        RuledSheet hypar = Loft.Between(
            AnalyticPiece.Polyline(new Vec3(0, -100, -50), new Vec3(0, 100, 50)), AnalyticPiece.Polyline(new Vec3(200, -100, 50), new Vec3(200, 100, -50)), ElementMatching.Even);
        Assert.InRange(RuledGrid.Of(hypar).Columns, 33, 257);
    }
}

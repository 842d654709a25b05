using System.Collections.Immutable;
using SurfaceUnroll.Bench.Stops.Measuring;
using SurfaceUnroll.Files.JobTexts;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Bench.Tests.Stops;

public class PointListTests
{
    private const string Inches = """{ "units": "in", "points": [ [0, "6 1/4"], ["2 3/8", 5.7], ["4 7/8", 0] ] }""";

    private const string Millimetres = """{ "units": "mm", "points": [ [0, 100], [60.123, 80], [90, 0, "corner"] ] }""";

    [Fact]
    public void Dragged_point_is_written_as_the_tape_reads()
    {
        PointList list = Of(Inches);
        // 2 15/32 in and a hair, 5 1/2 in.
        JobText moved = list.Text.With(list.Moved(1, 0, 1, new Vec2(2.47 * 25.4, 5.5 * 25.4)));
        Assert.Equal("""[ [0, "6 1/4"], ["2 15/32", "5 1/2"], ["4 7/8", 0] ]""", moved.Written("points"));
    }

    [Fact]
    public void Number_that_is_not_moved_keeps_what_was_measured()
    {
        PointList list = Of(Millimetres);
        JobText moved = list.Text.With(list.Moved(1, 0, 1, new Vec2(60.1, 75.04)));
        Assert.Equal("""[ [0, 100], [60.123, 75], [90, 0, "corner"] ]""", moved.Written("points"));
    }

    [Fact]
    public void Mirrored_point_keeps_to_its_side_of_the_centreline()
    {
        PointList list = Of(Millimetres) with { Mirror = true };
        Assert.Equal("[0, 110]", list.Text.With(list.Moved(0, 0, 1, new Vec2(7, 110))).Written("points[0]"));
        Assert.Equal("[0, 80]", list.Text.With(list.Moved(1, 0, 1, new Vec2(-7, 80))).Written("points[1]"));
    }

    [Fact]
    public void Place_of_a_side_view_stays_between_its_neighbours()
    {
        PointList list = Of(Millimetres) with { Rising = true };
        Assert.Equal("[89.9, 80]", list.Text.With(list.Moved(1, 0, 1, new Vec2(200, 80))).Written("points[1]"));
        Assert.Equal("[0.1, 80]", list.Text.With(list.Moved(1, 0, 1, new Vec2(-200, 80))).Written("points[1]"));
    }

    [Theory]
    [InlineData(10, 95, 1)]
    [InlineData(80, 40, 2)]
    [InlineData(-80, 40, 2)] // On the mirror image.
    public void Point_is_added_between_the_two_around_it(double x, double y, int index)
    {
        PointList list = Of(Millimetres) with { Mirror = true };
        ImmutableArray<ImmutableArray<double>> curve = [[0, 100], [30, 90], [60.123, 80], [75, 40], [90, 0]];
        JobText added = list.Text.With(list.Added(new Vec2(x, y), 0, 1, curve)!);
        PointList after = list with { Text = added };
        Assert.Equal(4, after.Count);
        ImmutableArray<double> place = after.Places()[index];
        Assert.InRange(place[0], list.Places()[index - 1][0], list.Places()[index][0]);
        Assert.Equal("corner", added.Shown("points[3][2]"));
    }

    [Fact]
    public void Row_that_is_added_goes_on_as_the_curve_does()
    {
        PointList list = Of(Millimetres);
        Assert.Equal("[30.1, 90]", list.Text.With(list.Following(0)).Written("points[1]"));
        Assert.Equal("[119.9, -80]", list.Text.With(list.Following(2)).Written("points[3]"));
    }

    private static PointList Of(string text) => new(JobText.Of(text), "points", ["across", "up"]);
}

using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Tests.Drawings;

public class TileLayoutTests
{
    // On A4 with 10 mm margins a window is 210 − 20 − 14 = 176 wide and 297 − 20 − 30 = 247 high.
    private static readonly PaperSpec A4Portrait = PaperSpec.Default with { Orientation = PaperOrientation.Portrait };

    [Theory]
    [InlineData(174, 245, 1, 1)] // 1 mm of white is kept on every side.
    [InlineData(174.1, 245, 1, 2)]
    [InlineData(174, 245.1, 2, 1)]
    [InlineData(174 + 166, 245 + 237, 2, 2)] // Each further sheet brings its window less the overlap.
    [InlineData(174 + 166.1, 245 + 237.1, 3, 3)]
    public void Sheets_are_as_few_as_the_windows_allow(double width, double height, int rows, int columns)
    {
        TilePlan plan = TileLayout.Plan(Rectangle(width, height), A4Portrait);
        Assert.Equal((rows, columns), (plan.Rows, plan.Columns));
    }

    [Theory]
    [InlineData(240, 140, true, 1)] // One level A4 sheet, but two upright ones.
    [InlineData(140, 240, false, 1)]
    [InlineData(100, 100, false, 1)] // As many either way: upright.
    public void Paper_lies_the_way_that_takes_fewest_sheets(double width, double height, bool landscape, int sheets)
    {
        TilePlan plan = TileLayout.Plan(Rectangle(width, height), PaperSpec.Default);
        Assert.Equal(landscape, plan.IsLandscape);
        Assert.Equal(sheets, plan.Printed.Count());
    }

    [Fact]
    public void Neighbours_overlap_by_what_was_asked()
    {
        TilePlan plan = TileLayout.Plan(Rectangle(500, 600), A4Portrait with { Overlap = 17 });
        for (int i = 0; i < plan.Tiles.Length; i++)
        {
            Tile tile = plan.Tiles[i];
            if (tile.Column + 1 < plan.Columns) Assert.Equal(17, tile.Window.Max.X - plan.Tiles[i + 1].Window.Min.X, 1e-9);
            if (tile.Row + 1 < plan.Rows) Assert.Equal(17, plan.Tiles[i + plan.Columns].Window.Max.Y - tile.Window.Min.Y, 1e-9);
        }
    }

    [Fact]
    public void Tiles_are_numbered_down_and_across()
    {
        TilePlan plan = TileLayout.Plan(Rectangle(500, 600), A4Portrait);
        Assert.Equal(["1.1", "1.2", "1.3", "2.1", "2.2", "2.3", "3.1", "3.2", "3.3"], plan.Tiles.Select(t => t.Label));
        Assert.Equal("27.12", new Tile(26, 11, default, false).Label);
    }

    [Fact]
    public void Sheets_inside_a_large_frame_are_left_out()
    {
        TilePlan plan = TileLayout.Plan(Rectangle(1200, 1500), A4Portrait);
        Tile[] empty = [.. plan.Tiles.Where(t => t.IsEmpty)];
        Assert.NotEmpty(empty);
        Assert.All(empty, t => Assert.True(t.Row > 0 && t.Row < plan.Rows - 1 && t.Column > 0 && t.Column < plan.Columns - 1));
        // Two rows and two columns of rim remain.
        Assert.Equal(2 * (plan.Rows + plan.Columns) - 4, plan.Printed.Count());
    }

    [Fact]
    public void Every_mark_stands_in_the_overlap_of_two_neighbours_under_a_letter_of_its_own()
    {
        TilePlan plan = TileLayout.Plan(Rectangle(1200, 1500), A4Portrait);
        Assert.Equal(plan.Marks.Length, plan.Marks.Select(m => m.Letter).Distinct().Count());
        Assert.All(plan.Marks, m => Assert.Equal(2, plan.Printed.Count(t => Holds(t.Window, m.At))));
        // A rim of n sheets has n seams, and two marks on each.
        Assert.Equal(2 * plan.Printed.Count(), plan.Marks.Length);
    }

    [Fact]
    public void Marks_stand_clear_of_words()
    {
        Drawing bare = Rectangle(300, 200);
        TilePlan plan = TileLayout.Plan(bare, A4Portrait);
        Vec2 first = plan.Marks[0].At;
        Drawing worded = bare with { Letterings = [new Lettering(Role.Note, "OUTSIDE FACE UP", first, 3, 0, Anchor.Middle)] };
        Vec2 moved = SeamMarks.Of(worded, plan.Tiles, plan.Columns, A4Portrait.Overlap).First().At;
        Assert.Equal(first.X, moved.X, 1e-9);
        Assert.True(Math.Abs(first.Y - moved.Y) > 5, "The mark stayed among the words.");
    }

    private static bool Holds(Box box, Vec2 p) => p.X > box.Min.X && p.X < box.Max.X && p.Y > box.Min.Y && p.Y < box.Max.Y;

    private static Drawing Rectangle(double width, double height)
    {
        ImmutableArray<Vec2> corners = [Vec2.Zero, new(width, 0), new(width, height), new(0, height)];
        return new Drawing("Frame", [new Stroke(Role.Cut, corners, Closed: true)], []);
    }
}

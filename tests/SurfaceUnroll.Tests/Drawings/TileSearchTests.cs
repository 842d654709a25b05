using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Tests.Drawings;

public class TileSearchTests
{
    private static readonly PaperSpec Free = PaperSpec.Default with { Turn = null };

    [Fact]
    public void A_slanting_strip_is_turned_onto_one_sheet()
    {
        TilePlan plan = TileLayout.Plan(Strip(230, 60, 30), Free);
        Assert.Single(plan.Printed);
        Assert.True(plan.CostUnturned > 1);
        // As drawn it leans by 30 degrees: turned back, and no farther than it must be.
        Assert.InRange(plan.Turn * 180 / Math.PI, -30, -1);
        Assert.Contains("spares", PaperWords.Line(plan), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(900, 300, 17)]
    [InlineData(620, 620, 45)]
    [InlineData(1500, 120, -62)]
    public void A_turn_never_takes_more_sheets_and_is_told_with_what_it_spares(double width, double height, double lean)
    {
        Drawing drawing = Strip(width, height, lean);
        TilePlan straight = TileLayout.Plan(drawing, PaperSpec.Default), turned = TileLayout.Plan(drawing, Free);
        Assert.True(turned.Printed.Count() <= straight.Printed.Count());
        Assert.Equal(straight.Printed.Count(), turned.CostUnturned);
        int spared = straight.Printed.Count() - turned.Printed.Count();
        Assert.Equal(spared > 0, turned.Turn != 0);
        if (spared > 0) Assert.Contains($"spares {spared.ToString(CultureInfo.InvariantCulture)} sheet", PaperWords.Line(turned), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(30)]
    [InlineData(-90)]
    public void A_turn_that_is_asked_for_is_kept(double degrees)
    {
        Drawing drawing = Strip(300, 100, 0);
        TilePlan plan = TileLayout.Plan(drawing, Free with { Turn = degrees * Math.PI / 180 });
        Assert.Equal(degrees * Math.PI / 180, plan.Turn);
        Vec2[] expected = [.. drawing.Strokes[0].Points.Select(p => p.Rotate(degrees * Math.PI / 180))];
        Assert.Equal(expected, plan.Drawing.Strokes[0].Points);
    }

    [Fact]
    public void From_a_roll_comes_the_shortest_length()
    {
        TilePlan plan = TileLayout.Plan(Strip(550, 200, 90), Free with { Size = PaperSize.Roll(610) });
        Tile tile = Assert.Single(plan.Printed);
        // 200 of the piece with 2 of white, the strip of 30 and two margins of 10.
        Assert.Equal(252, plan.Sheet.Height, 1.0);
        Assert.Equal(610, plan.Sheet.Width);
        Assert.True(plan.CostUnturned - plan.Cost > 300);
        Assert.All(plan.Drawing.Strokes[0].Points, p => Assert.True(tile.Window.Contains(p)));
    }

    [Fact]
    public void Sheets_do_not_part_along_an_edge_of_the_pattern()
    {
        // Two columns that the middle of the room would part along the slot.
        var slot = new Stroke(Role.Cut, [new(99, 20), new(101, 20), new(101, 180), new(99, 180)], Closed: true);
        Drawing drawing = Strip(200, 200, 0);
        drawing = drawing with { Strokes = [.. drawing.Strokes, slot] };
        TilePlan plan = TileLayout.Plan(drawing, PaperSpec.Default with { Orientation = PaperOrientation.Portrait });
        Assert.Equal(2, plan.Printed.Count());
        Box overlap = new(new Vec2(plan.Tiles[1].Window.Min.X, 0), new Vec2(plan.Tiles[0].Window.Max.X, 200));
        Assert.Equal(10, overlap.Width, 1e-9);
        Assert.Empty(Clip.Line(slot.Points, true, overlap));
    }

    [Fact]
    public void Words_are_read_from_below_however_the_drawing_is_turned()
    {
        var text = new Lettering(Role.Note, "OUTSIDE", new Vec2(10, 20), 4, 0.3, Anchor.Right);
        var drawing = new Drawing("d", [], [text]);
        foreach (double angle in new[] { 0.5, 1.5, 2.0, 3.1, -2.5, -1.0 })
        {
            Lettering turned = drawing.Turned(angle).Letterings[0];
            Assert.InRange(turned.Angle, -0.5 * Math.PI - 1e-9, 0.5 * Math.PI + 1e-9);
            // It fills the same room as if it had been turned blindly.
            Vec2[] room = [.. TextOutline.Of(text).Corners.Select(p => p.Rotate(angle))];
            Assert.All(TextOutline.Of(turned).Corners, c => Assert.True(room.Min(p => (p - c).Length) < 1e-9));
        }
    }

    [Fact]
    public void The_numbers_of_the_grid_run_on_over_all_sheets()
    {
        TilePlan plan = TileLayout.Plan(Strip(500, 600, 0), PaperSpec.Default);
        ImmutableArray<Vec2> marks = [];
        int read = 0;
        foreach (Tile tile in plan.Printed)
        {
            Page page = TilePage.Draw(plan, tile, (2, 10), [], new TileWords("p", "j", "s"));
            Box window = TileLayout.WindowOnPaper(plan);
            Vec2 origin = plan.Tiles[^plan.Columns].Window.Min, shift = tile.Window.Min - window.Min - origin;
            foreach (PageText text in page.Texts.Where(t => t.Text.All(char.IsAsciiDigit) && window.Contains(t.At)))
            {
                double told = double.Parse(text.Text, CultureInfo.InvariantCulture);
                Vec2 at = text.At + shift;
                // Beside a tick that stands so far from the lower left corner of the whole.
                PageLine tick = page.Lines.Where(l => l.Pen == Pen.Fine && l.Points.Length == 2 && Math.Abs((l.Points[1] - l.Points[0]).Length - 3) < 1e-9).MinBy(l => (l.Points[0] - text.At).Length)!;
                Vec2 foot = tick.Points[0] + shift;
                Assert.True((at - foot).Length < 2);
                Assert.True(Math.Abs(foot.X - told) < 1e-6 || Math.Abs(foot.Y - told) < 1e-6, $"{told} stands at {foot}");
                read++;
            }
            // Every 50 mm both ways, also inside.
            Vec2[] middles = [.. page.Lines.Where(l => l.Pen == Pen.Fine && l.Points.Length == 2 && Math.Abs((l.Points[1] - l.Points[0]).Length - 3) < 1e-9 && l.Points[0].Y == l.Points[1].Y).Select(l => 0.5 * (l.Points[0] + l.Points[1]) + shift)];
            Assert.True(middles.Count(m => Whole(m.X) && Whole(m.Y)) >= 6);
            marks = [.. marks, .. middles.Where(m => Whole(m.X) && Whole(m.Y))];
        }
        Assert.True(read > 20);
        Assert.Contains(marks, m => Math.Abs(m.X - 450) < 1e-6);

        static bool Whole(double mm) => Math.Abs(mm / 50 - Math.Round(mm / 50)) < 1e-6;
    }

    [Fact]
    public void A_side_that_is_glued_under_says_so_and_by_which_sheet()
    {
        TilePlan plan = TileLayout.Plan(Strip(300, 400, 0), PaperSpec.Default with { Orientation = PaperOrientation.Portrait });
        Assert.Equal((2, 2), (plan.Rows, plan.Columns));
        string[][] words = [.. plan.Tiles.Select(t => TilePage.Draw(plan, t, (2, 5), [], new TileWords("p", "j", "s")).Texts.Select(x => x.Text).Where(x => x.EndsWith("glued over this side", StringComparison.Ordinal)).Order().ToArray())];
        Assert.Equal(["1.2 is glued over this side", "2.1 is glued over this side"], words[0]);
        Assert.Equal(["2.2 is glued over this side"], words[1]);
        Assert.Equal(["2.2 is glued over this side"], words[2]);
        Assert.Empty(words[3]);
    }

    // A rectangle that leans, degrees counter-clockwise.
    private static Drawing Strip(double width, double height, double lean)
    {
        ImmutableArray<Vec2> corners = [Vec2.Zero, new(width, 0), new(width, height), new(0, height)];
        return new Drawing("Strip", [new Stroke(Role.Cut, [.. corners.Select(p => p.Rotate(lean * Math.PI / 180))], Closed: true)], []);
    }
}

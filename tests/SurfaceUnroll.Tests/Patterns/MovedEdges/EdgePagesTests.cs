using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Files.Output;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;
using SurfaceUnroll.Patterns.MovedEdges;
using SurfaceUnroll.Tests.Files.JobFiles;

namespace SurfaceUnroll.Tests.Patterns.MovedEdges;

public class EdgePagesTests
{
    private static readonly Lazy<Development> Cowl = new(() => Developer.Develop(JobFile.Read(Fixtures.Text("jobs/pump-cowl-freedom.json")).Job!));

    private static PanelDevelopment Panel => Cowl.Value.Panels[0];

    private static TilePlan Plan => EdgePages.Plan(Panel, Cowl.Value.Job)!;

    [Fact]
    public void Template_is_the_moved_edge_at_true_scale_closed_from_end_to_end()
    {
        Stroke cut = Assert.Single(EdgeTemplate.Of(Panel, Panel.Freedom!, Cowl.Value.Job).Strokes, s => s.Role == Role.Cut);
        Assert.True(cut.Closed);
        // Across is y and up is z of the upright rear arch. Places 1.5 mm apart on arcs of 40 mm and more.
        foreach (var move in Panel.Freedom!.Moves)
            Assert.InRange(Enumerable.Range(1, cut.Points.Length - 1).Min(i => Away(cut.Points[i - 1], cut.Points[i], new Vec2(move.Is.Y, move.Is.Z))), 0, 0.01);
        double edge = Enumerable.Range(1, cut.Points.Length - 1).Sum(i => (cut.Points[i] - cut.Points[i - 1]).Length);
        Assert.Equal(Panel.Freedom.Edge.Length, edge, 0.02);
        Assert.Equal(300, (cut.Points[^1] - cut.Points[0]).Length, 1e-6);
        Assert.True(cut.Points[0].X < cut.Points[^1].X, "its left end is on the left");
    }

    [Fact]
    public void Measured_edge_is_drawn_beside_it_where_they_are_apart()
    {
        Drawing drawing = EdgeTemplate.Of(Panel, Panel.Freedom!, Cowl.Value.Job);
        Stroke[] measured = [.. drawing.Strokes.Where(s => s.Role == Role.Element)];
        Assert.NotEmpty(measured);
        Vec2[] drawn = [.. measured.SelectMany(s => s.Points)], was = [.. Panel.Freedom!.Moves.Where(m => Math.Abs(m.Move) >= 0.1).Select(m => new Vec2(m.Was.Y, m.Was.Z))];
        Assert.Equal(was.Length, drawn.Length);
        Assert.All(was, p => Assert.InRange(drawn.Min(q => (q - p).Length), 0, 1e-9));
    }

    [Fact]
    public void Numbered_ticks_stand_on_the_edge_and_point_into_the_paper_the_largest_move_among_them()
    {
        Drawing drawing = EdgeTemplate.Of(Panel, Panel.Freedom!, Cowl.Value.Job);
        Stroke[] ticks = [.. drawing.Strokes.Where(s => s.Role == Role.Mark)];
        ImmutableArray<Vec2> outline = drawing.Strokes.First(s => s.Role == Role.Cut).Points;
        Assert.True(ticks.Length >= 3);
        Assert.All(ticks, t => Assert.True(new CutOutline(outline).Depth(t.Points[1]) > 3));
        Assert.Contains(ticks, t => (t.Points[0] - new Vec2(Panel.Freedom!.Largest.Is.Y, Panel.Freedom.Largest.Is.Z)).Length < 1e-9);
        string largest = Panel.Freedom!.Largest.Move.ToString("+0.0;−0.0", CultureInfo.InvariantCulture) + " mm";
        Assert.Contains(drawing.Letterings, t => t.Text.EndsWith(largest, StringComparison.Ordinal));
    }

    [Fact]
    public void Pages_are_the_way_it_goes_together_its_sheets_and_the_page_of_moves()
    {
        ImmutableArray<Page> pages = EdgePages.Of(Panel, Cowl.Value.Job, Plan);
        Assert.Equal(Plan.Printed.Count() + 2, pages.Length);
        Assert.DoesNotContain(pages.SelectMany(p => p.Texts), t => t.Text.Contains("OUTSIDE FACE UP", StringComparison.Ordinal));
        Assert.All(pages.Take(pages.Length - 1), p => Assert.Contains(p.Texts, t => t.Text.Contains("LEFT END ON THE LEFT", StringComparison.Ordinal)));
        Page moves = pages[^1];
        PageLine measured = Assert.Single(moves.Lines, l => l.Pen == Pen.Chain), moved = Assert.Single(moves.Lines, l => l.Pen == Pen.Wide);
        Assert.Equal(measured.Points.Length, moved.Points.Length);
        // The largest is drawn about a centimetre long, and everything stands on the page.
        Assert.InRange(measured.Points.Zip(moved.Points, (a, b) => (b - a).Length).Max(), 3, 12);
        Assert.All(moves.Lines.SelectMany(l => l.Points).Concat(moves.Texts.Select(t => t.At)), p => Assert.True(p.X > 0 && p.Y > 0 && p.X < moves.Width && p.Y < moves.Height));
    }

    [Fact]
    public void File_is_written_where_a_curve_was_moved_and_no_panel_has_its_name()
    {
        Assert.Single(PatternFiles.Of(Cowl.Value), f => f.Name == "cowl-moved-edge.pdf");
        Assert.DoesNotContain(PatternFiles.Of(Cowl.Value with { Panels = [Panel with { Freedom = null }, Cowl.Value.Panels[1]] }), f => f.Name.EndsWith("-moved-edge.pdf", StringComparison.Ordinal));
        JobReading reading = JobFile.Read(Fixtures.Text("jobs/pump-cowl-freedom.json").Replace("rear plate", "cowl moved edge", StringComparison.Ordinal));
        Assert.Single(reading.Faults, f => f.Code == "panel-name-twice");
    }

    [Fact]
    public void Edge_that_is_all_but_straight_is_given_paper_to_hold()
    {
        const string text = """
            { "units": "mm", "curves": { "front": { "points": [[-300, 3], [300, -3]] }, "rear": { "points": [[-300, -3], [300, 3]], "at": { "origin": [400, 0, 0] } } },
              "panels": [{ "name": "fin", "loft": ["front", "rear"], "freedom": { "rear": 4 } }] }
            """;
        Development fin = Developer.Develop(JobFile.Read(text).Job!);
        Drawing drawing = EdgeTemplate.Of(fin.Panels[0], fin.Panels[0].Freedom!, fin.Job);
        Assert.True(drawing.Bounds.Height > 40);
    }

    private static double Away(Vec2 a, Vec2 b, Vec2 p)
    {
        Vec2 ab = b - a;
        double t = Math.Clamp((p - a).Dot(ab) / Math.Max(ab.Dot(ab), 1e-30), 0, 1);
        return (p - (a + t * ab)).Length;
    }
}

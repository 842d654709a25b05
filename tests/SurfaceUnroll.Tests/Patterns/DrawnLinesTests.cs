using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;

namespace SurfaceUnroll.Tests.Patterns;

public class DrawnLinesTests
{
    [Fact]
    public void The_first_and_the_last_line_of_a_rolled_area_are_drawn_where_they_lie_inside()
    {
        PanelDevelopment bent = FittedSamples.Bent().Panels[0];
        // Eleven lines, of which the outer two lie on the front and the rear edge.
        Assert.Equal(Enumerable.Range(2, 9), PatternDrawing.Inner(bent).Select(e => e.Number));
        // A rolled area from line 3 to line 7.
        Assert.Equal(Enumerable.Range(3, 5), PatternDrawing.Inner(bent with { Elements = bent.Elements[2..7] }).Select(e => e.Number));
    }

    [Fact]
    public void The_outer_lines_of_a_loft_are_drawn_where_a_trim_has_taken_its_sides()
    {
        PanelDevelopment half = Samples.HalfCylinder().Panels[0];
        int[] whole = [.. PatternDrawing.Inner(half).Select(e => e.Number)];
        Assert.Equal(Enumerable.Range(2, 11), whole);
        int[] trimmed = [.. PatternDrawing.Inner(half with { Elements = [.. half.Elements.Where(e => e.Number is > 3 and < 9)] }).Select(e => e.Number)];
        Assert.Equal(Enumerable.Range(4, 5), trimmed);
    }

    [Fact]
    public void A_line_along_a_bend_is_not_drawn_beside_it()
    {
        PanelDevelopment bent = FittedSamples.Bent().Panels[0];
        BendLine bend = bent.Bends[0];
        // Line 5 stands at 100 from the front.
        bent = bent with { Bends = [bend with { Centre = [new Vec2(-150, -100.5), new Vec2(150, -100.5)], Tangents = [] }] };
        Assert.DoesNotContain(PatternDrawing.Inner(bent), e => e.Number == 5);
    }

    [Fact]
    public void Edges_of_a_plate_that_are_called_front_and_rear_by_chance_make_no_centreline_and_are_named_inside()
    {
        Development plate = FittedSamples.Plate(), bent = FittedSamples.Bent();
        PanelDevelopment flat = plate.Panels[0];
        BlankEdge arch = flat.Edges[0] with { Name = "front" }, chord = flat.Edges[1] with { Name = "rear" };
        foreach (bool turned in new[] { false, true })
        {
            BlankEdge front = turned ? arch with { Flat = [.. arch.Flat.Reverse()] } : arch;
            Drawing drawing = PatternDrawing.Of(flat with { Edges = [front, chord], Marks = [], Allowances = [] }, plate.Job, []);
            Assert.DoesNotContain(drawing.Strokes, s => s.Role == Role.Centre);
            Assert.True(new CutOutline(flat.Net).Depth(Assert.Single(drawing.Letterings, t => t.Text == "FRONT").At) > 0);
        }
        // The edges of a bent plate with a plan are curves too; one of a width has a front and a rear.
        PanelDevelopment panel = bent.Panels[0];
        Assert.DoesNotContain(PatternDrawing.Of(panel, bent.Job, []).Strokes, s => s.Role == Role.Centre);
        panel = panel with { Spec = panel.Spec with { Bent = panel.Spec.Bent! with { Width = 300 } } };
        Assert.Contains(PatternDrawing.Of(panel, bent.Job, []).Strokes, s => s.Role == Role.Centre);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void No_line_runs_through_words(int which)
    {
        Development sample = which == 0 ? FittedSamples.Cover() : FittedSamples.Bent();
        Drawing drawing = PatternDrawing.Of(sample.Panels[0], sample.Job, sample.Joints);
        CutOutline[] words = [.. drawing.Letterings.Select(t => new CutOutline(TextOutline.Of(t).Corners))];
        foreach (Stroke line in drawing.Strokes.Where(s => s.Role is Role.Element or Role.Centre))
            for (int i = 0; i + 1 < line.Points.Length; i++)
                for (double t = 0; t <= 1; t += 0.002)
                    Assert.All(words, w => Assert.True(w.Depth(Vec2.Lerp(line.Points[i], line.Points[i + 1], t)) < 1e-6));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(11.2)]
    public void A_tick_at_a_corner_leans_to_the_metal(double lip)
    {
        Development cover = FittedSamples.Cover();
        PanelDevelopment panel = cover.Panels[0];
        Vec2 corner = panel.FindEdge("rear")!.Flat[0];
        // With a lip the cut line goes straight on beyond the corner, so that the tick would lie on it outside too.
        ImmutableArray<Vec2> cut = [corner - new Vec2(0, lip), new(-corner.X, corner.Y - lip), .. panel.FindEdge("front")!.Flat.Reverse()];
        panel = panel with
        {
            Cut = cut,
            Net = cut,
            Openings = [],
            Bends = [],
            Notches = [],
            Allowances = lip > 0 ? [new EdgeAllowance("rear", "A", JointKind.Lap, lip, CornerStyle.Square)] : [],
            Marks = [panel.Marks[0] with { Flat = corner }],
        };
        var outline = new CutOutline(cut);
        Stroke[] ticks = [.. PatternDrawing.Of(panel, cover.Job, []).Strokes.Where(s => s.Role == Role.Mark && s.Points.Any(p => (p - corner).Length < 1e-6))];
        Stroke tick = Assert.Single(ticks);
        Assert.True(outline.Depth(tick.Points[^1]) > 1.5);
        if (lip > 0) Assert.True(outline.Depth(0.5 * (tick.Points[0] + corner)) > 1.5);
    }
}

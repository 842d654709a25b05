using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Tests.Patterns;

public class FittingDrawingTests
{
    private static readonly Development Cover = FittedSamples.Cover(), Plate = FittedSamples.Plate();
    private static readonly Drawing Drawn = Of(Cover), Flat = Of(Plate);

    [Fact]
    public void Every_cut_line_is_drawn_once_and_closed_the_outer_one_first()
    {
        PanelDevelopment panel = Cover.Panels[0];
        Stroke[] cuts = [.. Drawn.Strokes.Where(s => s.Role == Role.Cut)];
        Assert.All(cuts, s => Assert.True(s.Closed));
        Assert.Equal([panel.Cut, .. panel.Openings.Select(o => o.Cut)], cuts.Select(s => s.Points));
        Assert.Equal([Plate.Panels[0].Cut, .. Plate.Panels[0].InnerCuts], Flat.Strokes.Where(s => s.Role == Role.Cut).Select(s => s.Points));
    }

    [Fact]
    public void Finished_edges_are_drawn_where_metal_is_left_on_or_taken_off_and_not_where_a_bend_shows_them()
    {
        Stroke lamp = Assert.Single(Drawn.Strokes, s => s.Role == Role.Net);
        Assert.True(lamp.Closed);
        Assert.Equal(Cover.Panels[0].Openings[0].Flat, lamp.Points);
        Stroke arch = Assert.Single(Flat.Strokes, s => s.Role == Role.Net);
        Assert.Equal(Plate.Panels[0].FindEdge("arch")!.Flat, arch.Points);
    }

    [Fact]
    public void Bends_show_their_middle_and_where_they_begin_and_end()
    {
        Stroke[] bends = [.. Drawn.Strokes.Where(s => s.Role == Role.Bend)];
        Assert.Equal([false, true, true], bends.Select(s => s.Dashed));
        Assert.Equal(Cover.Panels[0].Bends[0].Centre.AsEnumerable(), bends[0].Points.AsEnumerable());
        Lettering word = Assert.Single(Drawn.Letterings, t => t.Role == Role.Bend);
        Assert.Equal("bend 1  DOWN 85–95°  R 0.9", word.Text);
        Assert.Contains(Of(FittedSamples.Bent()).Letterings, t => t.Text == "bend 1  UP 90°  R 0.9");
        // 0.9 mm are 0.0354 in: 1/64 would be too coarse.
        Assert.Contains(Of(FittedSamples.Cover(LengthUnit.Inch, radius: 200)).Letterings, t => t.Text == "bend 1  DOWN 85–95°  R 0.035");
    }

    [Fact]
    public void Of_a_slight_bend_only_the_middle_is_drawn()
    {
        PanelDevelopment panel = Cover.Panels[0];
        BendLine bend = panel.Bends[0] with { Tangents = [[.. panel.Bends[0].Centre.Select(p => p + new Vec2(0, 0.3))], [.. panel.Bends[0].Centre.Select(p => p - new Vec2(0, 0.3))]] };
        Assert.Single(PatternDrawing.Of(panel with { Bends = [bend] }, Cover.Job, []).Strokes, s => s.Role == Role.Bend);
    }

    [Fact]
    public void Ticks_run_across_the_finished_edge_from_the_cut_line_to_six_millimetres_inside()
    {
        Stroke[] ticks = [.. Drawn.Strokes.Where(s => s.Role == Role.Mark && s.Points.Length == 2 && s.Points.Any(p => Math.Abs(p.Y + 394) < 1e-9))];
        Assert.Equal(9, ticks.Length);
        Assert.All(ticks, t => Assert.Equal(t.Points[0].X, t.Points[1].X, 1e-9));
        // The fifth stands over the notch, of which the bottom is 3 mm outside the finished edge; the others cross the whole lip of 11.2 mm.
        double[] lengths = [.. ticks.Select(t => (t.Points[1] - t.Points[0]).Length).Order()];
        Assert.Equal(9, lengths[0], 1e-9);
        Assert.All(lengths[1..], l => Assert.Equal(17.2, l, 1e-9));
    }

    [Fact]
    public void A_tick_on_the_centreline_is_not_drawn_twice()
    {
        // The fifth mark stands in the middle: its tick begins at 394, and the centreline goes on past the notch, of which the bottom is at 403.
        Stroke[] centre = [.. Drawn.Strokes.Where(s => s.Role == Role.Centre)];
        Assert.All(centre[..^1], s => Assert.True(s.Points[1].Y >= -394 - 1e-9));
        Assert.Equal(-403, centre[^1].Points[0].Y, 1e-9);
        // Over the lip of 11.2 mm and 4 mm beyond it.
        Assert.Equal(-415.2, centre[^1].Points[1].Y, 1e-9);
    }

    [Fact]
    public void Marks_are_labelled_upright_inside_the_piece()
    {
        Lettering[] labels = [.. Drawn.Letterings.Where(t => t.Role == Role.Mark)];
        Assert.Equal(Enumerable.Range(1, 9).Select(i => $"A{i}"), labels.Select(t => t.Text).Order(StringComparer.Ordinal));
        Assert.All(labels, t => Assert.True(t.Angle == 0 && t.At.Y > -400));
        Assert.Equal(7, Flat.Letterings.Count(t => t.Role == Role.Mark));
    }

    [Fact]
    public void Where_marks_crowd_together_the_first_and_the_last_keep_their_labels_and_all_keep_their_ticks()
    {
        PanelDevelopment panel = Cover.Panels[0];
        MatchMark[] many = [.. Enumerable.Range(0, 200).Select(i => panel.Marks[0] with { Number = i + 1, Flat = new Vec2(-220 + 2.2 * i, -400) })];
        Drawing drawing = PatternDrawing.Of(panel with { Marks = [.. many] }, Cover.Job, []);
        string[] labels = [.. drawing.Letterings.Where(t => t.Role == Role.Mark).Select(t => t.Text)];
        Assert.Contains("A1", labels);
        Assert.Contains("A200", labels);
        Assert.InRange(labels.Length, 2, 199);
        Assert.Equal(200, drawing.Strokes.Count(s => s.Role == Role.Mark && s.Points.Any(p => Math.Abs(p.Y + 394) < 1e-9)));
    }

    [Fact]
    public void A_joint_of_a_longer_name_parts_it_from_the_number()
    {
        MatchMark mark = Cover.Panels[0].Marks[0];
        Assert.Equal("A1", JointWords.Label(mark));
        Assert.Equal("seam 2-1", JointWords.Label(mark with { Joint = "seam 2" }));
    }

    [Fact]
    public void Openings_have_a_cross_inside_them_and_their_name_and_size_once_for_a_pattern()
    {
        foreach (BlankOpening opening in Cover.Panels[0].Openings)
        {
            Stroke[] cross = [.. Drawn.Strokes.Where(s => s.Role == Role.Mark && s.Points.Length == 2 && (0.5 * (s.Points[0] + s.Points[1]) - opening.Centre).Length < 1e-9)];
            Assert.Equal(2, cross.Length);
            Assert.All(cross.SelectMany(s => s.Points), p => Assert.True(new CutOutline(opening.Cut).Depth(p) > 0));
        }
        string[] words = [.. Drawn.Letterings.Select(t => t.Text)];
        Assert.Single(words, "lamp Ø 90");
        Assert.Single(words, "row: 6 × Ø 5.5");
        Assert.DoesNotContain(words, w => w.Contains("row 1", StringComparison.Ordinal));
    }

    [Fact]
    public void No_line_but_its_cross_runs_over_an_opening()
    {
        Stroke[] lines = [.. Drawn.Strokes.Where(s => s.Role is Role.Element or Role.Centre or Role.Bend)];
        foreach (BlankOpening opening in Cover.Panels[0].Openings)
        {
            var hole = new CutOutline(opening.Cut);
            foreach (Stroke line in lines)
                for (int i = 0; i + 1 < line.Points.Length; i++)
                    for (double t = 0; t <= 1; t += 0.002) Assert.True(hole.Depth(Vec2.Lerp(line.Points[i], line.Points[i + 1], t)) < 1e-6);
        }
        // The lamp is 96 mm wide where lines stand 39 mm apart: two or three of them end at it on both sides.
        var lamp = new CutOutline(Cover.Panels[0].Openings[0].Cut);
        int ends = lines.Where(s => s.Role == Role.Element).Sum(s => s.Points.Count(p => Math.Abs(lamp.Depth(p)) < 1e-6));
        Assert.True(ends is 4 or 6, $"{ends} ends");
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void Words_stand_on_metal_or_whole_in_a_hole_and_clear_of_bends_ticks_and_one_another(int which)
    {
        Development sample = which switch { 0 => Cover, 1 => Plate, _ => FittedSamples.Bent(4) };
        PanelDevelopment panel = sample.Panels[0];
        Drawing drawing = Of(sample);
        CutOutline outline = CutOutline.Of(panel);
        TextOutline[] words = [.. drawing.Letterings.Select(TextOutline.Of)];
        Assert.All(words, w => Assert.True(outline.Holds(w, 0.4) || panel.Openings.Any(o => new CutOutline(o.Cut).Holds(w, 0.4))));
        Stroke[] lines = [.. drawing.Strokes.Where(s => s.Role == Role.Bend || (s.Role == Role.Mark && s.Points.Length == 2))];
        for (int i = 0; i < words.Length; i++)
        {
            for (int j = 0; j < i; j++) Assert.False(words[i].Overlaps(words[j]), $"“{drawing.Letterings[i].Text}” runs into “{drawing.Letterings[j].Text}”");
            Assert.All(lines, line => Assert.False(words[i].Overlaps(Thin(line)), $"“{drawing.Letterings[i].Text}” hides a line"));
        }
        foreach (string word in new[] { panel.Spec.Name, "Half cylinder", "OUTSIDE FACE UP" }) Assert.Contains(drawing.Letterings, t => t.Text == word);
    }

    [Fact]
    public void Lines_across_a_bent_plate_are_read_from_below_and_numbered_at_both_ends()
    {
        Drawing drawing = Of(FittedSamples.Bent());
        Lettering[] labels = [.. drawing.Letterings.Where(t => t.Role == Role.Element)];
        Assert.NotEmpty(labels);
        Assert.All(labels, t => Assert.Equal(0, t.Angle, 1e-9));
        Assert.Contains(labels, t => t.Text == "2  R 500" && t.At.X < 0 && t.Anchor == Anchor.Left);
        Assert.Contains(labels, t => t.Text == "2  R 500" && t.At.X > 0 && t.Anchor == Anchor.Right);
    }

    [Fact]
    public void A_flat_plate_has_no_centreline_and_its_edges_are_named_inside()
    {
        Assert.DoesNotContain(Flat.Strokes, s => s.Role == Role.Centre);
        var net = new CutOutline(Plate.Panels[0].Net);
        foreach (string edge in new[] { "ARCH", "CHORD" }) Assert.True(net.Depth(Assert.Single(Flat.Letterings, t => t.Text == edge).At) > 0);
    }

    [Fact]
    public void An_edge_in_two_parts_has_both_drawn_finished_and_no_centreline_between_them()
    {
        PanelDevelopment panel = Samples.HalfCylinder().Panels[0];
        BlankEdge front = panel.Edges[0];
        BlankEdge left = front with { Flat = front.Flat[..40] }, right = front with { Flat = front.Flat[80..] };
        Drawing drawing = PatternDrawing.Of(
            panel with { Edges = [left, right, .. panel.Edges[1..]], Allowances = [new EdgeAllowance("front", "A", JointKind.Lap, 10, CornerStyle.Mitre)] }, Cover.Job, []);
        Assert.Equal(2, drawing.Strokes.Count(s => s.Role == Role.Net));
        Assert.DoesNotContain(drawing.Strokes, s => s.Role == Role.Centre);
    }

    private static TextOutline Thin(Stroke line)
    {
        Vec2 a = line.Points[0], b = line.Points[^1], side = 0.05 * (b - a).Unit.Left;
        return new TextOutline([a - side, b - side, b + side, a + side]);
    }

    private static Drawing Of(Development development) => PatternDrawing.Of(development.Panels[0], development.Job, development.Joints);
}

using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Tests.Patterns;

public class EdgeAndOpeningWordsTests
{
    private static readonly Development Cover = FittedSamples.Cover();

    [Fact]
    public void An_edge_says_what_it_meets_and_how()
    {
        Assert.Contains(Of(Cover, Cover.Joints).Letterings, t => t.Text == "REAR → Front plate/arch, lip 12 mm here");
        Assert.Contains(Of(Cover, Cover.Joints).Letterings, t => t.Text == "FRONT");
        Assert.Contains(Of(Cover, []).Letterings, t => t.Text == "REAR");
    }

    [Fact]
    public void An_edge_with_two_joints_tells_both()
    {
        JointFit first = Cover.Joints[0], second = first with { Label = "B", Mates = [first.Mates[0], first.Mates[1] with { Edge = new EdgeName("Coupon", "rim") }] };
        string[] words = [.. Of(Cover, [first, second]).Letterings.Select(t => t.Text)];
        Assert.Contains("REAR → Front plate/arch, lip 12 mm here", words);
        Assert.Contains("REAR → Coupon/rim, lip 12 mm here", words);
    }

    [Fact]
    public void The_mate_of_a_lip_says_that_it_is_there_and_an_edge_of_the_same_piece_is_not_told_its_piece_where_room_is_short()
    {
        JointFit joint = Cover.Joints[0];
        PanelDevelopment plate = FittedSamples.Plate().Panels[0];
        Assert.Equal([" → Cover/rear, lip 12 mm there", " → Cover, lip 12 mm there", " → Cover"], EdgeWords.Joints("arch", plate, [joint], LengthUnit.Millimetre).Single().AsEnumerable());
        JointFit own = joint with { Spec = joint.Spec with { Kind = JointKind.Butt, Width = 1 }, Mates = [joint.Mates[0], joint.Mates[0] with { Edge = new EdgeName("Cover", "front") }] };
        Assert.Equal(" → front, butt, gap 1 mm", EdgeWords.Joints("rear", Cover.Panels[0], [own], LengthUnit.Millimetre).Single()[1]);
        JointFit single = joint with { Spec = joint.Spec with { Kind = JointKind.Trim, Width = 4 }, Mates = [joint.Mates[0]] };
        Assert.Equal([", trim 4 mm"], EdgeWords.Joints("rear", Cover.Panels[0], [single], LengthUnit.Millimetre).Single().AsEnumerable());
        Assert.Empty(EdgeWords.Joints("front", Cover.Panels[0], [joint], LengthUnit.Millimetre));
    }

    [Fact]
    public void Edges_of_one_name_are_told_apart_by_where_they_lie()
    {
        PanelDevelopment panel = Cover.Panels[0];
        BlankEdge front = panel.Edges[0], left = panel.Edges.Single(e => e.Name == "left");
        BlankEdge[] across = [front with { Flat = front.Flat[80..] }, front with { Flat = front.Flat[..40] }];
        Assert.Equal(["front, right part", "front, left part", "rear"], EdgeWords.Names(panel with { Edges = [.. across, panel.FindEdge("rear")!] }).AsEnumerable());
        BlankEdge[] along = [.. new[] { 0.0, -300, -150 }.Select(y => left with { Flat = [new Vec2(0, y), new Vec2(0, y - 50)] })];
        Assert.Equal(["left, part 1 of 3 from the front", "left, part 3 of 3 from the front", "left, part 2 of 3 from the front"], EdgeWords.Names(panel with { Edges = [.. along] }).AsEnumerable());
    }

    [Theory]
    [InlineData(60, 60, null)]
    [InlineData(60, 60.25, null)]
    [InlineData(60, 64.3, "oval on the blank, 60.0 × 64.3 mm")]
    [InlineData(61, 60, "oval on the blank, 60.0 × 61.0 mm")]
    public void A_round_opening_that_is_an_oval_on_the_blank_says_so(double across, double along, string? words) =>
        Assert.Equal(words, OpeningExtents.OnBlank([Oval("lamp", across, along)], Asking(new RoundShape(60)), Cover.Job));

    [Fact]
    public void An_oval_is_told_on_the_drawing_and_however_it_is_turned()
    {
        PanelDevelopment panel = Asking(new RoundShape(60)) with { Openings = [Oval("lamp", 60, 64.3)] };
        string[] words = [.. PatternDrawing.Of(panel, Cover.Job, []).Letterings.Select(t => t.Text)];
        Assert.Contains("lamp Ø 60", words);
        Assert.Contains("oval on the blank, 60.0 × 64.3 mm", words);
        Assert.Equal("Ø 60, oval on the blank, 60.0 × 64.3 mm", OpeningGroup.Of(panel, Cover.Job).Single().Measures);
        BlankOpening turned = Oval("lamp", 60, 64.3);
        turned = turned with { Flat = [.. turned.Flat.Select(p => p.Rotate(0.6))] };
        Assert.Equal("oval on the blank, 60.0 × 64.3 mm", OpeningExtents.OnBlank([turned], panel, Cover.Job));
    }

    [Fact]
    public void Inch_jobs_pattern_and_rectangles_have_their_own_words()
    {
        // 63.5 mm are 2 1/2 in.
        Assert.Equal("oval on the blank, 2 × 2 1/2\"", OpeningExtents.OnBlank([Oval("lamp", 50.8, 63.5)], Asking(new RoundShape(50.8)), Cover.Job with { Units = LengthUnit.Inch }));
        Assert.Equal("oval on the blank, 60.0 × 64.0–66.0 mm",
            OpeningExtents.OnBlank([Oval("lamp 1", 60, 64), Oval("lamp 2", 60, 66)], Asking(new RoundShape(60), new GridPattern(2, 1, 100, 0)), Cover.Job));
        BlankOpening box = Oval("lamp", 1, 1) with { Flat = [new(0, 0), new(0, 40), new(86, 40), new(86, 0)] };
        Assert.Equal("on the blank, 86.0 × 40.0 mm", OpeningExtents.OnBlank([box], Asking(new RectangleShape(80, 40, 0)), Cover.Job));
        Assert.Null(OpeningExtents.OnBlank([box], Asking(new RectangleShape(86, 40, 0)), Cover.Job));
        Assert.Null(OpeningExtents.OnBlank([box], Asking(new CurveShape("rim")), Cover.Job));
    }

    [Theory]
    [InlineData("b", "b2", 2)]
    [InlineData("b1", "b2", 2)]
    [InlineData("b 1", "b 2", 1)]
    [InlineData("c", "b 2", 2)]
    [InlineData("b 1", "c 2", 2)]
    public void Only_names_that_are_numbered_after_a_space_are_one_pattern(string first, string second, int groups)
    {
        ImmutableArray<OpeningGroup> found = OpeningGroup.Of(Cover.Panels[0] with { Openings = [Oval(first, 6, 6), Oval(second, 6, 6)] }, Cover.Job);
        Assert.Equal(groups, found.Length);
        if (groups == 1) Assert.Equal(("b", 2), (found[0].Name, found[0].Count));
        else Assert.Equal([first, second], found.Select(g => g.Name));
    }

    [Fact]
    public void Holes_of_two_sizes_are_no_pattern()
    {
        PanelDevelopment panel = Cover.Panels[0] with { Openings = [Oval("b 1", 6, 6), Oval("b 2", 8, 8) with { Size = "Ø 8" }] };
        Assert.Equal(["b 1", "b 2"], OpeningGroup.Of(panel, Cover.Job).Select(g => g.Name));
    }

    private static PanelDevelopment Asking(OpeningShape shape, OpeningPattern? pattern = null) =>
        Cover.Panels[0] with { Spec = Cover.Panels[0].Spec with { Openings = [new OpeningSpec("lamp", shape, Vec2.Zero, 0, pattern, null, null)] } };

    private static BlankOpening Oval(string name, double across, double along)
    {
        var centre = new Vec2(-100, -150);
        ImmutableArray<Vec2> ring = [.. Enumerable.Range(0, 180).Select(i => Vec2.FromAngle(-Math.Tau * i / 180)).Select(d => centre + new Vec2(0.5 * across * d.X, 0.5 * along * d.Y))];
        return new BlankOpening(name, $"Ø {across:0.#}", default, centre, [], ring, 1, 1, ring);
    }

    private static Drawing Of(Development development, ImmutableArray<JointFit> joints) => PatternDrawing.Of(development.Panels[0], development.Job, joints);
}

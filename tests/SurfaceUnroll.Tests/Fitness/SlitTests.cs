using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;

namespace SurfaceUnroll.Tests.Fitness;

public class SlitTests
{
    private static Development Cut(ImmutableArray<CurveSpec> curves, params SlitSpec[] slits) => Crowned.Develop(curves, p => p with { Slits = [.. slits] });

    private static Notice Refusal(params SlitSpec[] slits) =>
        Assert.Single(Developer.Develop(Crowned.JobOf(Crowned.Dome, p => p with { Slits = [.. slits] })).Notices, n => n.Severity == Severity.Error);

    private static Vec3 Formed(PanelDevelopment panel, Vec2 flat) => panel.Mesh.Formed[panel.Mesh.Flat.IndexOf(flat)];

    // From one place of the cut line on, the way round, to another.
    private static double Along(PanelDevelopment panel, Vec2 from, Vec2 to)
    {
        int start = panel.Cut.IndexOf(from), n = panel.Cut.Length;
        int steps = (panel.Cut.IndexOf(to) - start + n) % n;
        return Crowned.Length(Enumerable.Range(0, steps + 1).Select(k => Formed(panel, panel.Cut[(start + k) % n])));
    }

    [Theory]
    [InlineData("front", 60, 40)]
    [InlineData("rear", 100, 55.5)]
    [InlineData("left", 77.7, 30)]
    [InlineData("right", 120, 61)]
    [InlineData("front", 1.3, 40)]
    public void A_cut_starts_and_ends_where_the_job_says(string edge, double at, double depth)
    {
        PanelDevelopment panel = Assert.Single(Cut(Crowned.Side, new SlitSpec(edge, at, depth)).Panels);
        SlitOpening slit = Assert.Single(panel.Slits);
        // The cut line runs counter-clockwise: rear from left to right, right from rear to front, front from right to left, left from front to rear.
        Vec2 leftFront = panel.FindEdge("left")!.Flat[0], rightFront = panel.FindEdge("right")!.Flat[0], leftRear = panel.FindEdge("left")!.Flat[^1];
        (double start, double one, double other) = edge switch
        {
            "front" => (Along(panel, slit.Mouth.Near, leftFront), Along(panel, slit.Tip, slit.Mouth.Near), Along(panel, slit.Mouth.Far, slit.Tip)),
            "rear" => (Along(panel, leftRear, slit.Mouth.Near), Along(panel, slit.Mouth.Near, slit.Tip), Along(panel, slit.Tip, slit.Mouth.Far)),
            "left" => (Along(panel, leftFront, slit.Mouth.Near), Along(panel, slit.Mouth.Near, slit.Tip), Along(panel, slit.Tip, slit.Mouth.Far)),
            _ => (Along(panel, slit.Mouth.Near, rightFront), Along(panel, slit.Tip, slit.Mouth.Near), Along(panel, slit.Mouth.Far, slit.Tip)),
        };
        Assert.Equal(at, start, 0.05);
        Assert.Equal(depth, one, 0.05);
        Assert.Equal(depth, other, 0.05);
    }

    [Fact]
    public void Cuts_whose_ends_lie_close_together_keep_their_own_depths()
    {
        PanelDevelopment panel = Assert.Single(Cut(Crowned.Side, new SlitSpec("front", 50, 40), new SlitSpec("front", 110, 41), new SlitSpec("left", 42, 20)).Panels);
        foreach (SlitOpening slit in panel.Slits.Take(2)) Assert.Equal(slit.Depth, Along(panel, slit.Tip, slit.Mouth.Near), 0.05);
        Assert.Equal(42, Along(panel, panel.FindEdge("left")!.Flat[0], panel.Slits[2].Mouth.Near), 0.05);
    }

    [Fact]
    public void A_cut_opens_on_a_dome_and_relieves_it()
    {
        Development result = Cut(Crowned.Dome, new SlitSpec("front", 80, 50));
        PanelDevelopment panel = Assert.Single(result.Panels), uncut = Assert.Single(Crowned.Develop(Crowned.Dome).Panels);
        SlitOpening slit = Assert.Single(panel.Slits);
        Assert.True(slit.Width > 0.1);
        Assert.Equal((slit.Mouth.Far - slit.Mouth.Near).Length, slit.Width, 0.05 * slit.Width);
        Assert.True(OutlineCheck.IsSimple(panel.Cut));
        Assert.Contains(result.Notices, n => n.Code == "slit-opens");
        Assert.True(panel.Strain.Energy < uncut.Strain.Energy);
        // The verdict goes by the metal off the tip.
        Assert.True(Crowned.Worst(panel.ClearOfTips!.Value) <= Crowned.Worst(panel.Strain));
        Assert.All(panel.DrawnMap!.Vertices, v => Assert.True(Math.Max(v.Stretch, v.Shrink) <= Crowned.Worst(panel.ClearOfTips!.Value) + 1e-9));
    }

    [Fact]
    public void Both_sides_of_a_cut_overlap_on_a_saddle_and_the_cut_line_is_still_simple()
    {
        Development result = Cut(Crowned.Saddle, new SlitSpec("front", 80, 50));
        PanelDevelopment panel = Assert.Single(result.Panels), uncut = Assert.Single(Crowned.Develop(Crowned.Saddle).Panels);
        Assert.True(panel.Slits[0].Width < -0.1);
        Assert.True(OutlineCheck.IsSimple(panel.Cut));
        Notice warning = Assert.Single(result.Notices, n => n.Code == "slit-overlaps");
        Assert.Equal((Severity.Warning, "panels[0].slits"), (warning.Severity, warning.Where));
        Assert.True(panel.Strain.Energy < uncut.Strain.Energy);
    }

    // Cutting takes a tie away: the least energy cannot rise. Moving the lines onto the cut changes the mesh, so each is compared with itself: the cut not yet relaxed.
    [Theory]
    [InlineData("front", 40, 20)]
    [InlineData("rear", 130, 90)]
    [InlineData("right", 90, 12)]
    public void Energy_never_rises_by_a_cut(string edge, double at, double depth)
    {
        double whole = Crowned.Develop(Crowned.Dome).Panels[0].Strain.Energy, cut = Cut(Crowned.Dome, new SlitSpec(edge, at, depth)).Panels[0].Strain.Energy;
        // A line moved by half a cell changes the energy of the mesh by terms of the square of the cells' turn, 0.02 rad and less.
        Assert.True(cut <= whole * (1 + 4e-4), $"{whole} to {cut}");
    }

    [Theory]
    [InlineData("front", 400, 20)]
    [InlineData("front", 0, 20)]
    [InlineData("front", 80, 400)]
    [InlineData("left", 90, 300)]
    public void A_cut_off_the_sheet_is_refused_with_the_sizes_of_the_edges(string edge, double at, double depth)
    {
        Notice error = Refusal(new SlitSpec(edge, at, depth));
        Assert.Equal(("slit-off-the-sheet", "panels[0].slits"), (error.Code, error.Where));
        Assert.Contains("rear: ", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("left", 60, 100)]
    [InlineData("rear", 80, 140)]
    [InlineData("front", 80, 30)]
    public void Cuts_that_meet_are_refused(string edge, double at, double depth) =>
        Assert.Equal("slits-meet", Refusal(new SlitSpec("front", 80, 90), new SlitSpec(edge, at, depth)).Code);

    [Fact]
    public void A_cut_left_to_be_found_relieves_the_sheet_from_the_edge_it_names()
    {
        double whole = Crowned.Develop(Crowned.Dome).Panels[0].Strain.Energy;
        PanelDevelopment anywhere = Cut(Crowned.Dome, new SlitSpec("", null, null)).Panels[0];
        Assert.True(anywhere.Strain.Energy < 0.95 * whole);
        PanelDevelopment left = Cut(Crowned.Dome, new SlitSpec("left", null, 40)).Panels[0];
        Assert.Equal(("left", 40), (left.Slits[0].Edge, left.Slits[0].Depth));
        // A dome that is the same both ways is cut in the middle.
        Assert.Equal(0.5 * left.FindEdge("left")!.FormedLength, left.Slits[0].At, 0.05);
    }

    [Fact]
    public void An_edge_with_a_cut_in_it_can_be_held()
    {
        Development result = Crowned.Develop(Crowned.Dome, p => p with { Slits = [new SlitSpec("front", 80, 50)], Hold = ["front", "rear"] });
        PanelDevelopment panel = Assert.Single(result.Panels);
        Assert.Equal(panel.FindEdge("rear")!.FormedLength, panel.FindEdge("rear")!.FlatLength, 1e-4 * panel.FindEdge("rear")!.FormedLength);
        // Of the cut edge, each side of the mouth.
        ImmutableArray<Vec2> front = panel.FindEdge("front")!.Flat;
        int mouth = front.IndexOf(panel.Slits[0].Mouth.Near);
        double flat = front.Take(mouth + 1).Zip(front.Skip(1), (a, b) => (b - a).Length).Take(mouth).Sum();
        Assert.Equal(80, flat, 0.05);
        Assert.Contains(result.Notices, n => n.Code == "held-edges-cost");
        Assert.True(panel.Strain.Energy > panel.Unheld!.Value.Energy);
    }
}

using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using SurfaceUnroll.Files.Output;
using SurfaceUnroll.Files.Report;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Tests.Files.JobFiles;
using SurfaceUnroll.Tests.Flattening;

namespace SurfaceUnroll.Tests.Jobs;

public class SheetPanelTests
{
    // A dish in a rectangle, forward at −x, its outside up.
    private static TriangleMesh Dish { get; } = TestMeshes.Grid(12, 16, (i, j) =>
    {
        (double y, double x) = (15.0 * (i - 6), 15.0 * (j - 8));
        return new Vec3(x, y, -(x * x + 1.3 * y * y) / 800);
    }).Turned(_ => true);

    private static Job MeshJob(params string[] hold) => Crowned.JobOf([]) with
    {
        Panels = [new PanelSpec("dish", [], ElementMatching.BendOnly) { Mesh = new MeshSource("dish.obj", Dish), Hold = [.. hold] }],
    };

    private static JsonElement Report(Development development) => JsonDocument.Parse(ReportJson.Write(development)).RootElement;

    [Fact]
    public void Both_halves_of_a_cover_whose_legs_are_element_lines_only_bend()
    {
        // The straight legs of the arch run to the places where the curves meet, and so do the element lines of the sheet along them: cells without area. Its right half never came to an end.
        Job job = Fixtures.Read("jobs/read-with-errors.json").Job!;
        PanelSpec cover = job.Panels.Single(p => p.Name == "cover") with { Pieces = 2, AutoTrim = false };
        job = job with { Panels = [cover], Joints = [], Curves = [.. job.Curves.Where(c => cover.CurveNames.Contains(c.Name)).Select(c => c with { Spec = c.Spec with { Errors = ReadingErrors.None } })] };
        Development development = Developer.Develop(job);
        Assert.Equal(2, development.Panels.Length);
        Assert.All(development.Panels, p => Assert.Equal(Verdict.BendsOnly, p.Verdict));
        // Each edge of a half is that of its mirror image.
        Assert.Equal(development.Panels[0].FindEdge("right")!.FlatLength, development.Panels[1].FindEdge("left")!.FlatLength, 1e-3);
        Assert.Equal(development.Panels[0].FindEdge("front")!.FlatLength, development.Panels[1].FindEdge("front")!.FlatLength, 1e-3);
        Assert.Equal(development.Panels[0].FlatArea, development.Panels[1].FlatArea, 0.1);
    }

    [Theory]
    [InlineData("front")]
    [InlineData("left rear")]
    [InlineData("front right rear left")]
    public void Held_edges_keep_their_length_within_a_hundredth_of_a_percent_and_the_cost_is_told(string names)
    {
        string[] edges = names.Split(' ');
        Development result = Crowned.Develop(Crowned.Side, p => p with { Hold = [.. edges] });
        PanelDevelopment panel = Assert.Single(result.Panels);
        foreach (string name in edges) Assert.InRange(panel.FindEdge(name)!.FlatLength / panel.FindEdge(name)!.FormedLength - 1, -1e-4, 1e-4);
        PanelDevelopment free = Assert.Single(Crowned.Develop(Crowned.Side).Panels);
        Assert.Equal(free.Strain, panel.Unheld);
        Assert.True(panel.Strain.Energy > free.Strain.Energy);
        Assert.Equal(Severity.Note, Assert.Single(result.Notices, n => n.Code == "held-edges-cost").Severity);
        JsonElement hold = Report(result).GetProperty("panels")[0].GetProperty("hold");
        Assert.Equal(edges, hold.GetProperty("edges").EnumerateArray().Select(e => e.GetString()!));
        Assert.Equal(panel.Strain.Energy - free.Strain.Energy, hold.GetProperty("energyCost").GetDouble(), 1e-9);
    }

    [Fact]
    public void A_mesh_has_one_edge_its_rim_lies_forward_up_and_has_a_strain_for_every_vertex()
    {
        PanelDevelopment panel = Assert.Single(Developer.Develop(MeshJob()).Panels);
        BlankEdge rim = Assert.Single(panel.Edges);
        Assert.Equal("rim", rim.Name);
        Assert.Equal(rim.Flat[0], rim.Flat[^1]);
        Assert.Equal(2 * (12 + 16), panel.Cut.Length);
        Assert.Empty(panel.Elements);
        // Corners: left front, right front, left rear, right rear.
        Vec2 leftFront = At(0, 0), rightFront = At(12, 0), leftRear = At(0, 16);
        Assert.True(leftFront.Y > leftRear.Y + 100 && rightFront.X > leftFront.X + 100);
        // The dish is its own mirror image but for its diagonals, so forward is up to within their part of the shape: (turn of a cell)²/12.
        Assert.Equal(0, Math.Atan2(rightFront.Y - leftFront.Y, rightFront.X - leftFront.X), 0.01);
        ImmutableArray<OutputFile> files = PatternFiles.Of(new Development(MeshJob(), [panel], []));
        string table = Encoding.ASCII.GetString(files.Single(f => f.Name == "dish-strain.csv").Content.ToArray());
        Assert.Equal(1 + Dish.Places.Length, table.Count(c => c == '\n'));

        Vec2 At(int i, int j) => panel.Mesh.Flat[Enumerable.Range(0, Dish.Places.Length).MinBy(v => (Dish.Places[v] - new Vec3(15.0 * (j - 8), 15.0 * (i - 6), Dish.Places[v].Z)).Length)];
    }

    [Fact]
    public void The_rim_of_a_mesh_can_be_held()
    {
        Development result = Developer.Develop(MeshJob("rim"));
        PanelDevelopment panel = Assert.Single(result.Panels);
        Assert.InRange(panel.Edges[0].FlatLength / panel.Edges[0].FormedLength - 1, -1e-4, 1e-4);
        Assert.True(panel.Strain.Energy > panel.Unheld!.Value.Energy);
        Assert.Contains(result.Notices, n => n.Code == "held-edges-cost");
    }

    // The dome asks for 1 to 3 %.
    [Theory]
    [InlineData("mild steel", Verdict.NeedsStretching, "sheet-needs-stretching")]
    [InlineData("aluminium 5052-H32", Verdict.NeedsStretching, "strain-near-limit")]
    [InlineData("titanium grade 2", Verdict.NeedsStretching, "sheet-needs-stretching")]
    public void Strain_is_judged_by_the_material(string material, Verdict verdict, string code)
    {
        Development result = Developer.Develop(Crowned.JobOf(Crowned.Dome, material: material));
        Assert.Equal(verdict, result.Panels[0].Verdict);
        Assert.Equal(code, Assert.Single(result.Notices).Code);
    }

    [Fact]
    public void Past_the_limit_the_notice_says_how_many_pieces_bear_it()
    {
        // As deep as it is wide.
        ImmutableArray<CurveSpec> deep = [.. Crowned.Dome.Select((c, i) => (CurveSpec)((ChordSpec)c with { Rise = i == 1 ? 75 : 50, At = c.At with { Origin = c.At.Origin with { Z = i == 1 ? 40 : 0 } } }))];
        Development result = Developer.Develop(Crowned.JobOf(deep, material: "aluminium 3003-H14"));
        Assert.Equal(Verdict.PastTheLimit, result.Panels[0].Verdict);
        Notice warning = Assert.Single(result.Notices);
        Assert.Equal(("past-the-limit", Severity.Warning), (warning.Code, warning.Severity));
        Assert.Contains("\"pieces\": ", warning.Mend!, StringComparison.Ordinal);
        Assert.Contains("aluminium 3003-H14", warning.Message, StringComparison.Ordinal);
        int advised = int.Parse(warning.Mend!.Split("\"pieces\": ")[1][..1], System.Globalization.CultureInfo.InvariantCulture);
        PieceChoice choice = result.Panels[0].Choices[advised - 1], fewer = result.Panels[0].Choices[advised - 2];
        Assert.True(Math.Max(choice.MaxStretch, choice.MaxShrink) <= 0.04);
        Assert.True(Math.Max(fewer.MaxStretch, fewer.MaxShrink) > 0.02);
    }

    [Fact]
    public void A_material_that_is_not_known_is_said_to_be_taken_for_mild_steel()
    {
        ImmutableArray<CurveSpec> deep = [.. Crowned.Dome.Select((c, i) => (CurveSpec)((ChordSpec)c with { Rise = i == 1 ? 75 : 50, At = c.At with { Origin = c.At.Origin with { Z = i == 1 ? 40 : 0 } } }))];
        Notice warning = Assert.Single(Developer.Develop(Crowned.JobOf(deep, material: "unobtainium")).Notices);
        Assert.Contains("mild steel (DC01) (taken because the job's material is not in the table)", warning.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_cost_of_shrinking_makes_for_less_shrinking_and_a_smaller_blank()
    {
        PanelDevelopment even = Crowned.Develop(Crowned.Dome).Panels[0], dear = Crowned.Develop(Crowned.Dome, p => p with { ShrinkCost = 3 }).Panels[0];
        Assert.True(dear.Strain.MaxShrink < even.Strain.MaxShrink);
        Assert.True(dear.FlatArea < even.FlatArea);
    }

    [Fact]
    public void Report_tells_pieces_slits_limit_worst_places_and_timings()
    {
        Development result = Crowned.Develop(Crowned.Dome, p => p with { Pieces = 2, Slits = [new SlitSpec("front", 40, 30)] });
        JsonElement root = Report(result), panel = root.GetProperty("panels")[0];
        Assert.Equal(0.22, panel.GetProperty("limit").GetDouble());
        Assert.Equal(("sheet", 1, 2), (panel.GetProperty("piece").GetProperty("panel").GetString(), panel.GetProperty("piece").GetProperty("number").GetInt32(), panel.GetProperty("piece").GetProperty("count").GetInt32()));
        Assert.Equal([1, 2, 3, 4, 5, 6], panel.GetProperty("pieces").EnumerateArray().Select(c => c.GetProperty("pieces").GetInt32()));
        Assert.All(panel.GetProperty("pieces").EnumerateArray().Skip(1), c => Assert.True(c.GetProperty("weldLength").GetDouble() > 100));
        JsonElement slit = Assert.Single(panel.GetProperty("slits").EnumerateArray());
        Assert.Equal(("front", 40, 30), (slit.GetProperty("edge").GetString(), slit.GetProperty("at").GetDouble(), slit.GetProperty("depth").GetDouble()));
        Assert.Equal(slit.GetProperty("width").GetDouble() < 0, slit.GetProperty("overlaps").GetBoolean());
        Assert.True(panel.GetProperty("strainClearOfTips").GetProperty("maxShrink").GetDouble() <= panel.GetProperty("strain").GetProperty("maxShrink").GetDouble());
        JsonElement worst = panel.GetProperty("worst");
        Assert.InRange(worst.GetArrayLength(), 1, 6);
        Assert.Contains(worst[0].GetProperty("kind").GetString(), new[] { "stretch", "shrink" });
        Assert.Equal(["curves", "sheet", "fitting up"], root.GetProperty("timingsMs").EnumerateArray().Select(t => t.GetProperty("step").GetString()!));
        Assert.Equal(JsonValueKind.Undefined, root.GetProperty("panels")[1].TryGetProperty("slits", out JsonElement none) ? none.ValueKind : JsonValueKind.Undefined);
    }

    [Fact]
    public void Maps_are_written_only_for_a_sheet_that_does_not_only_bend()
    {
        string[] crowned = [.. PatternFiles.Of(Crowned.Develop(Crowned.Dome)).Select(f => f.Name)], bent = [.. PatternFiles.Of(Samples.HalfCylinder()).Select(f => f.Name)];
        Assert.Contains("sheet-strain.svg", crowned);
        Assert.Contains("sheet-strain.csv", crowned);
        Assert.DoesNotContain(bent, name => name.Contains("strain", StringComparison.Ordinal));
    }

    [Fact]
    public void Curves_that_cross_so_that_there_is_no_sheet_are_refused()
    {
        // The third curve stands before the second.
        ImmutableArray<CurveSpec> folded = [Crowned.Dome[0], Crowned.Dome[0], Crowned.Dome[2]];
        Assert.Equal("sheet-not-one-surface", Assert.Single(Developer.Develop(Crowned.JobOf(folded)).Notices, n => n.Severity == Severity.Error).Code);
    }
}

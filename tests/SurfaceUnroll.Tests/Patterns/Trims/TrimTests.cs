using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;
using SurfaceUnroll.Patterns.Trims;
using SurfaceUnroll.Tests.Files.JobFiles;
using static SurfaceUnroll.Tests.Plates.PlateJobs;

namespace SurfaceUnroll.Tests.Patterns.Trims;

public class TrimTests
{
    private static readonly SheetStock Thin = new("mild steel", 0);

    private static double Rad(double degrees) => degrees * Math.PI / 180;

    /// <summary>A closed pipe along x from 0 to a length, its seam at the left.</summary>
    private static (string, CurveSpec)[] PipeCurves(double radius, double length) => [("front", Circle(radius)), ("rear", Circle(radius, new Placement(new Vec3(length, 0, 0), 0, 0, 0)))];

    private static PanelSpec Pipe(string name, params TrimSpec[] trims) => new(name, ["front", "rear"], ElementMatching.BendOnly) { Trims = [.. trims] };

    /// <summary>A plane through (x, 0, 0) that leans aft.</summary>
    private static Placement Leaning(double x, double degrees) => new(new Vec3(x, 0, 0), 0, Rad(degrees), 0);

    [Theory]
    [InlineData(45)]
    [InlineData(20)]
    [InlineData(-60)]
    public void A_pipe_trimmed_by_a_plane_has_the_sine_of_the_cut_pipe_for_its_edge(double lean)
    {
        // u(x) = r tan β sin(x/r) (Apostol & Mnatsakanian, Amer. Math. Monthly 114, 2007, 388): the plane stands at x = 300 + z·tan(lean).
        const double r = 100;
        PanelDevelopment pipe = Develop(Pipe("pipe", new TrimSpec("cut", Leaning(300, lean), null, 0, Way.Forward)), Thin, PipeCurves(r, 600));
        BlankEdge cut = pipe.FindEdge("cut")!;
        Assert.DoesNotContain(pipe.Edges, e => e.Name == "rear");
        double left = pipe.FindEdge("front")!.Flat[0].X, top = pipe.FindEdge("front")!.Flat[0].Y;
        // From the seam at the left over the top: z = r sin(s/r).
        foreach (Vec2 p in cut.Flat) Assert.Equal(300 + r * Math.Tan(Rad(lean)) * Math.Sin((p.X - left) / r), top - p.Y, 0.002);
        Assert.Equal(2 * Math.PI * r * 300, pipe.FlatArea, 0.5);
        Assert.True(OutlineCheck.IsSimple(pipe.Cut));
        Assert.Equal(["front", "right", "left", "cut"], pipe.Edges.Select(e => e.Name));
    }

    [Fact]
    public void What_is_trimmed_at_45_degrees_has_the_length_of_the_ellipse()
    {
        // Perimeter of the ellipse with half-axes 100√2 and 100: 764.03956 (complete elliptic integral, computed).
        PanelDevelopment pipe = Develop(Pipe("pipe", new TrimSpec("cut", Leaning(300, 45), null, 0, Way.Forward)), Thin, PipeCurves(100, 600));
        Assert.Equal(764.03956, pipe.FindEdge("cut")!.FormedLength, 0.01);
        Assert.Equal(764.03956, pipe.FindEdge("cut")!.FlatLength, 0.01);
    }

    [Fact]
    public void The_flat_of_a_bent_plate_cuts_a_pipe_without_halving_its_triangles()
    {
        // Each triangle that is cut leaves two at the most. The flue of the hood stands on the slope, clear of both bends.
        Job hood = Fixtures.Read("jobs/bench-hood.json").Job!;
        int Faces(Job job) => Developer.Net(job, (_, curves) => curves, default).Single(p => p.Source.Name == "flue").Panel.Mesh.Faces.Length;
        int before = Faces(hood with { Panels = [.. hood.Panels.Select(p => p with { Trims = [] })] });
        Assert.InRange(Faces(hood), before / 2, 2 * before);
    }

    [Fact]
    public void Where_a_side_meets_a_curved_surface_is_found_in_few_steps()
    {
        // Dowell and Jarratt: each three steps multiply the digits by three, so that from 0.01 to 1e-10 six do; one more for the first guess, one for a poor start.
        int asked = 0;
        var field = new TrimField(p =>
        {
            asked++;
            return 100 - p.Length;
        }, IsClear: true);
        Vec3 from = new(0, 30, 0), to = new(200, 30, 0);
        double share = field.Root(from, to, 100 - from.Length, 100 - to.Length);
        Assert.Equal(Math.Sqrt(100 * 100 - 30 * 30) / 200, share, 1e-9);
        Assert.InRange(asked, 1, 10);
    }

    [Fact]
    public void A_plate_trims_as_the_plane_that_it_lies_in_and_runs_on_past_its_edges()
    {
        // The plate is smaller than the pipe.
        var plate = Rectangle(60, 60, Leaning(300, 30));
        Job job = Job(Thin, [.. PipeCurves(100, 600), ("p", plate)], Pipe("pipe", new TrimSpec("cut", null, "plate", 0, Way.Forward)), Flat2("plate", "p"));
        PanelDevelopment byPlate = Run(job).Panels[0], byPlane = Develop(Pipe("pipe", new TrimSpec("cut", Leaning(300, 30), null, 0, Way.Forward)), Thin, PipeCurves(100, 600));
        Assert.Equal(byPlane.FlatArea, byPlate.FlatArea, 0.01);
        Assert.Equal(byPlane.FindEdge("cut")!.FormedLength, byPlate.FindEdge("cut")!.FormedLength, 1e-3);
    }

    [Fact]
    public void A_branch_trimmed_by_a_pipe_is_the_saddle_of_the_closed_form()
    {
        const double main = 120, branch = 70;
        RunSpec Ring(double z) => Circle(branch, new Placement(new Vec3(0, 0, z), 0, Math.PI / 2, 0));
        RunSpec Half(double x) => new([new ArcStep(main, Math.PI)], 0, null, new Placement(new Vec3(x, 0, 0), 0, 0, 0));
        PanelSpec up = new("branch", ["top", "bottom"], ElementMatching.BendOnly) { Trims = [new TrimSpec("saddle", null, "main", 0, Way.Up)] };
        Job job = Job(Thin, [("top", Ring(300)), ("bottom", Ring(20)), ("a", Half(-200)), ("b", Half(200))], up, new PanelSpec("main", ["a", "b"], ElementMatching.BendOnly));
        PanelDevelopment panel = Run(job).Panels[0];
        EdgeChain saddle = panel.Mesh.Chains.Single(c => c.Name == "saddle");
        // Where y = branch·sin φ the pipe stands √(R² − y²) high; the branch is that much shorter than 300.
        foreach (int v in saddle.Vertices)
        {
            Vec3 p = panel.Mesh.Formed[v];
            Assert.Equal(Math.Sqrt(main * main - p.Y * p.Y), p.Z, 0.02);
        }
        double top = panel.FindEdge("top") is null ? panel.FindEdge("front")!.Flat[0].Y : 0;
        Assert.All(saddle.Vertices, v => Assert.Equal(300 - panel.Mesh.Formed[v].Z, top - panel.Mesh.Flat[v].Y, 0.02));
    }

    [Fact]
    public void Clearance_leaves_a_gap()
    {
        PanelDevelopment tight = Develop(Pipe("pipe", new TrimSpec("cut", Leaning(300, 0), null, 0, Way.Forward)), Thin, PipeCurves(100, 600));
        PanelDevelopment clear = Develop(Pipe("pipe", new TrimSpec("cut", Leaning(300, 0), null, 2.5, Way.Forward)), Thin, PipeCurves(100, 600));
        Assert.Equal(2.5 * 2 * Math.PI * 100, tight.FlatArea - clear.FlatArea, 0.01);
    }

    [Fact]
    public void Element_lines_end_at_the_trim_with_the_radii_that_the_cone_has_there()
    {
        (string, CurveSpec)[] cone = [("front", Circle(150)), ("rear", Circle(90, new Placement(new Vec3(300, 0, 0), 0, 0, 0)))];
        PanelDevelopment panel = Develop(Pipe("cone", new TrimSpec("cut", Leaning(150, 0), null, 0, Way.Forward)), Thin, cone);
        // Half way the cone's own radius is 120; square to a line it is that over the cosine of the half angle.
        double slant = 1 / Math.Cos(Math.Atan(60.0 / 300));
        Assert.All(panel.Elements.Where(e => e.Number > 0), e =>
        {
            Assert.Equal(150, e.FormedRear.X, 1e-9);
            Assert.Equal(120 * slant, e.BendRadiusRear, 0.01);
            Assert.Equal(150 * slant, e.BendRadiusFront, 0.01);
        });
    }

    [Fact]
    public void A_bent_plate_can_be_trimmed_and_its_bend_lines_end_at_the_new_edge()
    {
        var side = new SideRun([new SideLine(100), new SideBend(Rad(60), 2), new SideLine(80)], 0, Vec2.Zero);
        PanelSpec panel = Bent("p", new BentSpec([], side, null, Placement.None) { Width = 200 }) with { Trims = [new TrimSpec("side", new Placement(new Vec3(0, 60, 0), 0, 0, Math.PI / 2), null, 0, Way.Left)] };
        PanelDevelopment plate = Develop(panel);
        Assert.Equal((-100.0, 60.0), (plate.Bends[0].Centre[0].X, plate.Bends[0].Centre[^1].X), (a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) < 1e-6);
        Assert.Equal(160 * Box.Around(plate.Cut).Height, plate.FlatArea, 0.01);
    }

    [Theory]
    [InlineData("trim-takes-all", 700, Way.Aft)]
    [InlineData("trim-keep", 300, Way.Up)]
    [InlineData("trim-cuts-nothing", 700, Way.Forward)]
    public void What_a_trim_cannot_do_is_said(string code, double x, Way keep)
    {
        Development done = Developer.Develop(Job(Thin, PipeCurves(100, 600), Pipe("pipe", new TrimSpec("cut", Leaning(x, 0), null, 0, keep))));
        Assert.Equal(code, Assert.Single(done.Notices, n => n.Severity != Severity.Note).Code);
    }

    [Fact]
    public void A_stretched_sheet_keeps_its_strain_where_it_stays()
    {
        Job job = Crowned.JobOf(Crowned.Dome);
        PanelDevelopment whole = Developer.Develop(job).Panels[0];
        double middle = 0.5 * (whole.Mesh.Formed.Min(p => p.X) + whole.Mesh.Formed.Max(p => p.X));
        PanelDevelopment half = Run(job with { Panels = [job.Panels[0] with { Trims = [new TrimSpec("cut", new Placement(new Vec3(middle, 0, 0), 0, 0, 0), null, 0, Way.Forward)] }] }).Panels[0];
        Assert.Equal(half.Mesh.Formed.Length, half.Map!.Vertices.Length);
        Assert.All(half.Mesh.Formed, p => Assert.True(p.X <= middle + 1e-6));
        Assert.InRange(half.Map.Vertices.Max(v => v.Major), 0, whole.Map!.Vertices.Max(v => v.Major));
    }

    [Theory]
    [InlineData(Way.Up, 200)]
    [InlineData(Way.Down, 100)]
    public void A_whole_pipe_trims_by_the_side_on_which_it_is_met(Way keep, double bottom)
    {
        // A strip that hangs from 300 down into a pipe of radius 100 about z = 100 comes to its top at 200; what is kept below ends inside it.
        Placement Across(double x) => new(new Vec3(x, 0, 0), 0, 0, 0);
        RunSpec Ring(double x) => new([new ArcStep(100, 2 * Math.PI)], 0, new Vec2(-100, 100), Across(x));
        CurveSpec strip = new PointsSpec([.. new Vec2[] { new(-1, 100), new(-1, 300), new(1, 300), new(1, 100), new(-1, 100) }.Select(p => new ProfilePoint(p, false))], false, Fit.Straight, Across(50));
        PanelSpec hanger = Flat2("hanger", "strip") with { Trims = [new TrimSpec("seat", null, "pipe", 0, keep)] };
        PanelDevelopment panel = Run(Job(Thin, [("strip", strip), ("a", Ring(0)), ("b", Ring(100))], hanger, new PanelSpec("pipe", ["a", "b"], ElementMatching.BendOnly))).Panels[0];
        double[] heights = [.. panel.Mesh.Formed.Select(p => p.Z)];
        Assert.Equal(bottom, heights.Min(), 0.01);
        Assert.Equal(keep == Way.Up ? 300 : 200, heights.Max(), 0.01);
    }

    [Fact]
    public void A_trim_takes_a_piece_of_a_split_panel_whole_and_its_seam_with_it()
    {
        PanelSpec pipe = Pipe("pipe", new TrimSpec("cut", Leaning(250, 0), null, 0, Way.Forward)) with { Pieces = 3, Along = SeamDirection.Across };
        Development done = Run(Job(Thin, PipeCurves(100, 600), pipe));
        Assert.Equal(["pipe 1 of 3", "pipe 2 of 3"], done.Panels.Select(p => p.Spec.Name));
        Assert.Contains(done.Notices, n => n.Code == "trim-takes-piece" && n.Message.Contains("pipe 3 of 3", StringComparison.Ordinal));
        Assert.Single(done.Joints);
        Assert.Equal(2 * Math.PI * 100 * 250, done.Panels.Sum(p => p.FlatArea), 3.0);
    }

    [Fact]
    public void A_trim_that_meets_no_piece_of_a_split_panel_is_told_once()
    {
        PanelSpec pipe = Pipe("pipe", new TrimSpec("cut", Leaning(900, 0), null, 0, Way.Forward)) with { Pieces = 2 };
        Assert.Single(Run(Job(Thin, PipeCurves(100, 600), pipe)).Notices, n => n.Code == "trim-cuts-nothing");
    }

    [Fact]
    public void A_plate_of_two_triangles_is_trimmed_true_along_a_pipe_that_none_of_its_corners_is_in()
    {
        // A half pipe of radius 40 about (y, z) = (200, 0) across a plate of 400 by 100 in the plane x = 0.
        (string, CurveSpec)[] curves = [("rim", Corners(new(0, 0), new(400, 0), new(400, 100), new(0, 100), new(0, 0))), ("a", Valley(-50)), ("b", Valley(50))];
        RunSpec Valley(double x) => new([new ArcStep(40, Math.PI)], 0, new Vec2(160, 0), new Placement(new Vec3(x, 0, 0), 0, 0, 0));
        PanelSpec plate = Flat2("plate", "rim") with { Trims = [new TrimSpec("valley", null, "pipe", 0, Way.Up)] };
        PanelDevelopment panel = Run(Job(Thin, curves, plate, new PanelSpec("pipe", ["a", "b"], ElementMatching.BendOnly))).Panels[0];
        BlankEdge valley = panel.FindEdge("valley")!;
        Vec2 foot = Vec2.Lerp(valley.Flat[0], valley.Flat[^1], 0.5);
        Assert.All(valley.Flat.Zip(valley.Flat.Skip(1)).SelectMany(s => new[] { s.First, Vec2.Lerp(s.First, s.Second, 0.5) }), p => Assert.Equal(40, (p - foot).Length, 0.02));
        Assert.Equal(400 * 100 - 0.5 * Math.PI * 1600, panel.FlatArea, 1.0);
        Assert.Equal(40 * Math.PI, valley.FlatLength, 0.05);
    }

    [Fact]
    public void Pieces_that_do_not_meet_the_trimming_panel_keep_the_side_of_those_that_do()
    {
        // A flat deck, split in four, under a half pipe that crosses only its middle.
        RunSpec Line(double x) => new([new LineStep(400)], Math.PI / 2, new Vec2(-200, 20), new Placement(new Vec3(x, 0, 0), 0, 0, 0));
        RunSpec Half(double x) => new([new ArcStep(60, Math.PI)], 0, null, new Placement(new Vec3(x, 0, 0), 0, 0, 0));
        PanelSpec deck = new("deck", ["f", "r"], ElementMatching.BendOnly) { Pieces = 4, Trims = [new TrimSpec("cut", null, "tube", 0, Way.Up)] };
        PanelSpec whole = deck with { Pieces = 1 };
        (string, CurveSpec)[] curves = [("f", Line(0)), ("r", Line(200)), ("a", Half(-50)), ("b", Half(250))];
        PanelSpec tube = new("tube", ["a", "b"], ElementMatching.BendOnly);
        double split = Run(Job(Thin, curves, deck, tube)).Panels.Where(p => p.Piece is not null).Sum(p => p.FlatArea);
        // Cut right through: of the whole deck only one side would be kept.
        Assert.Equal(200 * 2 * (200 - Math.Sqrt(60 * 60 - 20 * 20)), split, 5.0);
        Assert.Contains(Run(Job(Thin, curves, whole, tube)).Notices, n => n.Code == "trim-leaves-parts");
    }

    [Fact]
    public void A_way_that_the_trimming_panel_faces_on_one_side_and_backs_on_the_other_is_refused()
    {
        RunSpec Half(double x) => new([new ArcStep(60, Math.PI)], 0, null, new Placement(new Vec3(x, 0, 0), 0, 0, 0));
        CurveSpec shelf = new PointsSpec([.. new Vec2[] { new(-100, 0), new(-100, 200), new(100, 200), new(100, 0), new(-100, 0) }.Select(p => new ProfilePoint(p, false))], false, Fit.Straight, new Placement(new Vec3(0, 0, 20), 0, Math.PI / 2, 0));
        PanelSpec plate = Flat2("shelf", "rim") with { Trims = [new TrimSpec("cut", null, "tube", 0, Way.Left)] };
        Development done = Developer.Develop(Job(Thin, [("rim", shelf), ("a", Half(-50)), ("b", Half(250))], plate, new PanelSpec("tube", ["a", "b"], ElementMatching.BendOnly)));
        Assert.Equal("trim-keep", Assert.Single(done.Notices, n => n.Severity == Severity.Error).Code);
    }
}

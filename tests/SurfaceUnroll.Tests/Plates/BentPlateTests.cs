using SurfaceUnroll.Forming;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using static SurfaceUnroll.Tests.Plates.PlateJobs;

namespace SurfaceUnroll.Tests.Plates;

public class BentPlateTests
{
    private static double Rad(double degrees) => degrees * Math.PI / 180;

    private static PlanCurve Plan(double width, double from, double to) => new(
        "outline", new PointsSpec([.. new Vec2[] { new(-width / 2, from), new(-width / 2, to), new(width / 2, to), new(width / 2, from), new(-width / 2, from) }.Select(p => new ProfilePoint(p, false))], false, Fit.Straight, Placement.None));

    private static SidePoints Side(Fit fit, params (double Aft, double Height, double? Bend)[] points) =>
        new([.. points.Select(p => new SidePoint(new Vec2(p.Aft, p.Height), p.Bend is not null, p.Bend))], fit);

    [Theory]
    [InlineData(30)]
    [InlineData(-50)]
    public void A_kicked_plate_is_as_long_as_its_outside_lengths_less_the_deduction(double kick)
    {
        // Flat for 100, then kicked up or down for 80 along the slope; the profile is the outside (upper) face.
        double rise = 80 * Math.Sin(Rad(kick)), run = 80 * Math.Cos(Rad(kick));
        SidePoints side = Side(Fit.Straight, (0, 0, null), (100, 0, 2), (100 + run, rise, null));
        PanelDevelopment plate = Develop(Bent("base", new BentSpec([Plan(60, 0, 100 + run)], side, null, Placement.None)));
        BendLength bend = BendAllowance.Of(Steel, 2, Rad(Math.Abs(kick)));
        // Bent down the upper face is the outer one, and the points are where the outer faces meet. Bent up it is the inner one: there the setback is R·tan(θ/2).
        double setback = kick < 0 ? bend.Setback : 2 * Math.Tan(Rad(Math.Abs(kick)) / 2);
        Assert.Equal(180 - 2 * setback + bend.Allowance, Box.Around(plate.Cut).Height, 1e-6);
        BendLine line = Assert.Single(plate.Bends);
        Assert.Equal((kick > 0, 2.0), (line.Up, line.InsideRadius));
        Assert.Equal(Rad(Math.Abs(kick)), line.Angle, 1e-9);
        Assert.Equal(100 - setback + 0.5 * bend.Allowance, -line.Centre[0].Y, 1e-6);
        Assert.Equal([100 - setback, 100 - setback + bend.Allowance], line.Tangents.Select(t => -t[0].Y).Order(), (a, b) => Math.Abs(a - b) < 1e-5);
    }

    [Fact]
    public void A_rolled_arc_develops_by_its_middle_surface()
    {
        // Outside radius 50 over the top, so the middle of a 1 mm sheet has 49.5.
        var side = new SideRun([new SideLine(40), new SideArc(50, Rad(60)), new SideLine(40)], 0, Vec2.Zero);
        PanelDevelopment plate = Develop(Bent("p", new BentSpec([], side, null, Placement.None) { Width = 100 }));
        Assert.Equal(80 + 49.5 * Rad(60), Box.Around(plate.Cut).Height, 1e-9);
        Assert.Empty(plate.Bends);
        Assert.All(plate.Elements, e => Assert.Equal((49.5, true), (Math.Round(e.BendRadiusFront, 9), e.BendsOutward)));
        Assert.Equal(plate.FlatArea, plate.FormedArea, 1e-6);
        // Facets stay within 0.004 mm of the metal, so the mesh falls short by less than a ten thousandth.
        Assert.Equal(plate.FormedArea, plate.Mesh.Faces.Sum(f => 0.5 * (plate.Mesh.Formed[f.B] - plate.Mesh.Formed[f.A]).Cross(plate.Mesh.Formed[f.C] - plate.Mesh.Formed[f.A]).Length), 1.0);
    }

    [Fact]
    public void A_smooth_side_shares_its_edge_with_a_hoop_of_the_same_two_views()
    {
        var plan = new RunSpec([new LineStep(150), new ArcStep(100, Math.PI), new LineStep(150)], 0, null, Placement.None);
        Vec2[] heights = [new(0, 0), new(90, 0), new(150, 5), new(250, 40)];
        var hoop = new PlanSideSpec(plan, [.. heights], Fit.Smooth, Placement.None);
        Job job = Job(Steel, [("hoop", hoop)], Bent("base", new BentSpec([new PlanCurve("hoop", null)], new SideOfCurve("hoop"), null, Placement.None)));
        PanelDevelopment plate = Run(job).Panels[0];
        // The measured face of the plate holds the curve.
        double length = Curves.Measured.Curve(hoop).Length;
        EdgeChain chain = plate.Mesh.Chains.Single(c => c.Name == "hoop");
        double along = chain.Vertices.Zip(chain.Vertices.Skip(1), (a, b) => (plate.Mesh.Face[b] - plate.Mesh.Face[a]).Length).Sum();
        Assert.Equal(length, along, 0.01);
        Assert.Equal(["chord", "hoop"], plate.Edges.Select(e => e.Name).Order());
    }

    [Fact]
    public void A_bend_into_a_rolled_area_touches_both_sides()
    {
        SidePoints side = Side(Fit.Smooth, (-60, -30, null), (0, 0, 3), (60, 2, null), (120, 20, null));
        PanelDevelopment plate = Develop(Bent("base", new BentSpec([Plan(50, -60, 120)], side, null, Placement.None)));
        // No edge of the formed metal turns by more than the facets of a smooth line from one station to the next.
        Vec3[] edge = [.. plate.Mesh.Formed.Where(p => Math.Abs(p.Y - 25) < 1e-6).DistinctBy(p => Math.Round(p.X, 6)).OrderBy(p => p.X)];
        double worst = Enumerable.Range(1, edge.Length - 2).Max(i => (edge[i] - edge[i - 1]).AngleTo(edge[i + 1] - edge[i]));
        Assert.InRange(worst, 0, 0.101);
        Assert.Single(plate.Bends);
        Assert.NotEmpty(plate.Elements);
    }

    [Fact]
    public void Blank_less_what_bends_gain_is_the_formed_area()
    {
        SidePoints side = Side(Fit.Straight, (0, 0, null), (80, 0, 1), (140, 50, 4), (220, 60, null));
        PanelDevelopment plate = Develop(Bent("base", new BentSpec([Plan(90, 0, 220)], side, null, Placement.None)));
        double arcs = plate.Bends.Sum(b => (b.InsideRadius + 0.5) * b.Angle), allowances = plate.Bends.Sum(b => b.Length.Allowance);
        Assert.Equal(90 * (allowances - arcs), plate.Areas.Bends, 1e-6);
        Assert.Equal(plate.Areas.Blank, plate.Areas.Formed + plate.Areas.Bends + plate.Areas.Allowances, 1e-9);
        Assert.Equal(Area(plate.Cut), plate.Areas.Blank, 1e-6);
        double mesh = plate.Mesh.Faces.Sum(f => 0.5 * (plate.Mesh.Formed[f.B] - plate.Mesh.Formed[f.A]).Cross(plate.Mesh.Formed[f.C] - plate.Mesh.Formed[f.A]).Length);
        Assert.Equal(1, mesh / plate.FormedArea, 1e-3);
    }

    [Fact]
    public void The_bend_nearest_to_an_end_is_made_first()
    {
        var side = new SideRun([new SideLine(100), new SideBend(Rad(90), 1), new SideLine(150), new SideBend(Rad(-90), 1), new SideLine(40), new SideBend(Rad(45), 1), new SideLine(20)], 0, Vec2.Zero);
        PanelDevelopment plate = Develop(Bent("p", new BentSpec([], side, null, Placement.None) { Width = 100 }));
        Assert.Equal([3, 2, 1], plate.Bends.OrderByDescending(b => b.Centre[0].Y).Select(b => b.Number));
        Assert.Equal([false, true, false], plate.Bends.OrderByDescending(b => b.Centre[0].Y).Select(b => b.Up));
    }

    [Theory]
    [InlineData("side-turns-back")]
    [InlineData("bends-too-near")]
    public void A_side_that_cannot_be_laid_is_refused(string code)
    {
        SideProfile side = code == "side-turns-back"
            ? new SideRun([new SideLine(50), new SideBend(Rad(90), 1), new SideLine(30)], 0, Vec2.Zero)
            : Side(Fit.Straight, (0, 0, null), (50, 0, 30), (60, 10, 30), (120, 10, null));
        Development done = Developer.Develop(Job(Steel, [], Bent("p", new BentSpec([Plan(60, 0, 60)], side, null, Placement.None))));
        Assert.Equal(code, Assert.Single(done.Notices, n => n.Severity == Severity.Error).Code);
    }

    // In a 3 mm sheet the inside of an arc turns to nothing at an outside radius of 3 mm, a middle one of 1.5.
    [Theory]
    [InlineData(MeasuredFace.Outside, 90, 2.99, false)]
    [InlineData(MeasuredFace.Outside, 90, 3, true)]
    [InlineData(MeasuredFace.Outside, -90, 0.01, true)]
    [InlineData(MeasuredFace.Inside, -90, 1, false)]
    [InlineData(MeasuredFace.Inside, 90, 0.01, true)]
    [InlineData(MeasuredFace.Middle, 90, 1.49, false)]
    [InlineData(MeasuredFace.Middle, -90, 1.5, true)]
    public void A_rolled_arc_whose_inside_would_fold_is_refused_with_its_step(MeasuredFace face, double turn, double radius, bool good)
    {
        var side = new SideRun([new SideLine(40), new SideArc(radius, Rad(turn)), new SideLine(40)], 0, Vec2.Zero);
        Job job = Job(new SheetStock("mild steel", 3), [], Bent("p", new BentSpec([], side, null, Placement.None) { Width = 100 })) with { Measured = face };
        IEnumerable<(string, string)> errors = Developer.Develop(job).Notices.Where(n => n.Severity == Severity.Error).Select(n => (n.Code, n.Where));
        Assert.Equal(good ? [] : [("bend-tighter-than-sheet", "panels[0].bent.side.run[1]")], errors);
    }

    // Through three points the parabola of height h over a reach of 2·w has its sharpest radius, w²/(2h), at the top.
    [Theory]
    [InlineData(7.9, false)]
    [InlineData(8.1, true)]
    public void A_smooth_side_whose_inside_would_fold_is_refused_with_its_place(double radius, bool good)
    {
        const double half = 20;
        double height = half * half / (2 * radius);
        SidePoints side = Side(Fit.Smooth, (0, 0, null), (half, height, null), (2 * half, 0, null));
        Development done = Developer.Develop(Job(new SheetStock("mild steel", 8), [], Bent("p", new BentSpec([], side, null, Placement.None) { Width = 100 })));
        Notice[] errors = [.. done.Notices.Where(n => n.Severity == Severity.Error)];
        if (good)
        {
            Assert.Empty(errors);
            return;
        }
        Notice error = Assert.Single(errors);
        Assert.Equal(("bend-tighter-than-sheet", "panels[0].bent.side"), (error.Code, error.Where));
        Assert.Contains("aft 20 mm", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(100, true)]
    [InlineData(40, false)]
    public void A_side_that_crosses_itself_is_warned_of(double last, bool crosses)
    {
        var side = new SideRun([new SideLine(100), new SideBend(Rad(90), 1), new SideLine(50), new SideBend(Rad(90), 1), new SideLine(50), new SideBend(Rad(90), 1), new SideLine(last)], 0, Vec2.Zero);
        Development done = Run(Job(Steel, [], Bent("p", new BentSpec([], side, null, Placement.None) { Width = 100 })));
        Notice[] found = [.. done.Notices.Where(n => n.Code == "side-crosses-itself")];
        Assert.Equal(crosses ? 1 : 0, found.Length);
        // Three bends of 90° at R 1 and t 1 lead back to 4 mm short of the 50 mm that lie between them.
        if (crosses) Assert.Contains("aft 48.5 mm, height -0.5 mm", found[0].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_tube_whose_ends_meet_does_not_cross_itself()
    {
        var side = new SideRun([new SideArc(50, Math.PI), new SideArc(50, Math.PI)], 0, Vec2.Zero);
        Development done = Run(Job(Steel, [], Bent("p", new BentSpec([], side, null, Placement.None) { Width = 100 })));
        Assert.DoesNotContain(done.Notices, n => n.Code == "side-crosses-itself");
    }

    [Fact]
    public void A_bend_of_no_radius_has_metal_in_it_by_every_rule()
    {
        foreach (BendRule rule in Enum.GetValues<BendRule>())
        {
            var stock = new SheetStock("mild steel", 2) { Bending = new BendSetup(rule, null, null) };
            BendLength bend = BendAllowance.Of(stock, 0, Rad(90));
            Assert.InRange(bend.K, 0.1, 0.5);
            Assert.Equal(Rad(90) * bend.K * 2, bend.Allowance, 1e-12);
        }
        // Down to r/s = 0.2 DIN 6935 is followed, where k = 0.65 + 0.5·log₁₀ 0.2 = 0.3005.
        var din = new SheetStock("mild steel", 2) { Bending = new BendSetup(BendRule.Din6935, null, null) };
        Assert.Equal(0.15026, BendAllowance.Of(din, 0.4, Rad(90)).K, 1e-5);
        Assert.Equal(0.15026, BendAllowance.Of(din, 0.1, Rad(90)).K, 1e-5);
    }

    [Fact]
    public void A_hole_in_a_bend_and_a_flange_too_narrow_to_hold_are_warned_of()
    {
        SidePoints side = Side(Fit.Straight, (0, 0, null), (80, 0, 1), (82, -2, null));
        PanelSpec panel = Bent("p", new BentSpec([Plan(60, 0, 82)], side, null, Placement.None)) with
        {
            Openings = [new OpeningSpec("hole", new RoundShape(10), new Vec2(0, 74), 0, null, null, null), new OpeningSpec("clear", new RoundShape(10), new Vec2(0, 30), 0, null, null, null)],
        };
        Development done = Run(Job(Steel, [], panel));
        Assert.Equal(["edge-near-bend", "hole-near-bend"], done.Notices.Where(n => n.Severity == Severity.Warning).Select(n => n.Code).Order());
        Assert.Contains("“hole”", done.Notices.First(n => n.Code == "hole-near-bend").Message, StringComparison.Ordinal);
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using static SurfaceUnroll.Tests.Plates.PlateJobs;

namespace SurfaceUnroll.Tests.Patterns.Openings;

public class OpeningTests
{
    private static readonly SheetStock Thin = new("mild steel", 0);

    private static double Rad(double degrees) => degrees * Math.PI / 180;

    /// <summary>Half circle upright at x = aft, its centre on the axis.</summary>
    private static RunSpec Half(double radius, double aft) => new([new ArcStep(radius, Math.PI)], 0, null, new Placement(new Vec3(aft, 0, 0), 0, 0, 0));

    private static PanelSpec Loft(params OpeningSpec[] openings) => new("cover", ["front", "rear"], ElementMatching.BendOnly) { Openings = [.. openings] };

    private static (string, CurveSpec)[] Curves(double front, double rear, double length) => [("front", Half(front, 0)), ("rear", Half(rear, length))];

    /// <summary>Level plane at a height over (x, y); its across is right and its up aft.</summary>
    private static Placement Over(double x, double y, double z = 300) => new(new Vec3(x, y, z), 0, Math.PI / 2, 0);

    [Theory]
    [InlineData(40, 0)]
    [InlineData(70, 20)]
    [InlineData(20, -60)]
    public void A_circle_let_down_square_on_a_cylinder_is_the_closed_form_on_the_blank(double radius, double offside)
    {
        const double r = 100;
        PanelDevelopment panel = Develop(Loft(new OpeningSpec("lamp", new RoundShape(2 * radius), Vec2.Zero, 0, null, Over(150, offside), null)), Thin, Curves(r, r, 300));
        BlankOpening lamp = Assert.Single(panel.Openings);
        // The blank is πr wide with the top of the arch in its middle: across = r sin(x/r), aft = −y.
        foreach (Vec2 p in WithMiddles(lamp.Flat)) Assert.Equal(radius, new Vec2(r * Math.Sin(p.X / r) - offside, -p.Y - 150).Length, 0.02);
        Assert.Equal(150, -lamp.Centre.Y, 0.01);
        Assert.Equal(r * Math.Asin(offside / r), lamp.Centre.X, 0.01);
    }

    [Theory]
    [InlineData(30, 0)]
    [InlineData(25, 30)]
    public void A_circle_let_down_square_on_a_cone_is_the_closed_form_on_the_blank(double radius, double offside)
    {
        const double r0 = 150, r1 = 90, length = 200, aft = 110;
        PanelDevelopment panel = Develop(Loft(new OpeningSpec("lamp", new RoundShape(2 * radius), Vec2.Zero, 0, null, Over(aft, offside), null)), Thin, Curves(r0, r1, length));
        // On the blank the apex lies straight below the middle of the front edge, at the slant height of the whole cone.
        double alpha = Math.Atan((r0 - r1) / length);
        var apex = new Vec2(0, -r0 / Math.Sin(alpha));
        foreach (Vec2 p in WithMiddles(panel.Openings[0].Flat))
        {
            Vec2 d = p - apex;
            double s = d.Length, phi = Math.Atan2(d.X, d.Y) / Math.Sin(alpha);
            Vec2 below = new(s * Math.Sin(alpha) * Math.Sin(phi) - offside, r0 / Math.Tan(alpha) - s * Math.Cos(alpha) - aft);
            Assert.Equal(radius, below.Length, 0.02);
        }
    }

    [Fact]
    public void An_opening_can_be_let_through_aslant()
    {
        // Along a direction 30° off the vertical in the plane across: a circle of radius 20 is stretched to 20/cos 30° on a level plate.
        PanelSpec plate = Flat2("plate", "c") with { Openings = [new OpeningSpec("hole", new RoundShape(40), Vec2.Zero, 0, null, new Placement(new Vec3(0, -100 * Math.Tan(Rad(30)), 100), 0, Math.PI / 2, 0), new Vec3(0, Math.Sin(Rad(30)), -Math.Cos(Rad(30))))] };
        BlankOpening hole = Develop(plate, Thin, ("c", Rectangle(200, 200, new Placement(new Vec3(-100, 0, 0), 0, Math.PI / 2, 0)))).Openings[0];
        Box box = Box.Around(hole.Flat);
        // The circle itself lies level, so its image is a circle again, moved sideways by 100·tan 30° to the middle of the plate.
        Assert.Equal(40, box.Width, 0.02);
        Assert.Equal(40, box.Height, 0.02);
        Assert.Equal(0, hole.Centre.X, 1e-6);
    }

    [Fact]
    public void Mesh_areas_and_edges_of_a_pierced_sheet_agree()
    {
        OpeningSpec[] openings =
        [
            new("lamp", new RoundShape(60), Vec2.Zero, 0, null, Over(80, 10), null),
            new("slot", new SlotShape(50, 12), Vec2.Zero, Rad(30), null, Over(180, -20), null),
            new("window", new RectangleShape(40, 30, 5), Vec2.Zero, 0, null, Over(240, 30), null),
        ];
        PanelDevelopment whole = Develop(Loft(), Thin, Curves(120, 90, 300)), panel = Develop(Loft(openings), Thin, Curves(120, 90, 300));
        SheetMesh mesh = panel.Mesh;
        double flat = mesh.Faces.Sum(f => 0.5 * (mesh.Flat[f.B] - mesh.Flat[f.A]).Cross(mesh.Flat[f.C] - mesh.Flat[f.A]));
        double formed = mesh.Faces.Sum(f => 0.5 * (mesh.Formed[f.B] - mesh.Formed[f.A]).Cross(mesh.Formed[f.C] - mesh.Formed[f.A]).Length);
        Assert.All(mesh.Faces, f => Assert.True((mesh.Flat[f.B] - mesh.Flat[f.A]).Cross(mesh.Flat[f.C] - mesh.Flat[f.A]) > 0));
        Assert.Equal(whole.FlatArea - panel.Openings.Sum(o => Area(o.Flat)), panel.FlatArea, 0.01);
        Assert.Equal(1, flat / panel.FlatArea, 1e-5);
        Assert.Equal(1, formed / panel.FormedArea, 1e-5);
        Assert.All(panel.Openings, o => Assert.Equal(1, o.FormedArea / Area(o.Flat), 1e-4));
        Assert.Equal(["lamp", "slot", "window"], mesh.Chains.Select(c => c.Name).Except(whole.Mesh.Chains.Select(c => c.Name)));
        // Every edge of the mesh belongs to two faces, or to one on a border: no cracks where openings cut triangles.
        var edges = MeshEdges.Of(mesh.Formed.Length, mesh.Faces.AsSpan());
        int open = Enumerable.Range(0, edges.Sides).Count(s => edges.Twin(s) == MeshEdges.None);
        Assert.Equal(mesh.Chains.Sum(c => c.Vertices.Length - 1), open);
        Assert.Equal(Area(panel.Cut) - panel.Openings.Sum(o => Area(o.Cut)), panel.Areas.Blank, 1e-6);
        Assert.Equal(panel.FlatArea, panel.Areas.Blank, 0.02);
    }

    [Fact]
    public void A_row_of_holes_shared_by_two_parts_lies_at_the_same_place_on_both()
    {
        // A level plate under a sloping one, the same row let down through both.
        var level = Rectangle(300, 200, new Placement(new Vec3(0, 0, 0), 0, Math.PI / 2, 0));
        var sloping = Rectangle(300, 210, new Placement(new Vec3(0, 0, 1), 0, Rad(75), 0));
        OpeningSpec row = new("row", new RoundShape(6), new Vec2(0, 0), 0, new GridPattern(5, 1, 40, 0), Over(100, 0), null) { Through = ["plate", "strap"] };
        Job job = Job(Steel, [("a", level), ("b", sloping)], Flat2("plate", "a"), Flat2("strap", "b")) with { Openings = [row] };
        Development done = Run(job);
        Assert.Equal(["row 1", "row 2", "row 3", "row 4", "row 5"], done.Panels[0].Openings.Select(o => o.Name));
        for (int i = 0; i < 5; i++)
        {
            Vec3 below = done.Panels[0].Openings[i].FormedCentre, above = done.Panels[1].Openings[i].FormedCentre;
            Assert.Equal(0, new Vec2(below.X - 100, below.Y - (40.0 * i - 80)).Length, 1e-9);
            Assert.Equal(0, new Vec2(below.X - above.X, below.Y - above.Y).Length, 1e-9);
            // And the holes line up: every place of one edge stands over one of the other's cylinder.
            Assert.All(done.Panels[1].Openings[i].Formed, p => Assert.Equal(3, new Vec2(p.X - below.X, p.Y - below.Y).Length, 0.005));
        }
    }

    [Fact]
    public void A_ring_of_holes_stands_about_its_centre_the_first_straight_up()
    {
        PanelSpec plate = Flat2("plate", "c") with { Openings = [new OpeningSpec("bolt", new RoundShape(8), new Vec2(10, 60), 0, new RingPattern(4, 50), null, null)] };
        PanelDevelopment panel = Develop(plate, Thin, ("c", Rectangle(200, 120)));
        // Upright in x = 0: across = y, up = z.
        Assert.Equal([(10.0, 85.0), (35.0, 60.0), (10.0, 35.0), (-15.0, 60.0)], panel.Openings.Select(o => (Math.Round(o.FormedCentre.Y, 6), Math.Round(o.FormedCentre.Z, 6))));
    }

    [Fact]
    public void A_round_hole_given_in_the_plan_of_a_bent_plate_is_developed_with_it()
    {
        var side = new SidePoints([new SidePoint(new Vec2(0, 0), false, null), new SidePoint(new Vec2(100, 0), true, 1), new SidePoint(new Vec2(200, 100), false, null)], Fit.Straight);
        PlanCurve plan = new("outline", Rectangle(80, 200));
        PanelSpec panel = Bent("base", new BentSpec([plan], side, null, Placement.None)) with { Openings = [new OpeningSpec("hole", new RoundShape(20), new Vec2(0, 150), 0, null, null, null)] };
        Box hole = Box.Around(Develop(panel).Openings[0].Flat);
        // On the slope of 45° it is √2 as long; across it keeps its width.
        Assert.Equal((20.0, 20 * Math.Sqrt(2)), (Math.Round(hole.Width, 2), hole.Height), (a, b) => Math.Abs(a.Item1 - b.Item1) < 0.011 && Math.Abs(a.Item2 - b.Item2) < 0.01);
    }

    [Theory]
    [InlineData(500, 0, "meets no metal at all")]
    [InlineData(295, 0, "runs off the metal")]
    public void An_opening_off_the_sheet_is_an_error_that_says_how_far(double aft, double across, string how)
    {
        Development done = Developer.Develop(Job(Thin, Curves(100, 100, 300), Loft(new OpeningSpec("lamp", new RoundShape(40), Vec2.Zero, 0, null, Over(aft, across), null))));
        Notice error = Assert.Single(done.Notices, n => n.Severity == Severity.Error);
        Assert.Equal(("opening-off-the-sheet", "panels[0].openings[0]"), (error.Code, error.Where));
        Assert.Contains(how, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Openings_that_meet_are_refused()
    {
        Development done = Developer.Develop(Job(Thin, Curves(100, 100, 300), Loft(
            new OpeningSpec("a", new RoundShape(40), Vec2.Zero, 0, null, Over(100, 0), null), new OpeningSpec("b", new RoundShape(40), Vec2.Zero, 0, null, Over(130, 0), null))));
        Assert.Equal("openings-meet", Assert.Single(done.Notices, n => n.Severity == Severity.Error).Code);
    }

    [Fact]
    public void A_closed_curve_of_the_job_can_be_let_through_a_stretched_sheet()
    {
        Job job = Crowned.JobOf(Crowned.Dome);
        Box3 box = Box3.Around(Developer.Develop(job).Panels[0].Mesh.Formed);
        var rim = Circle(15, new Placement(new Vec3(box.Middle.X, box.Middle.Y, box.Middle.Z + 500), 0, Math.PI / 2, 0));
        job = job with { Curves = [.. job.Curves, new NamedCurve("rim", rim)], Panels = [job.Panels[0] with { Openings = [new OpeningSpec("port", new CurveShape("rim"), Vec2.Zero, 0, null, null, null)] }] };
        PanelDevelopment panel = Run(job).Panels[0];
        BlankOpening port = Assert.Single(panel.Openings);
        Assert.All(port.Formed, p => Assert.Equal(15, new Vec2(p.X - box.Middle.X, p.Y - box.Middle.Y).Length, 0.02));
        Assert.Equal(panel.Mesh.Formed.Length, panel.Map!.Vertices.Length);
    }

    private readonly record struct Box3(Vec3 Min, Vec3 Max)
    {
        public Vec3 Middle => 0.5 * (Min + Max);

        public static Box3 Around(ImmutableArray<Vec3> p) => new(new Vec3(p.Min(v => v.X), p.Min(v => v.Y), p.Min(v => v.Z)), new Vec3(p.Max(v => v.X), p.Max(v => v.Y), p.Max(v => v.Z)));
    }

    private static IEnumerable<Vec2> WithMiddles(ImmutableArray<Vec2> loop) => loop.SelectMany((p, i) => new[] { p, 0.5 * (p + loop[(i + 1) % loop.Length]) });

    [Fact]
    public void A_measured_curve_goes_through_a_channel_where_it_stands()
    {
        // Not laid on the blank, as a hole of the channel would be: its flats stand 50 mm up at the sides of the bends, and the curve over the middle of the second flat.
        var channel = new BentSpec([], new SideRun([new SideLine(100), new SideBend(-Math.PI / 6, 1), new SideLine(200)], 0, Vec2.Zero), null, Placement.None) { Width = 120 };
        RunSpec ring = new([new ArcStep(20, 2 * Math.PI)], 0, new Vec2(-20, 180), new Placement(Vec3.Zero, 0, Math.PI / 2, 0));
        PanelSpec plate = new("p", [], ElementMatching.BendOnly) { Bent = channel, Openings = [new OpeningSpec("lamp", new CurveShape("ring"), Vec2.Zero, 0, null, null, null)] };
        BlankOpening lamp = Assert.Single(Run(Job(new SheetStock("mild steel", 1), [("ring", ring)], plate)).Panels[0].Openings);
        // Seen from above a circle of radius 20; on the flat that rises by 30° an oval 40/cos 30° long.
        Assert.Equal(40, lamp.Flat.Max(p => p.X) - lamp.Flat.Min(p => p.X), 0.02);
        Assert.Equal(40 / Math.Cos(Math.PI / 6), lamp.Flat.Max(p => p.Y) - lamp.Flat.Min(p => p.Y), 0.02);
        Assert.All(lamp.Formed, p => Assert.Equal(20, new Vec2(p.X - 180, p.Y).Length, 0.02));
    }

    [Fact]
    public void Every_pair_of_openings_that_meet_is_told_where_it_stands()
    {
        OpeningSpec Hole(string name, double across) => new(name, new RoundShape(20), new Vec2(across, 50), 0, null, null, null);
        PanelSpec plate = Flat2("p", "rim") with { Openings = [Hole("a", -60), Hole("b", -50), Hole("c", 40), Hole("d", 50)] };
        Notice[] errors = [.. Developer.Develop(Job(Steel, [("rim", Rectangle(300, 100))], plate)).Notices.Where(n => n.Severity == Severity.Error)];
        Assert.Equal(["panels[0].holes[1]", "panels[0].holes[3]"], errors.Select(e => e.Where));
        Assert.All(errors, e => Assert.Equal("openings-meet", e.Code));
    }

    [Fact]
    public void A_hole_of_a_flat_plate_goes_by_a_curve_that_was_measured_in_its_plane()
    {
        // The first curve is a straight one in a plane square to the plate.
        CurveSpec edge = Corners(new(-50, 0), new(50, 0)), rest = Corners(new(-50, 0), new(-50, 80), new(50, 80), new(50, 0)) with { At = Flat };
        PanelSpec plate = Flat2("p", "edge", "rest") with { Openings = [new OpeningSpec("h", new RoundShape(10), new Vec2(10, 30), 0, null, null, null)] };
        BlankOpening hole = Assert.Single(Run(Job(Steel, [("edge", edge), ("rest", rest)], plate)).Panels[0].Openings);
        Assert.Equal(0, (hole.FormedCentre - new Vec3(30, 10, 0)).Length, 1e-6);
    }

    [Fact]
    public void An_opening_across_the_seam_of_a_closed_pipe_is_an_error()
    {
        // The seam of the pipe is at its left.
        (string, CurveSpec)[] curves = [("front", Circle(60)), ("rear", Circle(60, new Placement(new Vec3(300, 0, 0), 0, 0, 0)))];
        PanelSpec pipe = new("pipe", ["front", "rear"], ElementMatching.BendOnly) { Openings = [new OpeningSpec("port", new RoundShape(50), Vec2.Zero, 0, null, new Placement(new Vec3(150, -100, 0), 0, 0, Math.PI / 2), null)] };
        Notice error = Assert.Single(Developer.Develop(Job(Steel, curves, pipe)).Notices, n => n.Severity == Severity.Error);
        Assert.Equal("opening-off-the-sheet", error.Code);
        Assert.Contains("seam where the sheet meets itself", error.Message, StringComparison.Ordinal);
    }
}

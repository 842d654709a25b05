using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;
using static SurfaceUnroll.Tests.Plates.PlateJobs;

namespace SurfaceUnroll.Tests.Patterns.Allowances;

public class CutLineTests
{
    private static JointSpec Trim(string panel, string edge, double extra, CornerStyle corners) =>
        new(null, [new EdgeName(panel, edge)], JointKind.Trim, extra, 0, null, corners, null);

    /// <summary>A plate of four sides, a, b, c and d, each with its own extra.</summary>
    private static PanelDevelopment Square(CornerStyle corners, double a, double b, double c, double d)
    {
        (string, CurveSpec) Side(string name, params Vec2[] p) => (name, Corners(p));
        (string Edge, double Extra)[] extras = [("a", a), ("b", b), ("c", c), ("d", d)];
        return Run(Job(
            Steel, [Side("a", new(0, 0), new(100, 0)), Side("b", new(100, 0), new(100, 50)), Side("c", new(100, 50), new(0, 50)), Side("d", new(0, 50), new(0, 0))],
            Flat2("p", "a", "b", "c", "d")).Joined([.. extras.Where(e => e.Extra > 0).Select(e => Trim("p", e.Edge, e.Extra, corners))])).Panels[0];
    }

    [Theory]
    [InlineData(CornerStyle.Mitre, 120 * 70)]
    [InlineData(CornerStyle.Square, 100 * 50 + 2 * 10 * (100 + 50))]
    [InlineData(CornerStyle.Round, 100 * 50 + 2 * 10 * (100 + 50) + Math.PI * 100)]
    public void Corners_of_equal_allowances_are_treated_as_asked(CornerStyle corners, double area) => Assert.Equal(area, Area(Square(corners, 10, 10, 10, 10).Cut), 0.5);

    [Fact]
    public void Mitred_allowances_of_different_width_meet_where_their_cut_lines_cross()
    {
        PanelDevelopment plate = Square(CornerStyle.Mitre, 5, 12, 0, 0);
        Assert.Equal(112 * 55, Area(plate.Cut), 12 * 5 + 1e-6);
        // The one free corner lies at (112, −5): the plate is drawn with its top edge level.
        Box net = Box.Around(plate.Net), cut = Box.Around(plate.Cut);
        Assert.Equal((12.0, 5.0), (cut.Width - net.Width, cut.Height - net.Height), (p, q) => Math.Abs(p.Item1 - q.Item1) + Math.Abs(p.Item2 - q.Item2) < 1e-9);
        Assert.Equal(100 * 50 + 100 * 5 + 50 * 12 + 5 * 12, Area(plate.Cut), 1e-6);
    }

    [Fact]
    public void A_mitred_allowance_keeps_within_the_line_of_a_neighbour_that_has_none()
    {
        // Corners of 45° and of 90°: on the slanting side the allowance loses half a square of 10 by 10.
        (string, CurveSpec) Side(string name, params Vec2[] p) => (name, Corners(p));
        PanelDevelopment plate = Run(Job(
            Steel, [Side("base", new(0, 0), new(100, 0)), Side("slant", new(100, 0), new(150, 50)), Side("rest", new(150, 50), new(0, 50), new(0, 0))],
            Flat2("p", "base", "slant", "rest")).Joined([Trim("p", "base", 10, CornerStyle.Mitre)])).Panels[0];
        Assert.Equal(100 * 10 - 0.5 * 10 * 10, plate.Areas.Allowances, 1e-6);
    }

    [Theory]
    [InlineData(CornerStyle.Mitre)]
    [InlineData(CornerStyle.Square)]
    [InlineData(CornerStyle.Round)]
    public void An_allowance_round_a_smooth_closed_curve_has_neither_start_nor_crack(CornerStyle corners)
    {
        PanelDevelopment disc = Run(Job(Steel, [("rim", Circle(60))], Flat2("p", "rim")).Joined([Trim("p", "rim", 12, corners)])).Panels[0];
        Vec2 centre = Box.Around(disc.Net).Centre;
        Assert.All(disc.Cut, p => Assert.Equal(72, (p - centre).Length, 0.01));
    }

    [Fact]
    public void A_gap_runs_on_straight_past_a_corner_wider_than_a_right_angle()
    {
        // The lower side meets its neighbours at 135° and at 45°.
        (string, CurveSpec) Side(string name, params Vec2[] p) => (name, Corners(p));
        PanelDevelopment plate = Run(Job(
            Steel, [Side("base", new(0, 0), new(100, 0)), Side("rest", new(100, 0), new(50, 50), new(-50, 50), new(0, 0))], Flat2("p", "base", "rest"))
            .Joined([new JointSpec(null, [new EdgeName("p", "base")], JointKind.Butt, 8, 0, null, null, null)])).Panels[0];
        Box net = Box.Around(plate.Net), cut = Box.Around(plate.Cut);
        Assert.Equal(4, net.Height - cut.Height, 1e-9);
        Assert.Equal(100 * 46, Area(plate.Cut), 1e-6);
    }

    [Fact]
    public void A_trimmed_bent_plate_keeps_the_allowances_of_its_edges()
    {
        var bent = new BentSpec([new PlanCurve("left", null), new PlanCurve("right", null)], new SidePoints([new(new Vec2(0, 0), false, null), new(new Vec2(100, 0), true, null), new(new Vec2(200, 60), false, null)], Fit.Straight), null, Placement.None);
        (string, CurveSpec)[] sides = [("left", Corners(new(-60, 0), new(-60, 180)) with { At = Flat }), ("right", Corners(new(60, 0), new(60, 180)) with { At = Flat })];
        PanelSpec plate = Bent("p", bent) with { Trims = [new TrimSpec("cut", new Placement(new Vec3(40, 0, 0), 0, 0, 0), null, 0, Way.Aft)] };
        PanelDevelopment panel = Run(Job(Steel, sides, plate).Joined([Trim("p", "left", 10, CornerStyle.Square), Trim("p", "right", 15, CornerStyle.Square)])).Panels[0];
        Assert.Equal(120 + 25, Box.Around(panel.Cut).Width, 1e-6);
        Assert.Equal(25 * Box.Around(panel.Net).Height, panel.Areas.Allowances, 0.01);
    }

    [Fact]
    public void A_gap_that_cuts_a_piece_in_two_is_told()
    {
        // Two squares joined by a neck 4 mm wide, a gap of 3 mm on either side of it.
        CurveSpec bone = Corners(new(0, 0), new(50, 0), new(50, 23), new(80, 23), new(80, 0), new(130, 0), new(130, 50), new(80, 50), new(80, 27), new(50, 27), new(50, 50), new(0, 50), new(0, 0));
        Development done = Run(Job(Steel, [("rim", bone)], Flat2("p", "rim")).Joined([new JointSpec(null, [new EdgeName("p", "rim")], JointKind.Butt, 6, 0, null, null, null)]));
        Assert.Contains(done.Notices, n => n.Code == "gap-parts-piece");
        Assert.Equal(44 * 44, Area(done.Panels[0].Cut), 1e-6);
    }

    [Fact]
    public void Area_of_allowances_is_width_by_length_and_the_turn_of_the_edge()
    {
        // Steiner's formula: an arch of radius 120 over π with legs of 55, 10 mm left on, gains 10·L + 10²·π/2.
        var arch = new RunSpec([new LineStep(55), new ArcStep(120, Math.PI), new LineStep(55)], 0, null, Placement.None);
        PanelDevelopment plate = Run(Job(Steel, [("arch", arch)], Flat2("p", "arch")).Joined([Trim("p", "arch", 10, CornerStyle.Square)])).Panels[0];
        Assert.Equal(10 * (110 + 120 * Math.PI) + 50 * Math.PI, plate.Areas.Allowances, 0.5);
        Assert.Equal(plate.Areas.Blank, plate.Areas.Formed + plate.Areas.Bends + plate.Areas.Forming + plate.Areas.Allowances, 1e-6);
        Assert.Equal(Area(plate.Cut), plate.Areas.Blank, 1e-6);
    }

    [Fact]
    public void A_butt_gap_takes_half_of_itself_off_each_mate()
    {
        (string, CurveSpec) Side(string name, params Vec2[] p) => (name, Corners(p));
        Development done = Run(Job(
            Steel, [Side("seam", new(0, 0), new(100, 0)), Side("u", new(0, 0), new(0, 50), new(100, 50), new(100, 0)), Side("n", new(0, 0), new(0, -50), new(100, -50), new(100, 0))],
            Flat2("up", "seam", "u"), Flat2("down", "seam", "n")).Joined([new JointSpec(null, [new EdgeName("up", "seam"), new EdgeName("down", "seam")], JointKind.Butt, 1, 0, null, null, null)]));
        Assert.All(done.Panels, p => Assert.Equal(100 * 49.5, Area(p.Cut), 1e-6));
        Assert.All(done.Panels, p => Assert.Equal(-50, p.Areas.Allowances, 1e-6));
    }

    [Fact]
    public void A_gap_that_leaves_nothing_of_a_piece_is_an_error()
    {
        (string, CurveSpec) Side(string name, params Vec2[] p) => (name, Corners(p));
        Development done = Developer.Develop(Job(
            Steel, [Side("seam", new(0, 0), new(100, 0)), Side("u", new(0, 0), new(0, 50), new(100, 50), new(100, 0)), Side("n", new(0, 0), new(0, -80), new(100, -80), new(100, 0))],
            Flat2("up", "seam", "u"), Flat2("down", "seam", "n")).Joined(new JointSpec(null, [new EdgeName("up", "seam"), new EdgeName("down", "seam")], JointKind.Butt, 110, 0, null, null, null)));
        Assert.Equal("gap-takes-all", Assert.Single(done.Notices, n => n.Severity == Severity.Error).Code);
        Assert.Empty(done.Panels);
    }

    [Fact]
    public void Lips_at_an_inner_corner_are_parted_by_a_notch()
    {
        (string, CurveSpec) Side(string name, params Vec2[] p) => (name, Corners(p));
        LipSpec lip = new(Math.PI / 2, 1, true, LipRelief.None, null);
        JointSpec Lip(string edge) => new(null, [new EdgeName("p", edge)], JointKind.Lip, 12, 0, lip, null, null);
        Development done = Run(Job(
            Steel, [Side("rest", new(40, 100), new(0, 100), new(0, 0), new(100, 0), new(100, 40)), Side("in", new(100, 40), new(40, 40)), Side("up", new(40, 40), new(40, 100))],
            Flat2("p", "rest", "in", "up")).Joined([Lip("in"), Lip("up")]));
        PanelDevelopment plate = done.Panels[0];
        Assert.True(OutlineCheck.IsSimple(plate.Cut));
        double width = plate.Allowances[0].Width;
        // Both bands, but the square in which they lie on each other counts once, and less the notch along its diagonal.
        Assert.InRange(plate.Areas.Allowances, 2 * 60 * width - width * width - 2.5 * Math.Sqrt(2) * width, 2 * 60 * width - width * width - 1);
    }

    [Fact]
    public void An_allowance_that_would_lie_on_the_piece_or_on_another_is_warned_of_and_the_cut_line_stays_simple()
    {
        // A gap of 6 mm between the legs of a U.
        (string, CurveSpec) Side(string name, params Vec2[] p) => (name, Corners(p));
        Development done = Run(Job(
            Steel,
            [Side("left", new(0, 0), new(0, 80)), Side("top", new(0, 80), new(47, 80)), Side("in left", new(47, 80), new(47, 20)), Side("in", new(47, 20), new(53, 20)), Side("in right", new(53, 20), new(53, 80)), Side("rest", new(53, 80), new(100, 80), new(100, 0), new(0, 0))],
            Flat2("u", "left", "top", "in left", "in", "in right", "rest")).Joined([Trim("u", "in left", 10, CornerStyle.Mitre)]));
        Assert.Contains(done.Notices, n => n.Code == "allowance-on-piece" && n.Message.Contains("u/in left", StringComparison.Ordinal));
        Assert.True(OutlineCheck.IsSimple(done.Panels[0].Cut));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(50)]
    [InlineData(100)]
    [InlineData(150)]
    public void Cut_lines_of_random_panels_are_valid_and_at_the_asked_distance(int first)
    {
        for (int seed = first; seed < first + 50; seed++) Check(new Random(seed), seed);
    }

    // A star-shaped plate of four to seven smooth or cornered edges, or a cone between two leaning arcs, each edge with its own allowance or none.
    private static void Check(Random random, int seed)
    {
        var style = (CornerStyle)random.Next(3);
        (Job job, string name, string[] edges) = seed % 4 == 3 ? Cone(random) : Star(random);
        Dictionary<string, double> widths = edges.Where(_ => random.NextDouble() < 0.7).ToDictionary(e => e, _ => 1 + 15 * random.NextDouble());
        PanelDevelopment panel = Run(job.Joined([.. widths.Select(w => Trim(name, w.Key, w.Value, style))])).Panels[0];
        Assert.True(OutlineCheck.IsSimple(panel.Cut), $"seed {seed}");
        Assert.True(Area(panel.Cut) >= Area(panel.Net) - 1e-6, $"seed {seed}");
        Vec2[] corners = [.. panel.Edges.SelectMany(e => new[] { e.Flat[0], e.Flat[^1] })];
        foreach (BlankEdge edge in panel.Edges)
        {
            double width = widths.GetValueOrDefault(edge.Name);
            for (int i = 0; i + 1 < edge.Flat.Length; i++)
            {
                Vec2 middle = 0.5 * (edge.Flat[i] + edge.Flat[i + 1]), across = (edge.Flat[i + 1] - edge.Flat[i]).Unit.Left;
                Vec2 outward = Inside(panel.Net, middle + 1e-4 * across) ? -across : across, wanted = middle + width * outward;
                bool nearCorner = corners.Any(c => (c - middle).Length < 2 + 2 * width) || Turns(edge.Flat).Any(t => (t - middle).Length < 2 + 2 * width);
                // Where another edge, or its own allowance, comes as near, the cut line goes round that.
                bool crowded = panel.Edges.Any(e => Distance(wanted, e.Flat, false) < Math.Max(width, e.Name == edge.Name ? 0 : widths.GetValueOrDefault(e.Name) + 2) - 0.004 && !(e.Name == edge.Name && width == 0))
                    || panel.Edges.Any(e => e.Name != edge.Name && Distance(wanted, e.Flat, false) < 4 * widths.GetValueOrDefault(e.Name) + 2);
                if (nearCorner || crowded) continue;
                Assert.True(Distance(wanted, panel.Cut, true) <= 0.01, $"seed {seed}, {edge.Name}, {Distance(wanted, panel.Cut, true):0.####} off");
            }
        }
    }

    private static (Job, string, string[]) Star(Random random)
    {
        int count = 4 + random.Next(4);
        Vec2[] corners = [.. Enumerable.Range(0, count).Select(k => (80 + 70 * random.NextDouble()) * Vec2.FromAngle(Math.Tau * (k + 0.6 * random.NextDouble()) / count))];
        var curves = new List<(string, CurveSpec)>();
        for (int k = 0; k < count; k++)
        {
            Vec2 a = corners[k], b = corners[(k + 1) % count], middle = 0.5 * (a + b), across = (b - a).Unit.Left;
            double bulge = (random.NextDouble() - 0.5) * 0.35 * (b - a).Length;
            ProfilePoint[] points = random.Next(3) switch
            {
                0 => [new(a, false), new(b, false)],
                1 => [new(a, false), new(middle + bulge * across, false), new(b, false)],
                _ => [new(a, false), new(middle + 0.5 * bulge * across, true), new(b, false)],
            };
            curves.Add(($"e{k}", new PointsSpec([.. points], false, Fit.Smooth, Placement.None)));
        }
        string[] names = [.. curves.Select(c => c.Item1)];
        return (Job(Steel, curves, Flat2("star", names)), "star", names);
    }

    private static (Job, string, string[]) Cone(Random random)
    {
        RunSpec Arc(double radius, double x) => new([new ArcStep(radius, 1.5 + random.NextDouble())], -0.5 + random.NextDouble() * 0.2, null, new Placement(new Vec3(x, 0, 0), 0, (random.NextDouble() - 0.5) * 0.6, 0));
        return (Job(Steel, [("a", Arc(90 + 60 * random.NextDouble(), 0)), ("b", Arc(60 + 60 * random.NextDouble(), 200))], new PanelSpec("cone", ["a", "b"], ElementMatching.BendOnly)), "cone", ["front", "right", "rear", "left"]);
    }

    private static IEnumerable<Vec2> Turns(ImmutableArray<Vec2> path) => Enumerable.Range(1, Math.Max(0, path.Length - 2)).Where(i =>
    {
        Vec2 a = (path[i] - path[i - 1]).Unit, b = (path[i + 1] - path[i]).Unit;
        return Math.Abs(Math.Atan2(a.Cross(b), a.Dot(b))) > 0.1;
    }).Select(i => path[i]);

    private static bool Inside(ImmutableArray<Vec2> loop, Vec2 p)
    {
        bool inside = false;
        for (int i = 0, j = loop.Length - 1; i < loop.Length; j = i++)
            if (loop[i].Y > p.Y != loop[j].Y > p.Y && p.X < loop[j].X + (p.Y - loop[j].Y) / (loop[i].Y - loop[j].Y) * (loop[i].X - loop[j].X)) inside = !inside;
        return inside;
    }

    private static double Distance(Vec2 p, ImmutableArray<Vec2> path, bool closed)
    {
        double nearest = double.PositiveInfinity;
        for (int i = 0; i < path.Length - (closed ? 0 : 1); i++)
        {
            Vec2 a = path[i], along = path[(i + 1) % path.Length] - a;
            double t = along.Dot(along) > 0 ? Math.Clamp((p - a).Dot(along) / along.Dot(along), 0, 1) : 0;
            nearest = Math.Min(nearest, (p - a - t * along).Length);
        }
        return nearest;
    }

    [Fact]
    public void The_gap_of_a_seam_leaves_no_hair_at_a_curved_neighbour()
    {
        // A pipe whose end is cut at 45°: its edge runs away from the seam in short steps.
        Placement At(double x) => new(new Vec3(x, 0, 0), 0, 0, 0);
        PanelSpec pipe = new("pipe", ["front", "rear"], ElementMatching.BendOnly) { Trims = [new TrimSpec("cut", new Placement(new Vec3(150, 0, 0), 0, Math.PI / 4, 0), null, 0, Way.Forward)] };
        PanelDevelopment panel = Run(Job(Steel, [("front", Circle(60)), ("rear", Circle(60, At(300)))], pipe)
            .Joined([new JointSpec(null, [new EdgeName("pipe", "left"), new EdgeName("pipe", "right")], JointKind.Butt, 4, 0, null, null, null)])).Panels[0];
        Assert.Equal(Box.Around(panel.Net).Width - 4, Box.Around(panel.Cut).Width, 1e-6);
        ImmutableArray<Vec2> cut = panel.Cut;
        for (int i = 0; i < cut.Length; i++)
        {
            (Vec2 before, Vec2 after) = (cut[i] - cut[(i + cut.Length - 1) % cut.Length], cut[(i + 1) % cut.Length] - cut[i]);
            Assert.True(before.Unit.Dot(after.Unit) > -0.95, $"hair at {cut[i]}");
        }
    }

    [Fact]
    public void An_allowance_that_parts_an_opening_is_an_error()
    {
        // Two windows joined by a slit 12 mm high, 10 mm left on all round.
        CurveSpec bone = Corners(new(-100, 20), new(-40, 20), new(-40, 44), new(40, 44), new(40, 20), new(100, 20), new(100, 80), new(40, 80), new(40, 56), new(-40, 56), new(-40, 80), new(-100, 80), new(-100, 20));
        PanelSpec plate = Flat2("p", "rim") with { Openings = [new OpeningSpec("window", new CurveShape("bone"), Vec2.Zero, 0, null, null, null)] };
        Development done = Developer.Develop(Job(Steel, [("rim", Rectangle(300, 100)), ("bone", bone)], plate).Joined([Trim("p", "window", 10, CornerStyle.Mitre)]));
        Assert.Equal("opening-closed", Assert.Single(done.Notices, n => n.Severity == Severity.Error).Code);
    }
}

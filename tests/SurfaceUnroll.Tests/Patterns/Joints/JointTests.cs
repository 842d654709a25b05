using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;
using static SurfaceUnroll.Tests.Plates.PlateJobs;

namespace SurfaceUnroll.Tests.Patterns.Joints;

public class JointTests
{
    private static double Rad(double degrees) => degrees * Math.PI / 180;

    private static readonly RunSpec Arch = new([new LineStep(55), new ArcStep(120, Math.PI), new LineStep(55)], 0, null, new Placement(Vec3.Zero, 0, Rad(25), 0));

    private static readonly PlanSideSpec Hoop = new(
        new RunSpec([new LineStep(175), new ArcStep(120, Math.PI), new LineStep(175)], 0, null, Placement.None), [new Vec2(0, 0), new Vec2(90, 0), new Vec2(150, 5), new Vec2(295, 50)], Fit.Smooth, Placement.None);

    private static readonly SheetStock Sheet = new("mild steel", 0.9);

    private static JointSpec Joint(JointKind kind, double width, int on, params string[] edges) => new(
        null, [.. edges.Select(e => new EdgeName(e.Split('/')[0], e.Split('/')[1]))], kind, width, on, kind == JointKind.Lip ? new LipSpec(null, null, null, LipRelief.Auto, null) : null, null, null);

    /// <summary>Cover from arch to hoop, front plate in the arch behind the plane of its front edge, base plate under the hoop.</summary>
    private static Job Cover(RunSpec? plateArch = null, params JointSpec[] joints) => Job(
        Sheet, [("arch", Arch), ("hoop", Hoop), ("plate arch", plateArch ?? Arch)],
        new PanelSpec("cover", ["arch", "hoop"], ElementMatching.BendOnly),
        Flat2("front plate", "plate arch") with { Flat = new FlatSpec(["plate arch"], Way.Forward), Measured = MeasuredFace.Inside },
        Bent("base", new BentSpec([new PlanCurve("hoop", null)], new SideOfCurve("hoop"), null, Placement.None))).Joined([.. joints]);

    private static readonly JointSpec[] Plain = [Joint(JointKind.Butt, 0, 0, "cover/front", "front plate/plate arch"), Joint(JointKind.Butt, 0, 0, "cover/rear", "base/hoop")];

    [Fact]
    public void Mates_that_share_a_curve_are_equally_long_and_lie_on_each_other()
    {
        Development done = Run(Cover(null, Plain));
        Assert.Equal(["A", "B"], done.Joints.Select(j => j.Label));
        Assert.All(done.Joints, j =>
        {
            Assert.InRange(Math.Abs(j.Difference), 0, 0.05);
            Assert.InRange(j.LargestGap, 0, 0.05);
            Assert.True(j.Fits);
        });
        Assert.DoesNotContain(done.Notices, n => n.Code.StartsWith("joint", StringComparison.Ordinal));
    }

    [Fact]
    public void Match_marks_of_both_mates_fall_together_on_the_formed_parts()
    {
        Development done = Run(Cover(null, Plain));
        foreach (JointFit joint in done.Joints)
        {
            MatchMark[] first = [.. done.Panels.Single(p => p.Spec.Name == joint.Mates[0].Edge.Panel).Marks.Where(m => m.Joint == joint.Label)];
            MatchMark[] second = [.. done.Panels.Single(p => p.Spec.Name == joint.Mates[1].Edge.Panel).Marks.Where(m => m.Joint == joint.Label)];
            Assert.True(first.Length >= 8);
            Assert.Equal(first.Select(m => m.Number), second.Select(m => m.Number));
            for (int i = 0; i < first.Length; i++) Assert.InRange((first[i].Formed - second[i].Formed).Length, 0, 0.05);
        }
        // Read back from the meshes, not from the marks: the place of the sheet that a mark's place on the blank comes from lies half a thickness off the joint line.
        foreach (PanelDevelopment panel in done.Panels)
            Assert.All(panel.Marks, m => Assert.Equal(0.45, (Formed(panel.Mesh, m.Flat) - m.Formed).Length, 0.02));
    }

    [Fact]
    public void A_curve_that_was_moved_by_two_millimetres_is_named_with_its_joint()
    {
        foreach (Vec3 moved in new[] { new Vec3(2, 0, 0), new Vec3(0, 2, 0), new Vec3(0, 0, 2) })
        {
            Development done = Run(Cover(Arch with { At = Arch.At with { Origin = moved } }, Plain));
            Notice notice = Assert.Single(done.Notices, n => n.Code is "joint-gap" or "joint-lengths-differ");
            Assert.Equal("joints[0]", notice.Where);
            Assert.Contains("cover/front", notice.Message, StringComparison.Ordinal);
            Assert.Contains("front plate/plate arch", notice.Message, StringComparison.Ordinal);
            Assert.InRange(done.Joints[0].LargestGap, 1.5, 2.001);
            Assert.False(done.Joints[0].Fits);
            Assert.True(done.Joints[1].Fits);
        }
    }

    [Fact]
    public void A_radius_two_millimetres_larger_is_named_by_its_length()
    {
        Development done = Run(Cover(Arch with { Steps = [new LineStep(55), new ArcStep(122, Math.PI), new LineStep(55)] }, Plain));
        Notice notice = Assert.Single(done.Notices, n => n.Code == "joint-lengths-differ");
        Assert.Contains("6.28 mm apart", notice.Message, StringComparison.Ordinal);
        Assert.Equal(2 * Math.PI, done.Joints[0].Difference, 0.01);
    }

    [Fact]
    public void Dihedral_angle_of_two_flat_plates_is_the_angle_between_them()
    {
        // A wall that leans 30° aft over a floor that runs aft: 60° between them.
        var floor = Rectangle(100, 80, new Placement(Vec3.Zero, 0, Math.PI / 2, 0));
        var wall = Rectangle(100, 60, new Placement(Vec3.Zero, 0, Rad(30), 0));
        Development done = Run(Job(new SheetStock("steel", 0), [("f", floor), ("w", wall)], Flat2("floor", "f"), Flat2("wall", "w")).Joined([]));
        Assert.Equal(2, done.Panels.Length);
        // A rectangle is one closed edge; split it so that the sides have names.
        (string, CurveSpec) Side(string name, Placement at, params Vec2[] p) => (name, Corners(p) with { At = at });
        Development joined = Run(Job(
            new SheetStock("steel", 0),
            [Side("hinge", floor.At, new(-50, 0), new(50, 0)), Side("far", floor.At, new(-50, 0), new(-50, 80), new(50, 80), new(50, 0)), Side("top", wall.At, new(-50, 0), new(-50, 60), new(50, 60), new(50, 0))],
            Flat2("floor", "hinge", "far"), Flat2("wall", "hinge", "top")).Joined([Joint(JointKind.Butt, 0, 0, "floor/hinge", "wall/hinge")]));
        Assert.Equal(60, joined.Joints[0].Dihedral!.Value.Least * 180 / Math.PI, 1e-6);
        Assert.Equal(60, joined.Joints[0].Dihedral!.Value.Greatest * 180 / Math.PI, 1e-6);
    }

    [Fact]
    public void A_lip_lies_against_its_mate_and_is_as_wide_on_the_blank_as_its_bend_leaves_it()
    {
        JointSpec lip = Joint(JointKind.Lip, 14, 1, "cover/front", "front plate/plate arch");
        Development done = Run(Cover(null, lip));
        PanelDevelopment plate = done.Panels[1];
        BendLine bend = Assert.Single(plate.Bends);
        Assert.Equal("plate arch", bend.Lip);
        // The cover goes aft from the plate, whose outside faces forward: the lip is bent away from it, down.
        Assert.False(bend.Up);
        Assert.Equal(14 - bend.Length.Deduction, Assert.Single(plate.Allowances).Width, 1e-12);
        Assert.Equal(Math.PI - done.Joints[0].Dihedral!.Value.Greatest, bend.LeastAngle, 0.02);
        Assert.Equal(Math.PI - done.Joints[0].Dihedral!.Value.Least, bend.GreatestAngle, 0.02);
        Assert.True(OutlineCheck.IsSimple(plate.Cut));
    }

    [Theory]
    [InlineData(90, 12)]
    [InlineData(60, 20)]
    public void Free_edge_of_a_lip_round_a_disc_shrinks_by_the_closed_form(double angle, double width)
    {
        // Flat it has the radius R + w', w' the developed width; bent through φ the middle of the sheet has R + w cos φ − (t/2) sin φ.
        const double radius = 100;
        JointSpec lip = Joint(JointKind.Lip, width, 0, "disc/rim") with { Lip = new LipSpec(Rad(angle), 1, true, LipRelief.None, null) };
        Development done = Run(Job(Steel, [("rim", Circle(radius))], Flat2("disc", "rim")).Joined([lip]));
        double developed = done.Panels[0].Allowances[0].Width;
        LipStrain strain = done.Joints[0].Mates[0].Lip!.Value;
        Assert.Equal(1 - (radius + width * Math.Cos(Rad(angle)) - 0.5 * Math.Sin(Rad(angle))) / (radius + developed), strain.MaxShrink, 1e-3);
        Assert.Equal(0, strain.MaxStretch, 1e-9);
        Assert.Equal(Math.PI * Math.Pow(radius + developed, 2), Area(done.Panels[0].Cut), 2.0);
    }

    [Fact]
    public void Free_edge_of_a_lip_round_a_hole_stretches_by_the_closed_form()
    {
        JointSpec lip = Joint(JointKind.Lip, 8, 0, "plate/lamp") with { Lip = new LipSpec(Rad(90), 1, true, LipRelief.None, null) };
        PanelSpec plate = Flat2("plate", "rim") with { Openings = [new OpeningSpec("lamp", new RoundShape(120), Vec2.Zero, 0, null, new Placement(new Vec3(50, 0, 100), 0, 0, 0), null)] };
        Development done = Run(Job(Steel, [("rim", Rectangle(300, 200))], plate).Joined([lip]));
        PanelDevelopment panel = done.Panels[0];
        double developed = panel.Allowances[0].Width;
        // The middle of the sheet stands half a thickness farther out than the face in the hole.
        Assert.Equal(60.5 / (60 - developed) - 1, done.Joints[0].Mates[0].Lip!.Value.MaxStretch, 2e-3);
        Assert.Equal(Math.PI * Math.Pow(60 - developed, 2), Area(panel.Openings[0].Cut), 2.0);
        Assert.Equal(panel.Areas.Blank, Area(panel.Cut) - Area(panel.Openings[0].Cut), 1e-6);
    }

    [Fact]
    public void A_lip_that_shrinks_too_much_is_notched_clear_of_its_bend()
    {
        JointSpec lip = Joint(JointKind.Lip, 14, 1, "cover/front", "front plate/plate arch");
        PanelDevelopment plate = Run(Cover(null, lip)).Panels[1];
        Assert.InRange(plate.Notches.Length, 10, 40);
        // Only along the arc, to within the reach over which its curvature is taken: the straight legs need none.
        Assert.All(plate.Notches, n => Assert.InRange(n.At, 55 - 8, 55 + Math.PI * 120 + 8));
        double tangent = plate.Bends[0].Length.Allowance - plate.Bends[0].Length.Setback;
        ImmutableArray<Vec2> net = plate.FindEdge("plate arch")!.Flat;
        Assert.All(plate.Notches, n => Assert.All(n.Outline, p => Assert.True(Distance(p, net) >= tangent + 0.9)));
        Assert.True(plate.Areas.Allowances > 0);
    }

    [Fact]
    public void Closed_edges_are_matched_wherever_they_begin_and_whichever_way_they_run()
    {
        // A disc that closes a pipe; its rim begins elsewhere and runs the other way round.
        var rim = new RunSpec([new ArcStep(100, -2 * Math.PI)], Rad(180), new Vec2(-100, 0), new Placement(Vec3.Zero, Rad(77), 0, 0));
        Job job = Job(
            new SheetStock("steel", 0), [("front", Circle(100)), ("rear", Circle(100, new Placement(new Vec3(200, 0, 0), 0, 0, 0))), ("rim", rim)],
            new PanelSpec("pipe", ["front", "rear"], ElementMatching.BendOnly), Flat2("cap", "rim")).Joined([Joint(JointKind.Butt, 0, 0, "pipe/front", "cap/rim")]);
        Development done = Run(job);
        Assert.InRange(done.Joints[0].LargestGap, 0, 0.01);
        MatchMark[] pipe = [.. done.Panels[0].Marks], cap = [.. done.Panels[1].Marks];
        Assert.Equal(pipe.Length, cap.Length);
        for (int i = 0; i < pipe.Length; i++) Assert.InRange((pipe[i].Formed - cap[i].Formed).Length, 0, 0.05);
        Assert.Equal(90, done.Joints[0].Dihedral!.Value.Least * 180 / Math.PI, 0.5);
    }

    [Fact]
    public void Pieces_of_a_split_panel_are_joined_at_their_seams_without_being_asked_to()
    {
        Development done = Crowned.Develop(Crowned.Dome, p => p with { Pieces = 3 });
        Assert.Equal(2, done.Joints.Length);
        Assert.Equal("sheet 1 of 3/right", done.Joints[0].Mates[0].Edge.ToString());
        Assert.All(done.Joints, j => Assert.InRange(j.LargestGap, 0, 1e-6));
        Assert.NotEmpty(done.Panels[1].Marks);
    }

    [Theory]
    [InlineData("cover/top", "Its edges are: cover/front, cover/right, cover/rear, cover/left.")]
    [InlineData("lid/front", "The panels are: cover, front plate, base.")]
    public void An_edge_that_is_not_there_is_an_error_that_names_those_that_are(string edge, string mend)
    {
        // The end lines of this cover are points.
        Development done = Developer.Develop(Cover(null, Joint(JointKind.Butt, 0, 0, edge, "base/hoop")));
        Notice error = Assert.Single(done.Notices, n => n.Severity == Severity.Error);
        Assert.Equal(("joint-edge-absent", "joints[0].edges[0]"), (error.Code, error.Where));
        Assert.Equal(mend.Replace(", cover/right", "", StringComparison.Ordinal).Replace(", cover/left", "", StringComparison.Ordinal), error.Mend);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void An_edge_that_a_trim_parted_is_marked_run_by_run_on_its_whole_mate_too(bool turned)
    {
        // A plate whose upper side is cut in two by a valley, on a whole one in the same plane.
        (string, CurveSpec)[] curves =
        [
            ("low", Corners(new(0, 0), new(400, 0))), ("sides", Corners(new(0, 0), new(0, -100), new(400, -100), new(400, 0))),
            ("rise", Corners(new(0, 0), new(0, 100), new(400, 100), new(400, 0))), ("notch", Corners(new(150, -50), new(200, 60), new(250, -50))),
        ];
        PanelSpec upper = Flat2("upper", "low", "rise") with { Trims = [new TrimSpec("valley", null, "wedge", 0, Way.Up)] };
        RunSpec Half(double x) => new([new ArcStep(40, Math.PI)], 0, new Vec2(160, -10), new Placement(new Vec3(x, 0, 0), 0, 0, 0));
        JointSpec joint = Joint(JointKind.Butt, 0, 0, turned ? ["lower/low", "upper/low"] : ["upper/low", "lower/low"]) with { MarkPitch = 40 };
        Job job = Job(Steel, [.. curves.Take(3), ("a", Half(-50)), ("b", Half(50))], upper, Flat2("lower", "low", "sides"), new PanelSpec("wedge", ["a", "b"], ElementMatching.BendOnly)).Joined(joint);
        Development done = Developer.Develop(job);
        Assert.False(done.Failed);
        PanelDevelopment cut = done.Panels[0], whole = done.Panels[1];
        Assert.Equal(2, cut.Edges.Count(e => e.Name == "low"));
        Assert.True(cut.Marks.Length >= 6);
        Assert.Equal(cut.Marks.Select(m => m.Number), whole.Marks.Select(m => m.Number));
        foreach ((MatchMark a, MatchMark b) in cut.Marks.Zip(whole.Marks)) Assert.InRange((a.Formed - b.Formed).Length, 0, 0.05);
        // The whole one is longer by the mouth of the valley.
        Assert.Contains(done.Notices, n => n.Code == "joint-lengths-differ");
    }

    private static Vec3 Formed(SheetMesh mesh, Vec2 flat)
    {
        (double best, Vec3 place) = (double.NegativeInfinity, Vec3.Zero);
        foreach ((int a, int b, int c) in mesh.Faces)
        {
            Vec2 ab = mesh.Flat[b] - mesh.Flat[a], ac = mesh.Flat[c] - mesh.Flat[a], p = flat - mesh.Flat[a];
            double det = ab.Cross(ac), u = p.Cross(ac) / det, v = ab.Cross(p) / det, inside = Math.Min(Math.Min(u, v), 1 - u - v);
            if (inside > best) (best, place) = (inside, mesh.Formed[a] + u * (mesh.Formed[b] - mesh.Formed[a]) + v * (mesh.Formed[c] - mesh.Formed[a]));
        }
        return place;
    }

    private static double Distance(Vec2 p, ImmutableArray<Vec2> path) => path.Zip(path.Skip(1), (a, b) =>
    {
        double t = Math.Clamp((p - a).Dot(b - a) / (b - a).Dot(b - a), 0, 1);
        return (p - a - t * (b - a)).Length;
    }).Min();
}

using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;
using static SurfaceUnroll.Tests.Plates.PlateJobs;

namespace SurfaceUnroll.Tests.Patterns.Joints;

public class LipTests
{
    private static double Rad(double degrees) => degrees * Math.PI / 180;

    private static JointSpec Lip(double width, double? angle, params string[] edges) => new(
        null, [.. edges.Select(e => new EdgeName(e.Split('/')[0], e.Split('/')[1]))], JointKind.Lip, width, 0, new LipSpec(angle is { } a ? Rad(a) : null, 1, true, LipRelief.Auto, null), null, null);

    private static PanelDevelopment Plate(CurveSpec outline, JointSpec lip) => Run(Job(Steel, [("rim", outline)], Flat2("p", "rim")).Joined(lip)).Panels[0];

    private static Notice Refused(Job job) => Assert.Single(Developer.Develop(job).Notices, n => n.Severity == Severity.Error);

    private static bool Holds(ImmutableArray<Vec2> outline, Vec2 p) => Polygons.Of(outline).Contains(new NetTopologySuite.Geometries.Point(p.X, p.Y));

    [Theory]
    [InlineData(90)]
    [InlineData(135)]
    [InlineData(150)]
    public void Width_on_the_blank_goes_to_where_the_outside_is_measured_to(double angle)
    {
        // Flat flange = width − setback; the bend takes θ(R + K t) and begins at the setback inside the edge. The setback is (R + t) tan(θ/2), to where the outside faces meet,
        // but of a free lip past 90° R + t, to its outermost place (DIN 6935).
        PanelDevelopment free = Plate(Rectangle(200, 100), Lip(15, angle, "p/rim"));
        double k = free.Bends[0].Length.K, outermost = 2 * Math.Min(1, Math.Tan(Rad(angle) / 2)), meeting = 2 * Math.Tan(Rad(angle) / 2);
        Assert.Equal(15 - 2 * outermost + Rad(angle) * (1 + k), free.Allowances[0].Width, 1e-9);
        Assert.Equal(15 - 2 * meeting + Rad(angle) * (1 + k), WallOnFloor(15, angle).Panels[0].Allowances[0].Width, 1e-9);
        Assert.Equal(0.38, k, 1e-9);
    }

    /// <summary>A wall with a lip at its foot on a floor, square to each other.</summary>
    private static Development WallOnFloor(double width, double angle)
    {
        JointSpec lip = new(null, [new EdgeName("wall", "chord"), new EdgeName("floor", "chord")], JointKind.Lip, width, 0, new LipSpec(Rad(angle), 1, null, LipRelief.Auto, null), null, null);
        (string, CurveSpec)[] open = [("wall", Corners(new(-50, 0), new(-50, 80), new(50, 80), new(50, 0))), ("floor", Corners(new(-50, 0), new(-50, 60), new(50, 60), new(50, 0)) with { At = Flat })];
        return Developer.Develop(Job(Steel, open, Flat2("wall", "wall"), Flat2("floor", "floor")).Joined(lip));
    }

    [Fact]
    public void Lips_part_at_the_corners_of_one_curve_so_that_each_can_be_bent()
    {
        // An L, on the blank with its first corner at the top left; its inner corner lies at (80, −60) from there.
        PanelDevelopment plate = Plate(Corners(new(0, 0), new(200, 0), new(200, -60), new(80, -60), new(80, -200), new(0, -200), new(0, 0)), Lip(15, 90, "p/rim"));
        Vec2 corner = new(Box.Around(plate.Net).Min.X, Box.Around(plate.Net).Max.Y), inner = corner + new Vec2(80, -60);
        for (double out1 = 0.5; out1 < 12; out1 += 0.5) Assert.False(Holds(plate.Cut, inner + out1 * new Vec2(1, -1)));
        // The bends, which begin 2 mm inside the edges, do not run through each other either.
        Assert.False(Holds(plate.Cut, inner + new Vec2(-1, 1)));
        Assert.False(Holds(plate.Cut, corner + new Vec2(1, -1)));
        Assert.True(Holds(plate.Cut, corner + new Vec2(3, -3)));
        Assert.True(OutlineCheck.IsSimple(plate.Cut));
        Assert.Empty(plate.InnerCuts);
    }

    [Fact]
    public void Mitred_lips_turned_in_flat_would_meet_on_the_bisector_of_their_corner()
    {
        JointSpec lip = Lip(15, 90, "p/rim") with { Corners = CornerStyle.Mitre };
        PanelDevelopment mitred = Plate(Rectangle(200, 100), lip), square = Plate(Rectangle(200, 100), lip with { Corners = CornerStyle.Square });
        double w = mitred.Allowances[0].Width;
        // Each of eight ends loses half a square, but for what the relief of the bends has taken at its root.
        Assert.Equal(8 * 0.5 * w * w, Area(square.Cut) - Area(mitred.Cut), 8 * 1.0);
    }

    [Fact]
    public void Lips_in_a_square_hole_are_parted_too()
    {
        PanelSpec plate = Flat2("p", "rim") with { Openings = [new OpeningSpec("hatch", new RectangleShape(80, 60, 0), Vec2.Zero, 0, null, new Placement(new Vec3(50, 0, 100), 0, 0, 0), null)] };
        PanelDevelopment panel = Run(Job(Steel, [("rim", Rectangle(300, 200))], plate).Joined(Lip(10, 90, "p/hatch"))).Panels[0];
        BlankOpening hatch = panel.Openings[0];
        double w = panel.Allowances[0].Width;
        foreach ((double x, double y) in new[] { (1.0, 1.0), (-1, 1), (1, -1), (-1, -1) })
            Assert.True(Holds(hatch.Cut, hatch.Centre + new Vec2(x * (40 - 0.5 * w), y * (30 - 0.5 * w))));
        Assert.False(Holds(hatch.Cut, hatch.Centre + new Vec2(40 - 0.5 * w, 0)));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_lip_across_a_sharp_bend_is_notched_there_and_more_on_the_inside_of_it(bool up)
    {
        // Bent up by 30.96° at 100 mm aft.
        var bent = new BentSpec([new PlanCurve("rim", null)], new SidePoints([new(new Vec2(0, 0), false, null), new(new Vec2(100, 0), true, null), new(new Vec2(200, 60), false, null)], Fit.Straight), null, Placement.None);
        CurveSpec rim = Rectangle(120, 180, Flat);
        JointSpec lip = Lip(12, 90, "p/rim") with { Lip = new LipSpec(Rad(90), 1, up, LipRelief.Auto, null) };
        PanelDevelopment panel = Run(Job(Steel, [("rim", rim)], Bent("p", bent)).Joined(lip)).Panels[0];
        Assert.Equal(2, panel.Notches.Length);
        BendLine bend = panel.Bends.Single(b => b.Lip is null);
        double far = panel.Bends[0].Length.Allowance - panel.Bends[0].Length.Setback;
        double opening = up ? 2 * (panel.Allowances[0].Width - far) * Math.Tan(0.5 * bend.Angle) : 0;
        Assert.All(panel.Notches, n => Assert.Equal(bend.Length.Allowance + 1 + opening, n.Width, 1e-6));
        Assert.Equal(Math.Atan2(60, 100), bend.Angle, 1e-9);
        // Through the bend of the lip and to its free edge.
        foreach (Vec2 end in new[] { bend.Centre[0], bend.Centre[^1] })
        {
            Vec2 outward = new(Math.Sign(end.X - Box.Around(panel.Net).Centre.X), 0);
            Assert.False(Holds(panel.Cut, end + 5 * outward));
            Assert.False(Holds(panel.Cut, end - 1 * outward));
            Assert.True(Holds(panel.Cut, end - 3 * outward));
        }
        Assert.DoesNotContain(Run(Job(Steel, [("rim", rim)], Bent("p", bent)).Joined(lip)).Notices, n => n.Code == "lip-curved");
    }

    [Fact]
    public void A_lip_wider_than_its_hole_leaves_room_for_is_an_error_that_says_how_wide_it_may_be()
    {
        PanelSpec plate = Flat2("p", "rim") with { Openings = [new OpeningSpec("drain", new RoundShape(30), Vec2.Zero, 0, null, new Placement(new Vec3(50, 0, 100), 0, 0, 0), null)] };
        Job With(double width) => Job(Steel, [("rim", Rectangle(300, 200))], plate).Joined(Lip(width, 90, "p/drain"));
        Notice error = Refused(With(40));
        Assert.Equal(("lip-too-wide", "joints[0].width"), (error.Code, error.Where));
        Assert.Contains("13.4 mm", error.Mend, StringComparison.Ordinal);
        Assert.False(Developer.Develop(With(13.3)).Failed);
    }

    [Fact]
    public void A_lip_that_cannot_be_bent_is_an_error()
    {
        Assert.Equal("lip-too-narrow", Refused(Job(Steel, [("rim", Rectangle(300, 200))], Flat2("p", "rim")).Joined(Lip(1.9, 90, "p/rim"))).Code);
        Assert.Equal("lip-closed", Assert.Single(WallOnFloor(10, 170).Notices, n => n.Severity == Severity.Error).Code);
    }

    [Fact]
    public void Lips_too_wide_for_their_window_are_an_error()
    {
        Job With(double width, double height, double lip) => Job(Steel, [("rim", Rectangle(300, 200))], Flat2("p", "rim") with
        {
            Openings = [new OpeningSpec("hatch", new RectangleShape(width, height, 0), Vec2.Zero, 0, null, new Placement(new Vec3(50, 0, 100), 0, 0, 0), null)],
        }).Joined(Lip(lip, 90, "p/hatch"));
        Assert.Equal("opening-closed", Refused(With(40, 40, 30)).Code);
        Assert.Equal("opening-closed", Refused(With(40, 20, 18)).Code);
        Assert.False(Developer.Develop(With(40, 40, 10)).Failed);
    }

    [Fact]
    public void The_lip_of_a_window_across_a_sharp_bend_is_notched_on_both_sides()
    {
        var bent = new BentSpec([new PlanCurve("rim", null)], new SidePoints([new(new Vec2(0, 0), false, null), new(new Vec2(100, 0), true, null), new(new Vec2(200, 60), false, null)], Fit.Straight), null, Placement.None);
        PanelSpec plate = Bent("p", bent) with { Openings = [new OpeningSpec("hatch", new RectangleShape(60, 50, 0), new Vec2(0, 100), 0, null, null, null)] };
        PanelDevelopment panel = Run(Job(Steel, [("rim", Rectangle(160, 190, Flat))], plate).Joined(Lip(10, 90, "p/hatch"))).Panels[0];
        double[] across = [.. panel.Notches.Select(n => n.Outline.Average(p => p.X)).Order()];
        Assert.Equal(2, across.Length);
        Assert.True(across[0] < -20 && across[1] > 20);
    }

    [Fact]
    public void Notches_of_a_closed_lip_stand_evenly_all_round()
    {
        PanelDevelopment disc = Plate(Circle(60), Lip(15, 90, "p/rim"));
        double[] at = [.. disc.Notches.Select(n => n.At).Order()];
        double[] gaps = [.. at.Zip(at.Skip(1).Append(at[0] + 2 * Math.PI * 60), (a, b) => b - a)];
        Assert.Equal(1, gaps.Max() / gaps.Min(), 0.02);
    }

    [Fact]
    public void A_lip_where_the_sheet_runs_on_straight_is_an_error()
    {
        Placement At(double x) => new(new Vec3(x, 0, 0), 0, 0, 0);
        PanelSpec pipe = new("pipe", ["front", "rear"], ElementMatching.BendOnly);
        Assert.Equal("lip-no-bend", Refused(Job(Steel, [("front", Circle(50)), ("rear", Circle(50, At(200)))], pipe).Joined(Lip(10, null, "pipe/left", "pipe/right"))).Code);
    }

    [Fact]
    public void A_lip_at_another_angle_than_its_mate_stands_at_is_told()
    {
        Development done = WallOnFloor(12, 60);
        Assert.Contains(done.Notices, n => n.Code == "lip-angle-differs" && n.Message.Contains("60°", StringComparison.Ordinal) && n.Message.Contains("90°", StringComparison.Ordinal));
    }
}

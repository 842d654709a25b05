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
    public void Width_on_the_blank_goes_to_where_the_outside_faces_meet_at_any_angle(double angle)
    {
        // Flat flange = width − (R + t) tan(θ/2); the bend takes θ(R + K t), K = 0.33 of the soft sheet at R/t = 1, and begins at (R + t) tan(θ/2) inside the edge.
        PanelDevelopment plate = Plate(Rectangle(200, 100), Lip(15, angle, "p/rim"));
        double setback = 2 * Math.Tan(Rad(angle) / 2);
        Assert.Equal(15 - setback + Rad(angle) * (1 + plate.Bends[0].Length.K) - setback, plate.Allowances[0].Width, 1e-9);
        Assert.Equal(0.38, plate.Bends[0].Length.K, 0.051);
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

    [Theory]
    [InlineData(10, 170.0, "lip-closed")]
    [InlineData(1.9, 90.0, "lip-too-narrow")]
    public void A_lip_that_cannot_be_bent_is_an_error(double width, double? angle, string code) =>
        Assert.Equal(code, Refused(Job(Steel, [("rim", Rectangle(300, 200))], Flat2("p", "rim")).Joined(Lip(width, angle, "p/rim"))).Code);

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
        JointSpec lip = new(null, [new EdgeName("wall", "chord"), new EdgeName("floor", "chord")], JointKind.Lip, 12, 0, new LipSpec(Rad(60), 1, null, LipRelief.Auto, null), null, null);
        (string, CurveSpec)[] open = [("wall", Corners(new(-50, 0), new(-50, 80), new(50, 80), new(50, 0))), ("floor", Corners(new(-50, 0), new(-50, 60), new(50, 60), new(50, 0)) with { At = Flat })];
        Development done = Run(Job(Steel, open, Flat2("wall", "wall"), Flat2("floor", "floor")).Joined(lip));
        Assert.Contains(done.Notices, n => n.Code == "lip-angle-differs" && n.Message.Contains("60°", StringComparison.Ordinal) && n.Message.Contains("90°", StringComparison.Ordinal));
    }
}

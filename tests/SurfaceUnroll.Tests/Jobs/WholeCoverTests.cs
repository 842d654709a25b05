using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;
using SurfaceUnroll.Tests.Files.JobFiles;
using SurfaceUnroll.Tests.Plates;

namespace SurfaceUnroll.Tests.Jobs;

/// <summary>Demo jobs of several pieces: they must fit each other.</summary>
public class WholeCoverTests
{
    private const string Trike = "jobs/trike-full-cover.json", Inch = "jobs/trike-full-cover-inch.json", Hood = "jobs/bench-hood.json";

    private static Development Develop(string name) => PlateJobs.Run(Fixtures.Read(name).Job!);

    [Theory]
    [InlineData(Trike)]
    [InlineData(Inch)]
    [InlineData(Hood)]
    public void Mates_of_the_demo_agree_in_length_and_place(string name)
    {
        Development done = Develop(name);
        Assert.NotEmpty(done.Joints);
        Assert.All(done.Joints, j =>
        {
            Assert.InRange(Math.Abs(j.Difference), 0, 0.05);
            Assert.InRange(j.LargestGap, 0, 0.05);
        });
        Assert.DoesNotContain(done.Notices, n => n.Severity == Severity.Warning);
    }

    [Theory]
    [InlineData(Trike)]
    [InlineData(Inch)]
    [InlineData(Hood)]
    public void Match_marks_of_the_demo_fall_together_on_the_formed_pieces(string name)
    {
        Development done = Develop(name);
        foreach (JointFit joint in done.Joints.Where(j => j.Mates.Length == 2))
        {
            MatchMark[][] mates = [.. joint.Mates.Select(m => done.Panels.Single(p => p.Spec.Name == m.Edge.Panel).Marks.Where(k => k.Joint == joint.Label && k.Edge == m.Edge.Edge).ToArray())];
            Assert.NotEmpty(mates[0]);
            Assert.Equal(mates[0].Select(m => m.Number), mates[1].Select(m => m.Number));
            for (int i = 0; i < mates[0].Length; i++) Assert.InRange((mates[0][i].Formed - mates[1][i].Formed).Length, 0, 0.05);
        }
        // Each mark stands on its net edge of the blank.
        foreach (PanelDevelopment panel in done.Panels)
        {
            foreach (MatchMark mark in panel.Marks)
            {
                IEnumerable<ImmutableArray<Vec2>> edges = panel.Edges.Where(e => e.Name == mark.Edge).Select(e => e.Flat).Concat(panel.Openings.Where(o => o.Name == mark.Edge).Select(o => o.Flat.Add(o.Flat[0])));
                Assert.InRange(edges.Min(e => Distance(mark.Flat, e)), 0, 0.01);
            }
        }
    }

    [Theory]
    [InlineData(2, 0)]
    [InlineData(0, 2)]
    [InlineData(-1.5, 1.5)]
    public void A_curve_that_one_piece_follows_two_millimetres_off_is_named_with_its_joint(double aft, double right)
    {
        Job job = Fixtures.Read(Trike).Job!;
        var hoop = (PlanSideSpec)job.Curves.Single(c => c.Name == "hoop").Spec;
        PanelSpec basePlate = job.Panels.Single(p => p.Name == "base plate");
        PanelSpec moved = basePlate with { Bent = basePlate.Bent! with { Plan = [new PlanCurve("moved hoop", null), new PlanCurve("apron", null)] } };
        Development done = PlateJobs.Run(job with
        {
            Curves = [.. job.Curves, new NamedCurve("moved hoop", hoop with { At = hoop.At with { Origin = new Vec3(aft, right, 0) } })],
            Panels = job.Panels.Replace(basePlate, moved),
            Joints = [.. job.Joints.Select(j => j with { Edges = [.. j.Edges.Select(e => e.Edge == "hoop" ? e with { Edge = "moved hoop" } : e)] })],
        });
        Notice named = Assert.Single(done.Notices, n => n.Code is "joint-gap" or "joint-lengths-differ");
        Assert.Equal("joints[1]", named.Where);
        Assert.Contains("base plate/moved hoop", named.Message, StringComparison.Ordinal);
        // The gap is that of the move square to the edge, at its largest place nearly all of it; moved aft, the edge climbs the kicked-up plate, whose slope is below 0.6.
        Assert.InRange(done.Joints[1].LargestGap, 1.5, Math.Sqrt(aft * aft * (1 + 0.6 * 0.6) + right * right) + 0.01);
        Assert.All(done.Joints.Where(j => j.Label != "B"), j => Assert.True(j.Fits));
    }

    [Theory]
    [InlineData(Trike)]
    [InlineData(Inch)]
    [InlineData(Hood)]
    public void Every_cut_line_is_simple_and_every_opening_lies_inside_it_clear_of_others(string name) => Assert.All(Develop(name).Panels, panel =>
    {
        Assert.True(OutlineCheck.IsSimple(panel.Cut));
        Assert.True(OutlineCheck.IsSimple(panel.Net));
        var whole = Polygons.Of(panel.Cut);
        Assert.All(panel.Openings, o => Assert.True(OutlineCheck.IsSimple(o.Cut) && whole.Contains(Polygons.Of(o.Cut))));
        foreach (BlankOpening a in panel.Openings)
            Assert.All(panel.Openings.Where(b => b.Name != a.Name), b => Assert.False(Polygons.Of(a.Cut).Intersects(Polygons.Of(b.Cut))));
    });

    // Formed triangles, bend allowances and Steiner's formula for the bands, none of them taken from the account itself; the tapered ends of mitred bands are less than a ten thousandth.
    [Theory]
    [InlineData(Trike)]
    [InlineData(Inch)]
    [InlineData(Hood)]
    public void Area_of_every_blank_is_explained_to_a_thousandth(string name) => Assert.All(Develop(name).Panels, panel =>
    {
        double blank = PlateJobs.Area(panel.Cut) - panel.Openings.Sum(o => PlateJobs.Area(o.Cut)) - panel.InnerCuts.Sum(PlateJobs.Area);
        double formed = panel.Mesh.Faces.Sum(f => 0.5 * (panel.Mesh.Formed[f.B] - panel.Mesh.Formed[f.A]).Cross(panel.Mesh.Formed[f.C] - panel.Mesh.Formed[f.A]).Length);
        double t = Fixtures.Read(name).Job!.Sheet.Thickness;
        double bends = panel.Bends.Where(b => b.Lip is null).Sum(b => (b.Centre[^1] - b.Centre[0]).Length * (b.Length.Allowance - (b.InsideRadius + 0.5 * t) * b.Angle));
        double allowances = panel.Allowances.Sum(a => panel.Edges.Where(e => e.Name == a.Edge).Sum(e => Band(panel, e.Flat, a.Width)));
        double notches = panel.Notches.Sum(n => PlateJobs.Area(n.Outline) - n.Width);
        Assert.Equal(1, (formed + bends + allowances - notches) / blank, 1e-3);
        Assert.Equal(blank, panel.Areas.Blank, 1e-6 * blank);
        Assert.Equal(blank, panel.Areas.Formed + panel.Areas.Bends + panel.Areas.Forming + panel.Areas.Allowances, 1e-6 * blank);
    });

    [Fact]
    public void Holes_shared_by_base_and_coupons_lie_at_one_place_and_in_line()
    {
        Development done = Develop(Trike);
        foreach (string side in new[] { "left", "right" })
        {
            BlankOpening[] plate = Row("base plate"), coupon = Row($"{side} coupon");
            Assert.Equal(4, plate.Length);
            for (int i = 0; i < 4; i++)
            {
                Vec3 apart = plate[i].FormedCentre - coupon[i].FormedCentre;
                Assert.Equal(0, new Vec2(apart.X, apart.Y).Length, 1e-6);
            }

            BlankOpening[] Row(string panel) => [.. done.Panels.Single(p => p.Spec.Name == panel).Openings.Where(o => o.Name.StartsWith(side, StringComparison.Ordinal))];
        }
    }

    // Measures are rounded by a thirty-second of an inch at most.
    [Fact]
    public void The_inch_twin_is_the_same_cover_measured_with_another_tape()
    {
        Development metric = Develop(Trike), inch = Develop(Inch);
        for (int i = 0; i < metric.Panels.Length; i++)
        {
            Assert.Equal(metric.Panels[i].Spec.Name, inch.Panels[i].Spec.Name);
            Assert.Equal(metric.Panels[i].Openings.Select(o => o.Name), inch.Panels[i].Openings.Select(o => o.Name));
            Assert.Equal(1, inch.Panels[i].FlatArea / metric.Panels[i].FlatArea, 0.03);
        }
        // Joint B is not trimmed: its edge is the sum of five rounded measures.
        Assert.InRange(inch.Joints[1].Mates[0].Length - metric.Joints[1].Mates[0].Length, -5 * 25.4 / 32, 5 * 25.4 / 32);
    }

    // Width by length, and half the width squared by what the edge turns away from the piece.
    private static double Band(PanelDevelopment panel, ImmutableArray<Vec2> edge, double width)
    {
        double length = edge.Zip(edge.Skip(1), (a, b) => (b - a).Length).Sum(), turn = 0;
        for (int i = 1; i + 1 < edge.Length; i++)
        {
            Vec2 a = edge[i] - edge[i - 1], b = edge[i + 1] - edge[i];
            turn += Math.Atan2(a.Cross(b), a.Dot(b));
        }
        Vec2 middle = 0.5 * (edge[edge.Length / 2 - 1] + edge[edge.Length / 2]), left = (edge[edge.Length / 2] - edge[edge.Length / 2 - 1]).Unit.Left;
        bool metalOnLeft = Polygons.Of(panel.Net).Contains(new NetTopologySuite.Geometries.Point(middle.X + 0.01 * left.X, middle.Y + 0.01 * left.Y));
        return width * length + 0.5 * width * width * (metalOnLeft ? turn : -turn);
    }

    private static double Distance(Vec2 p, ImmutableArray<Vec2> path) => path.Zip(path.Skip(1), (a, b) =>
    {
        Vec2 along = b - a;
        double t = along.Dot(along) > 0 ? Math.Clamp((p - a).Dot(along) / along.Dot(along), 0, 1) : 0;
        return (p - a - t * along).Length;
    }).Min();
}

using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;
using static SurfaceUnroll.Tests.Plates.PlateJobs;

namespace SurfaceUnroll.Tests.Plates;

public class FlatPlateTests
{
    private static readonly RunSpec Arch = new([new LineStep(55), new ArcStep(120, Math.PI), new LineStep(55)], 0, null, new Placement(new Vec3(10, 0, 5), 0, 25 * Math.PI / 180, 0));

    [Fact]
    public void Plate_under_an_arch_has_the_area_and_edges_of_the_closed_form()
    {
        PanelDevelopment plate = Develop(Flat2("front", "arch"), null, ("arch", Arch));
        Assert.Equal(240 * 55 + Math.PI * 120 * 120 / 2, plate.FlatArea, 1.0);
        Assert.Equal(["arch", "chord"], plate.Edges.Select(e => e.Name).Order());
        Assert.Equal(110 + Math.PI * 120, plate.FindEdge("arch")!.FlatLength, 0.01);
        Assert.Equal(240, plate.FindEdge("chord")!.FlatLength, 1e-9);
        Assert.Equal(Verdict.BendsOnly, plate.Verdict);
        Assert.True(OutlineCheck.IsSimple(plate.Cut));
    }

    [Fact]
    public void An_upright_plate_stands_on_the_blank_as_it_is_seen_from_its_outside()
    {
        // A tab on the right of the plate.
        PointsSpec lopsided = Corners(new(0, 0), new(0, 80), new(50, 80), new(90, 40), new(50, 0));
        PanelDevelopment aft = Develop(Flat2("p", "c"), null, ("c", lopsided));
        Assert.True(aft.Cut.MaxBy(p => p.X).Y < -10 && aft.Cut.Max(p => p.X) > 0, "seen from aft the right side is on the right");
        PanelSpec forward = Flat2("p", "c") with { Flat = new FlatSpec(["c"], Way.Forward) };
        PanelDevelopment seen = Develop(forward, null, ("c", lopsided));
        Vec2 tab = seen.Cut.MinBy(p => Math.Abs(p.Y + 40));
        Assert.True(tab.X < 0, "seen from the front the right side is on the left");
        // The middle lies half the thickness inside the outside face.
        Assert.All(seen.Mesh.Formed, p => Assert.Equal(0.5, p.X, 1e-12));
        Assert.All(aft.Mesh.Formed, p => Assert.Equal(-0.5, p.X, 1e-12));
    }

    [Fact]
    public void A_level_plate_lies_forward_up_with_its_upper_face_up()
    {
        PointsSpec pointed = Corners(new(-50, 0), new(-50, 60), new(0, 100), new(50, 60), new(50, 0)) with { At = Flat };
        PanelDevelopment plate = Develop(Flat2("p", "c"), null, ("c", pointed));
        // Up of a curve that lies flat points aft, so its tip points down on the blank.
        Assert.Equal(0, plate.Cut.MinBy(p => p.Y).X, 1e-9);
        Assert.Equal(0, plate.Cut.Max(p => p.Y), 1e-9);
        Assert.All(plate.Mesh.Formed, p => Assert.Equal(-0.5, p.Z, 1e-12));
    }

    [Fact]
    public void Curves_in_any_order_and_direction_close_to_one_outline()
    {
        (string, CurveSpec) Side(string name, params Vec2[] p) => (name, Corners(p));
        PanelDevelopment plate = Develop(
            Flat2("p", "a", "c", "b", "d"), null,
            Side("a", new(0, 0), new(100, 0)), Side("b", new(100, 50), new(0, 50)), Side("c", new(100, 50), new(100, 0)), Side("d", new(0, 50), new(0, 0)));
        Assert.Equal(5000, plate.FlatArea, 1e-9);
        Assert.Equal(["a", "b", "c", "d"], plate.Edges.Select(e => e.Name).Order());
        Assert.All(plate.Edges, e => Assert.Equal(e.Name is "a" or "b" ? 100 : 50, e.FormedLength, 1e-9));
    }

    [Fact]
    public void Formed_and_flat_mesh_of_a_flat_plate_are_congruent()
    {
        PanelDevelopment plate = Develop(Flat2("front", "arch"), null, ("arch", Arch));
        SheetMesh mesh = plate.Mesh;
        foreach ((int a, int b, int c) in mesh.Faces)
            foreach ((int i, int j) in new[] { (a, b), (b, c), (c, a) })
                Assert.Equal((mesh.Formed[i] - mesh.Formed[j]).Length, (mesh.Flat[i] - mesh.Flat[j]).Length, 1e-9);
        Assert.Equal(plate.FlatArea, mesh.Faces.Sum(f => 0.5 * (mesh.Flat[f.B] - mesh.Flat[f.A]).Cross(mesh.Flat[f.C] - mesh.Flat[f.A])), 1e-6);
        // Counter-clockwise from outside, in space too.
        Assert.All(mesh.Faces, f => Assert.True((mesh.Formed[f.B] - mesh.Formed[f.A]).Cross(mesh.Formed[f.C] - mesh.Formed[f.A]).X > 0));
    }

    [Theory]
    [InlineData("plate-not-flat")]
    [InlineData("plate-no-area")]
    [InlineData("plate-crosses-itself")]
    [InlineData("plate-outside")]
    public void What_is_no_plate_is_refused_with_its_reason(string code)
    {
        (PanelSpec panel, (string, CurveSpec)[] curves) = code switch
        {
            "plate-not-flat" => (Flat2("p", "a"), [("a", (CurveSpec)new SpaceSpec([new(0, 0, 0), new(0, 100, 0), new(8, 100, 100), new(0, 0, 100)], Fit.Straight, Placement.None))]),
            "plate-no-area" => (Flat2("p", "a"), [("a", Corners(new(0, 0), new(100, 0)))]),
            "plate-crosses-itself" => (Flat2("p", "a", "b"), [("a", Corners(new(0, 0), new(100, 100))), ("b", Corners(new(0, 100), new(100, 0)))]),
            _ => (Flat2("p", "a") with { Flat = new FlatSpec(["a"], Way.Left) }, new (string, CurveSpec)[] { ("a", Corners(new(0, 0), new(0, 50), new(50, 50))) }),
        };
        Development done = Developer.Develop(Job(Steel, curves, panel));
        Notice error = Assert.Single(done.Notices, n => n.Severity == Severity.Error);
        Assert.Equal(code, error.Code);
        Assert.StartsWith("panels[0].flat", error.Where.Replace(".outside", ".flat", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Empty(done.Panels);
    }
}

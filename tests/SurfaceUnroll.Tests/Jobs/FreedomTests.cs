using System.Text.Json;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Files.JobTexts;
using SurfaceUnroll.Files.Report;
using SurfaceUnroll.Flattening;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Tests.Files.JobFiles;

namespace SurfaceUnroll.Tests.Jobs;

public class FreedomTests
{
    private const double Torsal = 0.01 * Math.PI / 180;

    private static readonly Lazy<Development> Cowl = new(() => Developer.Develop(Demo()));

    private static Job Demo(string freedom = "\"rear\": 4") =>
        JobFile.Read(Fixtures.Text("jobs/pump-cowl-freedom.json").Replace("\"freedom\": { \"rear\": 4 }", $"\"freedom\": {{ {freedom} }}", StringComparison.Ordinal)).Job!;

    [Fact]
    public void Dented_arch_is_moved_and_the_cowl_only_bends()
    {
        PanelDevelopment cowl = Cowl.Value.Panels[0];
        FreedomFit fit = cowl.Freedom!;
        Assert.Equal(Verdict.BendsOnly, cowl.Verdict);
        Assert.InRange(cowl.Twist.Max, 0, Torsal);
        Assert.True(fit.Twist.Max > 5 * Math.PI / 180 && fit.Strain is null or { MaxStretch: > 0 });
        // The dent is 8.4 mm deep, and the move that spans it outward less than half of that.
        Assert.InRange(fit.Largest.Move, 1, 4);
        Assert.InRange(fit.Mean, 0.1, Math.Abs(fit.Largest.Move));
        Assert.Equal(Severity.Note, Assert.Single(Cowl.Value.Notices, n => n.Code == "freedom-moved").Severity);
    }

    // Lines of one fan end in one place: places that differ by a hair would leave cracks in the sheet.
    [Fact]
    public void Sheet_of_a_moved_edge_is_whole()
    {
        SheetMesh mesh = Cowl.Value.Panels[0].Mesh;
        Assert.Empty(DiscCheck.Check(new TriangleMesh(mesh.Formed, mesh.Faces)));
    }

    [Fact]
    public void Plate_that_uses_the_curve_follows_it()
    {
        JointFit joint = Assert.Single(Cowl.Value.Joints);
        Assert.True(joint.Fits);
        Assert.Equal(0, joint.Difference, 0.01);
        PanelDevelopment plate = Cowl.Value.Panels[1];
        Assert.Null(plate.Freedom);
        // The outline of the flat plate runs through every place of the moved edge: distances along it are the measured face's.
        Assert.Equal(Cowl.Value.Panels[0].Freedom!.Edge.Length, plate.FindEdge("rear")!.FlatLength, 1e-3);
    }

    [Fact]
    public void Report_gives_the_moved_edge_and_the_forming_it_saves()
    {
        using var report = JsonDocument.Parse(ReportJson.Write(Cowl.Value));
        JsonElement freedom = report.RootElement.GetProperty("panels")[0].GetProperty("freedom");
        FreedomFit fit = Cowl.Value.Panels[0].Freedom!;
        Assert.Equal(("rear", 4.0), (freedom.GetProperty("curve").GetString(), freedom.GetProperty("most").GetDouble()));
        Assert.Equal(Math.Abs(fit.Largest.Move), freedom.GetProperty("largest").GetDouble(), 1e-8);
        Assert.Equal(fit.Twist.Max * 180 / Math.PI, freedom.GetProperty("before").GetProperty("twistMaxDeg").GetDouble(), 1e-8);
        Assert.True(freedom.GetProperty("after").GetProperty("strain").GetProperty("maxShrink").GetDouble() < 1e-6);
        JsonElement[] edge = [.. freedom.GetProperty("edge").EnumerateArray()];
        Assert.Equal(fit.Moves.Length, edge.Length);
        foreach (JsonElement place in edge)
        {
            (Vec3 was, Vec3 now) = (Place(place, "was"), Place(place, "is"));
            Assert.Equal(Math.Abs(place.GetProperty("move").GetDouble()), (now - was).Length, 1e-6);
            Assert.Equal(320, now.X, 1e-6); // The plane of the rear arch.
        }
        Assert.False(report.RootElement.GetProperty("panels")[1].TryGetProperty("freedom", out _));

        static Vec3 Place(JsonElement of, string name)
        {
            double[] xyz = [.. of.GetProperty(name).EnumerateArray().Select(v => v.GetDouble())];
            return new Vec3(xyz[0], xyz[1], xyz[2]);
        }
    }

    [Fact]
    public void Freedom_that_is_too_small_says_the_smallest_that_would_do_and_moves_nothing()
    {
        Development small = Developer.Develop(Demo("\"rear\": 0.2"));
        Notice notice = Assert.Single(small.Notices, n => n.Code == "freedom-too-small");
        Assert.Equal((Severity.Warning, "panels[0].freedom"), (notice.Severity, notice.Where));
        Assert.Null(small.Panels.FirstOrDefault()?.Freedom);
        string least = notice.Mend!.Split(" is ")[1].TrimEnd('.');
        Development enough = Developer.Develop(Demo($"\"rear\": \"{least}\""));
        Assert.Single(enough.Notices, n => n.Code == "freedom-moved");
        Assert.InRange(enough.Panels[0].Twist.Max, 0, Torsal);
    }

    [Fact]
    public void Sheet_that_only_bends_as_measured_is_left_alone()
    {
        Job tail = JobFile.Read(Fixtures.Text("jobs/trike-tail-cover.json")).Job!;
        Development plain = Developer.Develop(tail);
        Development free = Developer.Develop(tail with { Panels = [tail.Panels[0] with { Freedom = new FreedomSpec(tail.Panels[0].Loft[0], 4) }] });
        Assert.Single(free.Notices, n => n.Code == "freedom-not-needed");
        Assert.Null(free.Panels[0].Freedom);
        Assert.Equal(plain.Panels[0].Cut.AsEnumerable(), free.Panels[0].Cut);
    }

    [Fact]
    public void Curve_that_was_measured_the_other_way_round_moves_as_far()
    {
        Job job = Demo();
        var rear = (PointsSpec)job.Curves[1].Spec;
        Job turned = job with { Curves = [job.Curves[0], new NamedCurve("rear", rear with { Points = [.. rear.Points.Reverse()] })] };
        Development result = Developer.Develop(turned);
        Assert.Single(result.Notices, n => n.Code == "curve-turned-round" && n.Where == "curves.rear");
        Assert.Equal(Cowl.Value.Panels[0].Freedom!.Largest.Move, result.Panels[0].Freedom!.Largest.Move, 1e-3);
        Assert.True(Assert.Single(result.Joints).Fits);
    }

    [Fact]
    public void Curve_in_no_plane_is_an_error()
    {
        Job job = Demo();
        var bow = new SpaceSpec([new(320, -150, 0), new(335, -100, 120), new(310, 20, 190), new(330, 120, 100), new(320, 150, 0)], Fit.Smooth, Placement.None);
        Development result = Developer.Develop(job with { Curves = [job.Curves[0], new NamedCurve("rear", bow)], Panels = [job.Panels[0]], Joints = [] });
        Assert.Equal(Severity.Error, Assert.Single(result.Notices, n => n.Code == "freedom-no-plane").Severity);
        Assert.Empty(result.Panels);
    }

    [Fact]
    public void Straight_curve_moves_in_the_plane_in_which_it_was_measured()
    {
        const string text = """
            { "units": "mm", "curves": {
                "front": { "points": [[-300, 3], [300, -3]] },
                "rear": { "points": [[-300, -3], [300, 3]], "at": { "origin": [400, 0, 0] } } },
              "panels": [{ "name": "fin", "loft": ["front", "rear"], "freedom": { "front": 4 } }] }
            """;
        PanelDevelopment fin = Assert.Single(Developer.Develop(JobFile.Read(text).Job!).Panels);
        Assert.InRange(fin.Twist.Max, 0, Torsal);
        Assert.All(fin.Freedom!.Moves, m => Assert.Equal(0, m.Is.X, 1e-9));
    }

    [Fact]
    public void Name_of_the_curve_is_changed_where_it_is_free()
    {
        var text = JobText.Of("""
            { "units": "mm", "curves": { "front": { "chord": 240, "rise": 90 }, "rear": { "chord": 240, "rise": 80, "at": { "origin": [300, 0, 0] } } },
              "panels": [{ "name": "rear", "loft": ["front", "rear"], "freedom": { "rear": 4 } }] }
            """);
        JobReading renamed = JobFile.Read(text.With(CurveRename.To(text, "rear", "hoop")).Text);
        Assert.Equal(new FreedomSpec("hoop", 4), renamed.Job!.Panels[0].Freedom);
    }
}

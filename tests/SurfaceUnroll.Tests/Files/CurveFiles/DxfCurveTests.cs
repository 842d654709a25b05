using System.Text.Json;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Files.Dxf;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;
using SurfaceUnroll.Patterns.CutPaths;
using SurfaceUnroll.Tests.Files.JobFiles;
using static SurfaceUnroll.Tests.Curves.Measured;

namespace SurfaceUnroll.Tests.Files.CurveFiles;

/// <summary>Drawings that ezdxf writes, in every version that it knows, and our own.</summary>
public class DxfCurveTests
{
    private sealed record Drawn(double Length, double[][] Points);

    private static readonly JsonSerializerOptions Options = new() { PropertyNameCaseInsensitive = true };

    [SkippableTheory]
    [InlineData("R12", 1, 7)] // It has neither light polylines, ellipses and splines nor a unit.
    [InlineData("R2000", 10, 16)]
    [InlineData("R2004", 10, 16)]
    [InlineData("R2007", 10, 16)]
    [InlineData("R2010", 10, 16)]
    [InlineData("R2013", 10, 16)]
    [InlineData("R2018", 10, 16)]
    public void Curves_of_every_version_run_where_another_program_says(string version, double unit, int layers)
    {
        using var folder = new TemporaryFolder();
        string path = folder.Write("drawing.dxf", []), script = Path.Combine(AppContext.BaseDirectory, "write_dxf.py");
        string json = DebianTool.Run("python3-ezdxf", ["/usr/bin/python3", "-c", "import ezdxf"], "/usr/bin/python3", script, path, version);
        Dictionary<string, Drawn> expected = JsonSerializer.Deserialize<Dictionary<string, Drawn>>(json.Trim().Split('\n')[^1], Options)!;
        Assert.True(expected.Count >= layers);
        foreach ((string layer, Drawn drawn) in expected)
        {
            (SpaceCurve curve, Notice[] notices) = FileJob.Read("drawing.dxf", File.ReadAllBytes(path), $", \"layer\": \"{layer}\"");
            // The dense line of 20,000 steps is shorter than the spline by turn²/24 of itself in each: 1e-8 for a step that turns by five of its 20,000th parts of a whole turn.
            Near(unit * drawn.Length, curve.Length, 1e-8);
            Assert.All(drawn.Points, p => Assert.InRange(FileJob.Distance(curve, unit * new Vec3(0, p[0], p[1])), 0, 1e-6 * unit));
            Assert.Equal(version == "R12", notices.Any(n => n.Code == "file-no-unit"));
        }
    }

    [Theory]
    [InlineData(DxfVersion.R2000)]
    [InlineData(DxfVersion.R12)]
    public void Cut_line_that_we_wrote_comes_back_as_a_curve(DxfVersion version)
    {
        Development whole = Developer.Develop(Fixtures.Read("jobs/trike-tail-cover.json").Job!);
        PanelDevelopment panel = whole.Panels[0];
        CuttingSpec cutting = CuttingSpec.Default with { Dxf = version };
        byte[] dxf = DxfPattern.Write(CutFitting.Of(PatternDrawing.Of(panel, whole.Job, whole.Joints), cutting), cutting);
        (SpaceCurve curve, _) = FileJob.Read("cover.dxf", dxf, ", \"layer\": \"CUT\", \"fileUnits\": \"mm\"");
        Near(curve.Start.Point, curve.End.Point, 1e-6);
        // What the writer keeps to, and half a step of the dense line against its arcs.
        Assert.All(panel.Cut, p => Assert.InRange(FileJob.Distance(curve, new Vec3(0, p.X, p.Y)), 0, CutPathFit.Tolerance + 0.001));
        double length = Enumerable.Range(0, panel.Cut.Length).Sum(i => (panel.Cut[(i + 1) % panel.Cut.Length] - panel.Cut[i]).Length);
        Near(length, curve.Length, 1e-3); // As in the test of what is written.
    }

    [Theory]
    [InlineData(1, 25.4)]
    [InlineData(2, 304.8)]
    [InlineData(4, 1)]
    [InlineData(5, 10)]
    [InlineData(6, 1000)]
    public void Unit_is_that_of_the_header(int code, double millimetres)
    {
        (SpaceCurve curve, Notice[] notices) = FileJob.Read("a.dxf", Text(Entity("LINE", (10, "0"), (20, "0"), (11, "3"), (21, "4")), code));
        Assert.Equal(5 * millimetres, curve.Length, 1e-9);
        Assert.Empty(notices);
        Assert.Equal(50, FileJob.Read("a.dxf", Text(Entity("LINE", (10, "0"), (20, "0"), (11, "3"), (21, "4")), code), ", \"fileUnits\": \"cm\"").Curve.Length, 1e-9);
    }

    [Fact]
    public void File_without_a_unit_is_taken_in_that_of_the_job_and_warned_of()
    {
        (SpaceCurve curve, Notice[] notices) = FileJob.Read("a.dxf", Text(Entity("LINE", (10, "0"), (20, "0"), (11, "3"), (21, "4"))), units: "in");
        Assert.Equal(127, curve.Length, 1e-9);
        Assert.Equal(Severity.Warning, Assert.Single(notices, n => n.Code == "file-no-unit").Severity);
        Assert.Equal("curves.front.file", notices[0].Where);
    }

    [Fact]
    public void Curve_runs_from_left_to_right_unless_it_is_reversed()
    {
        string drawn = Text(Entity("LINE", (10, "30"), (20, "1"), (11, "-10"), (21, "2")), 4);
        Near(new Vec3(0, -10, 2), FileJob.Read("a.dxf", drawn).Curve.Start.Point, 0);
        Near(new Vec3(0, 30, 1), FileJob.Read("a.dxf", drawn, ", \"reverse\": true").Curve.Start.Point, 0);
        Near(new Vec3(0, -20, 0), FileJob.Read("a.dxf", drawn, ", \"zero\": \"ends\"").Curve.Start.Point, 1e-12);
        Near(new Vec3(0, -20, 1), FileJob.Read("a.dxf", drawn, ", \"zero\": [10, 1]").Curve.Start.Point, 1e-12);
    }

    [Fact]
    public void Circle_begins_at_its_lowest_place_and_goes_up_on_the_left()
    {
        SpaceCurve circle = FileJob.Read("a.dxf", Text(Entity("CIRCLE", (10, "10"), (20, "20"), (40, "5")), 4)).Curve;
        Near(new Vec3(0, 10, 15), circle.Start.Point, 1e-12);
        Near(new Vec3(0, 5, 20), circle.AtLength(circle.Length / 4).Point, 1e-9);
    }

    [Fact]
    public void Right_half_is_mirrored_and_begins_on_the_centreline()
    {
        SpaceCurve arch = FileJob.Read("a.dxf", Text(Entity("ARC", (10, "0"), (20, "0"), (40, "50"), (50, "0"), (51, "90")), 4), ", \"mirror\": true").Curve;
        Near(Math.PI * 50, arch.Length, 1e-12);
        Near(new Vec3(0, -50, 0), arch.Start.Point, 1e-9);
        Near(new Vec3(0, 50, 0), arch.End.Point, 1e-9);
    }

    [Fact]
    public void Corners_of_a_polyline_take_a_smooth_curve_where_that_is_asked_for()
    {
        string drawn = Text(Entity("LWPOLYLINE", (90, "3"), (70, "0"), (10, "-50"), (20, "0"), (10, "0"), (20, "50"), (10, "50"), (20, "0")), 4);
        Assert.Equal(2, FileJob.Read("a.dxf", drawn).Curve.Pieces.Count(p => p.IsStraight));
        SpaceCurve smooth = FileJob.Read("a.dxf", drawn, ", \"fit\": \"smooth\"").Curve;
        SpaceCurve typed = Curve(Points(Fit.Smooth, false, (-50, 0), (0, 50), (50, 0)));
        Assert.Equal(typed.Length, smooth.Length, 1e-9);
    }

    [Fact]
    public void Gaps_within_the_tolerance_are_closed_in_the_middle_and_said()
    {
        string drawn = Text(Entity("LINE", (10, "0"), (20, "0"), (11, "50"), (21, "0")) + Entity("ARC", (10, "50.04"), (20, "20"), (40, "20"), (50, "270"), (51, "0")), 4);
        (SpaceCurve curve, Notice[] notices) = FileJob.Read("a.dxf", drawn);
        Near(curve.Pieces[0].At(1).Point, curve.Pieces[1].At(0).Point, 1e-12);
        Near(new Vec3(0, 50.02, 0), curve.Pieces[1].At(0).Point, 1e-9);
        Assert.Contains("0.04 mm", Assert.Single(notices, n => n.Code == "file-joined").Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Line_drawn_twice_counts_once()
    {
        string line = Entity("LINE", (10, "0"), (20, "0"), (11, "50"), (21, "0")), back = Entity("LINE", (10, "50"), (20, "0"), (11, "0"), (21, "0"));
        (SpaceCurve curve, Notice[] notices) = FileJob.Read("a.dxf", Text(line + back, 4));
        Assert.Equal(50, curve.Length, 1e-9);
        Assert.Single(notices, n => n.Code == "file-drawn-twice");
    }

    /// <summary>A DXF file of a few entities.</summary>
    internal static string Text(string entities, int? unit = null) =>
        (unit is { } u ? $"0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n{u}\n0\nENDSEC\n" : "") + $"0\nSECTION\n2\nENTITIES\n{entities}0\nENDSEC\n0\nEOF\n";

    internal static string Entity(string kind, params (int Code, string Value)[] tags) => $"0\n{kind}\n" + string.Concat(tags.Select(t => $"{t.Code}\n{t.Value}\n"));
}

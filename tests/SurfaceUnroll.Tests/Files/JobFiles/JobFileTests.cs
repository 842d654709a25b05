using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Tests.Files.JobFiles;

public class JobFileTests
{
    // The example of docs/job-file.md, with every kind of curve added.
    private const string EveryKind = """
        {
          "job": "Tail cover", // a comment
          "units": "mm",
          "sheet": { "material": "mild steel", "thickness": 0.9 },
          "measured": "outside",
          "curves": {
            "front": { "run": [ { "line": 55 }, { "arc": 120, "turn": 180 }, { "line": 55 } ],
                       "at": { "origin": [0, 0, 0], "lean": 25 } },
            "rear": { "points": [ [0, 295], [62, 272], [95, 210, "corner"], ["4 3/4 in", 0] ], "mirror": true, "fit": "straight",
                      "at": { "origin": [1, 2, "3 cm"], "roll": 30, "lean": 90, "turn": -45 } },
            "arc": { "chord": 240, "rise": -20 },
            "hoop": { "plan": { "run": [ { "line": 9 } ], "heading": 90, "start": [-4.5, 1] }, "side": [[0, 0], [9, 1]], "sideFit": "straight" },
            "space": { "xyz": [[0, 1, 2], [3, 4, 5]], "fit": "smooth", },
          },
          "panels": [ { "name": "Cover, rear", "loft": ["front", "rear"] }, { "name": "b", "loft": ["arc", "space"], "elements": "even" } ],
          "paper": { "size": "Letter", "margin": 8, "overlap": 12, "orientation": "landscape" },
        }
        """;

    [Fact]
    public void Head_of_a_job_is_read()
    {
        Job job = Read(EveryKind);
        Assert.Equal("Tail cover", job.Name);
        Assert.Equal(LengthUnit.Millimetre, job.Units);
        Assert.Equal(new SheetStock("mild steel", 0.9), job.Sheet);
        Assert.Equal(MeasuredFace.Outside, job.Measured);
        Assert.Equal(["front", "rear", "arc", "hoop", "space"], job.Curves.Select(c => c.Name));
        Assert.Equal(new PaperSpec(PaperSize.Letter, 8, 12, PaperOrientation.Landscape) { Turn = null }, job.Paper);
    }

    [Fact]
    public void Run_is_read()
    {
        RunSpec run = Assert.IsType<RunSpec>(Curve("front"));
        Assert.Equal([new LineStep(55), new ArcStep(120, Math.PI), new LineStep(55)], run.Steps.AsEnumerable());
        Assert.Equal((0, null), (run.Heading, run.Start));
        Assert.Equal(25 * Math.PI / 180, run.At.Lean, 1e-15); // One rounding.
    }

    [Fact]
    public void Points_and_placement_are_read()
    {
        PointsSpec points = Assert.IsType<PointsSpec>(Curve("rear"));
        Assert.Equal(
            [new(new Vec2(0, 295), false), new(new Vec2(62, 272), false), new(new Vec2(95, 210), true), new ProfilePoint(new Vec2(4.75 * 25.4, 0), false)],
            points.Points.AsEnumerable());
        Assert.True(points.Mirror);
        Assert.Equal(Fit.Straight, points.Fit);
        Assert.Equal(new Vec3(1, 2, 30), points.At.Origin);
        Assert.Equal(new Vec3(Math.PI / 6, Math.PI / 2, -Math.PI / 4), new Vec3(points.At.Roll, points.At.Lean, points.At.Turn));
    }

    [Fact]
    public void Chord_is_read() => Assert.Equal(new ChordSpec(240, -20, Placement.None), Curve("arc"));

    [Fact]
    public void Plan_and_side_are_read()
    {
        PlanSideSpec hoop = Assert.IsType<PlanSideSpec>(Curve("hoop"));
        RunSpec plan = Assert.IsType<RunSpec>(hoop.Plan);
        Assert.Equal((Math.PI / 2, new Vec2(-4.5, 1)), (plan.Heading, plan.Start!.Value));
        Assert.Equal([new Vec2(0, 0), new Vec2(9, 1)], hoop.Side.AsEnumerable());
        Assert.Equal(Fit.Straight, hoop.SideFit);
    }

    [Fact]
    public void Points_in_space_are_read() => Assert.Equal([new Vec3(0, 1, 2), new Vec3(3, 4, 5)], Assert.IsType<SpaceSpec>(Curve("space")).Points.AsEnumerable());

    [Fact]
    public void Panels_are_read()
    {
        Job job = Read(EveryKind);
        Assert.Equal(["Cover, rear", "b"], job.Panels.Select(p => p.Name));
        Assert.Equal("cover-rear", job.Panels[0].FileName);
        Assert.Equal(["front", "rear"], job.Panels[0].Loft.AsEnumerable());
        Assert.Equal([ElementMatching.BendOnly, ElementMatching.Even], job.Panels.Select(p => p.Elements));
    }

    [Fact]
    public void What_may_be_left_out_has_a_default()
    {
        Job job = Read("""{ "units": "in", "curves": { "a": { "chord": 10, "rise": 1 }, "b": { "chord": 9, "rise": 2 } }, "panels": [ { "name": "p", "loft": ["a", "b"] } ] }""");
        Assert.Equal(("Untitled", LengthUnit.Inch, MeasuredFace.Middle), (job.Name, job.Units, job.Measured));
        Assert.Equal(new SheetStock("sheet metal", 0), job.Sheet);
        Assert.Equal(PaperSpec.Default with { Turn = null }, job.Paper);
        Assert.Equal(new ChordSpec(254, 25.4, Placement.None), job.Curves[0].Spec);
    }

    [Fact]
    public void Closed_row_of_points_may_end_where_it_begins() =>
        Read("""{ "units": "mm", "curves": { "a": { "points": [[0, 0], [9, 0], [9, 9], [0, 0]] }, "b": { "chord": 9, "rise": 2 } }, "panels": [ { "name": "p", "loft": ["a", "b"] } ] }""");

    [Fact]
    public void Paper_may_be_one_word() =>
        Assert.Equal(PaperSpec.Default with { Size = PaperSize.Letter, Turn = null }, Read("""
            { "units": "mm", "paper": "Letter", "curves": { "a": { "chord": 9, "rise": 1 }, "b": { "chord": 9, "rise": 2 } },
              "panels": [ { "name": "p", "loft": ["a", "b"] } ] }
            """).Paper);

    [Theory]
    [InlineData("curves.rear.points[2]", 9, 48)]
    [InlineData("curves.rear.points[2][1]", 9, 53)]
    [InlineData("curves.rear.points[17].x", 9, 25)] // The list around it.
    [InlineData("panels[0]", 15, 15)]
    [InlineData("sheet.colour", 4, 12)]
    [InlineData("nothing.of.the.sort", 1, 1)]
    [InlineData("", 1, 1)]
    public void Path_of_a_later_notice_is_found_in_the_file(string path, int line, int column) =>
        Assert.Equal((line, column), JobFile.Read(EveryKind).Locate(path));

    [Fact]
    public void Same_text_gives_the_same_job() => Assert.Equal(Describe(Read(EveryKind)), Describe(Read(EveryKind)));

    private static string Describe(Job job) => string.Join('\n', job.Curves.Select(c => c.ToString()).Concat(job.Panels.Select(p => p.ToString())));

    private static CurveSpec Curve(string name) => Read(EveryKind).Curves.Single(c => c.Name == name).Spec;

    private static Job Read(string text)
    {
        JobReading reading = JobFile.Read(text);
        Assert.Empty(reading.Faults);
        return reading.Job!;
    }
}

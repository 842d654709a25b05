using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Tests.Files.JobFiles;

public class JointNamesTests
{
    private const string Trim = "\"kind\": \"trim\", \"extra\": 2";

    [Fact]
    public void Letters_pass_over_those_that_the_job_gives_itself()
    {
        JobReading reading = Read(1, $$"""{ "edges": ["p/a"], {{Trim}} }, { "name": "A", "edges": ["p/chord"], {{Trim}} }, { "edges": ["c/left"], {{Trim}} }, { "name": "Z", "edges": ["c/right"], {{Trim}} }""");
        Assert.Empty(reading.Faults);
        Assert.Equal(["B", "A", "C", "Z"], reading.Job!.Joints.Select(j => j.Name));
    }

    [Fact]
    public void No_two_joints_are_called_the_same_where_a_panel_is_split()
    {
        JobReading reading = Read(3, $$"""{ "edges": ["p/a"], {{Trim}} }, { "name": "B", "edges": ["p/chord"], {{Trim}} }""");
        Assert.Empty(reading.Faults);
        Development done = Developer.Develop(reading.Job!);
        Assert.Equal(["A", "B", "C", "D"], done.Joints.Select(j => j.Label));
    }

    [Fact]
    public void A_name_that_a_seam_would_have_is_refused_with_the_names_of_the_seams()
    {
        Fault fault = Assert.Single(Read(3, $$"""{ "name": "C", "edges": ["p/a"], {{Trim}} }""").Faults);
        Assert.Equal(("joint-name", "joints[0].name"), (fault.Code, fault.Path));
        Assert.Contains("B, C here", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Edges_that_joints_may_name_are_known()
    {
        JobReading reading = JobFile.Read($$"""
            { "units": "mm", "curves": { "a": { "points": [[0, 0], [0, 50]] }, "b": { "points": [[90, 0], [90, 50]] }, "chord": { "chord": 90, "rise": 10 } },
              "panels": [
                { "name": "p", "flat": ["a", "b"], "holes": [{ "name": "row", "at": [45, 25], "round": 3, "pattern": { "across": 2, "pitch": 20 } }] },
                { "name": "q", "flat": "chord", "trims": [{ "name": "cut", "plane": {}, "keep": "up" }] } ],
              "joints": [ { "edges": ["p/chord"], {{Trim}} }, { "edges": ["p/chord 2"], {{Trim}} }, { "edges": ["p/row 2"], {{Trim}} }, { "edges": ["q/chord 2"], {{Trim}} }, { "edges": ["q/cut"], {{Trim}} } ] }
            """);
        Assert.Empty(reading.Faults);
    }

    private static JobReading Read(int pieces, string joints) => JobFile.Read($$"""
        { "units": "mm", "curves": { "a": { "chord": 240, "rise": 120 }, "b": { "chord": 200, "rise": 60, "at": { "origin": [200, 0, 0] } } },
          "panels": [ { "name": "c", "loft": ["a", "b"], "pieces": {{pieces}} }, { "name": "p", "flat": "a" } ], "joints": [ {{joints}} ] }
        """);
}

using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Tests.Files.JobFiles;

public class FixtureTests
{
    public static TheoryData<string> Good => [.. Fixtures.Good];

    [Theory]
    [MemberData(nameof(Good))]
    public void Demo_job_reads_without_fault_and_develops_without_error(string name)
    {
        JobReading reading = Fixtures.Read(name);
        Assert.Empty(reading.Faults);
        Development development = Developer.Develop(reading.Job!);
        Assert.Empty(development.Notices.Where(n => n.Severity == Severity.Error));
        Assert.Equal(reading.Job!.Panels.Sum(p => p.Pieces), development.Panels.Length);
    }

    [Fact]
    public void Starter_job_develops_as_it_stands()
    {
        JobReading reading = JobFile.Read(StarterJob.Text);
        Assert.Empty(reading.Faults);
        Assert.False(Developer.Develop(reading.Job!).Failed);
    }

    [Fact]
    public void Six_mistakes_are_six_faults_of_six_kinds_each_in_the_line_that_says_so()
    {
        string text = Fixtures.Text("jobs/six-mistakes.json");
        JobReading reading = JobFile.Read(text);
        string[] lines = text.Split('\n');
        Assert.Equal(6, reading.Faults.Select(f => f.Code).Distinct().Count());
        Assert.Equal(["1", "2", "3", "4", "5", "6"], reading.Faults.Select(f => lines[f.Line - 1].Split("// ")[1][..1]));
    }

    [Theory]
    [MemberData(nameof(Good))]
    public void Demo_job_says_in_its_first_line_that_it_is_invented_or_gives_its_source(string name)
    {
        string text = Fixtures.Text(name);
        Assert.Contains(name.StartsWith("jobs/", StringComparison.Ordinal) ? "// Invented" : "// Source: ", text[..text.IndexOf('{', StringComparison.Ordinal)], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("jobs/trike-tail-cover.json")]
    [InlineData("jobs/trike-tail-cover-inch.json")]
    [InlineData("jobs/half-cone-shroud.json")]
    [InlineData("jobs/square-to-round.json")]
    [InlineData("jobs/elbow.json")]
    [InlineData("published/datcom-tail-cone.json")]
    public void Demo_sheet_only_bends(string name)
    {
        PanelDevelopment panel = Assert.Single(Developer.Develop(JobFile.Read(Fixtures.Text(name)).Job!).Panels);
        Assert.Equal(Verdict.BendsOnly, panel.Verdict);
        Assert.InRange(panel.Twist.Max, 0, 0.01 * Math.PI / 180); // The limit set for this tool, 0.01 degrees.
    }

    [Theory]
    [InlineData("jobs/crowned-side-panel.json")]
    [InlineData("jobs/crowned-side-panel-ways.json")]
    [InlineData("jobs/scanned-bonnet.json")]
    public void Demo_sheet_that_is_crowned_needs_stretching_within_its_limit(string name) =>
        Assert.All(Developer.Develop(Fixtures.Read(name).Job!).Panels, panel =>
        {
            Assert.Equal(Verdict.NeedsStretching, panel.Verdict);
            Assert.NotNull(panel.Map);
        });

    [Fact]
    public void Scanned_mesh_says_in_its_first_line_that_it_is_invented() =>
        Assert.StartsWith("# Invented", Fixtures.Text("jobs/scanned-bonnet.obj"), StringComparison.Ordinal);

    // Every measure is rounded by a thirty-second of an inch at most; an edge is the sum of five of them, or of an arc and two.
    [Fact]
    public void Inch_cover_is_the_metric_cover_measured_with_another_tape()
    {
        BlankEdge[] metric = Edges("jobs/trike-tail-cover.json"), inch = Edges("jobs/trike-tail-cover-inch.json");
        for (int i = 0; i < metric.Length; i++) Assert.InRange(inch[i].FormedLength - metric[i].FormedLength, -5 * 25.4 / 32, 5 * 25.4 / 32);
    }

    private static BlankEdge[] Edges(string name) => [.. Developer.Develop(JobFile.Read(Fixtures.Text(name)).Job!).Panels[0].Edges];
}

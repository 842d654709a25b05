using System.Text;
using SurfaceUnroll.Cli;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Files.Output;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Tests.Cli;

public sealed class DevelopingTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly string _job;

    public DevelopingTests() => _job = _folder.Write("job.v2.json", "{}");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Files_go_beside_the_job_into_a_folder_of_its_name()
    {
        InProcess.Result result = InProcess.Run(Giving(Samples.HalfCylinder()), "develop", _job);
        Assert.Equal(ExitStatus.Done, result.Status);
        Assert.Equal("{}", File.ReadAllText(_folder.At("job.v2-pattern", "report.json")));
        Assert.Contains("Written to " + _folder.At("job.v2-pattern"), result.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Table_shows_verdict_twist_edges_and_blank_in_the_jobs_units()
    {
        string metric = InProcess.Run(Giving(Samples.HalfCylinder()), "check", _job).Out;
        Assert.Contains("Cover: bends only", metric, StringComparison.Ordinal);
        // 150π mm; 0.3 rad of the even lines is 17.189°.
        Assert.Contains("471.2 mm × 400 mm", metric, StringComparison.Ordinal);
        Assert.Contains("largest 17.189°", metric, StringComparison.Ordinal);
        // 471.24 mm = 18.5527 in, nearest 1/64: 18 35/64.
        string inches = InProcess.Run(Giving(Samples.HalfCylinder(units: LengthUnit.Inch)), "check", _job).Out;
        Assert.Contains("18 35/64\" × 15 3/4\"", inches, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_writes_nothing()
    {
        InProcess.Run(Giving(Samples.HalfCylinder()), "check", _job);
        Assert.Equal([_job], Directory.EnumerateFileSystemEntries(_folder.Path));
    }

    [Theory]
    [InlineData(Verdict.BendsOnly, 0)]
    [InlineData(Verdict.NeedsStretching, 0)]
    [InlineData(Verdict.PastTheLimit, 3)]
    public void Strict_ends_with_3_only_past_a_limit_and_still_writes(Verdict verdict, int expected)
    {
        Development sample = Samples.HalfCylinder();
        Development development = sample with { Panels = [sample.Panels[0] with { Verdict = verdict }] };
        Assert.Equal(expected, InProcess.Run(Giving(development), "develop", _job, "--strict", "--out", _folder.At("out")).Status);
        Assert.True(File.Exists(_folder.At("out", "report.json")));
        Assert.Equal(0, InProcess.Run(Giving(development), "check", _job).Status);
        Assert.Equal(expected, InProcess.Run(Giving(development), "check", _job, "--strict").Status);
    }

    [Fact]
    public void Every_fault_of_the_file_is_listed_with_line_column_and_mend_in_the_order_of_the_file()
    {
        var reading = new JobReading(null,
        [
            new Fault("b", "curves.b", 7, 3, "Second.", "Mend it so."),
            new Fault("a", "curves.a", 2, 9, "First.", "Mend it thus."),
        ]);
        InProcess.Result result = InProcess.Run(new Pipeline((_, _) => reading, (_, _) => throw new InvalidOperationException(), _ => []), "develop", _job);
        Assert.Equal(ExitStatus.CannotUse, result.Status);
        Assert.Equal(
            $"{_job}:2:9  First.\n    mend: Mend it thus.\n{_job}:7:3  Second.\n    mend: Mend it so.\n2 faults; nothing was written.\n", result.Error);
        Assert.Empty(result.Out);
        Assert.Equal([_job], Directory.EnumerateFileSystemEntries(_folder.Path));
    }

    [Fact]
    public void What_is_doubtful_about_a_curve_is_told_before_the_faults_that_it_may_have_caused()
    {
        Development failed = Samples.HalfCylinder() with
        {
            Panels = [],
            Notices =
            [
                new Notice("lines-cross", Severity.Error, "panels[0]", "Element lines cross.", "Measure again."),
                new Notice("reading-slip", Severity.Warning, "curves.front.points[2]", "Point 3: 12.4 looks like 124.", "Look it up."),
                new Notice("curve-bulges", Severity.Note, "curves.front.points[2]", "It swings out."),
            ],
        };
        InProcess.Result result = InProcess.Run(Giving(failed), "check", _job);
        Assert.Equal($"{_job}:1:1  warning: Point 3: 12.4 looks like 124.\n    mend: Look it up.\n{_job}:1:1  Element lines cross.\n    mend: Measure again.\n", result.Error);
    }

    [Fact]
    public void A_fault_found_in_developing_is_shown_the_same_way()
    {
        Development failed = Samples.HalfCylinder() with
        {
            Panels = [],
            Notices = [new Notice("lines-cross", Severity.Error, "panels[0]", "Element lines cross.", "Measure again.")],
        };
        InProcess.Result result = InProcess.Run(Giving(failed), "develop", _job);
        Assert.Equal(ExitStatus.CannotUse, result.Status);
        Assert.StartsWith($"{_job}:1:1  Element lines cross.\n    mend: Measure again.", result.Error, StringComparison.Ordinal);
        Assert.Equal([_job], Directory.EnumerateFileSystemEntries(_folder.Path));
    }

    [Fact]
    public void Notes_and_warnings_are_shown_with_their_place_and_do_not_fail()
    {
        Development noticed = Samples.HalfCylinder() with
        {
            Notices = [new Notice("turned", Severity.Warning, "curves.rear", "Turned round.", "Look at it.")],
        };
        InProcess.Result result = InProcess.Run(Giving(noticed), "check", _job);
        Assert.Equal(ExitStatus.Done, result.Status);
        Assert.Contains($"{_job}:1:1  warning: Turned round.\n    mend: Look at it.", result.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("missing.json", "There is no such file.")]
    [InlineData(".", "This is a folder, not a job file.")]
    public void A_job_file_that_cannot_be_read_ends_with_2(string name, string expected)
    {
        InProcess.Result result = InProcess.Run("develop", _folder.At(name));
        Assert.Equal(ExitStatus.CannotUse, result.Status);
        Assert.Contains(expected, result.Error, StringComparison.Ordinal);
        Assert.Contains("mend: ", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_where_the_folder_should_be_ends_with_2_and_is_left_alone()
    {
        string file = _folder.Write("taken", "mine");
        InProcess.Result result = InProcess.Run(Giving(Samples.HalfCylinder()), "develop", _job, "--out", file);
        Assert.Equal(ExitStatus.CannotUse, result.Status);
        Assert.Contains(file, result.Error, StringComparison.Ordinal);
        Assert.Equal("mine", File.ReadAllText(file));
    }

    [Fact]
    public void An_empty_folder_name_ends_with_2() =>
        Assert.Equal(ExitStatus.CannotUse, InProcess.Run(Giving(Samples.HalfCylinder()), "develop", _job, "--out", " ").Status);

    [Fact]
    public void The_job_file_is_never_overwritten_by_an_output()
    {
        string job = _folder.Write("report.json", "{}");
        InProcess.Result result = InProcess.Run(Giving(Samples.HalfCylinder()), "develop", job, "--out", _folder.Path);
        Assert.Equal(ExitStatus.CannotUse, result.Status);
        Assert.Contains("overwrite the job file", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_panels_that_would_share_a_file_are_refused()
    {
        OutputFile file = new("cover-preview.svg", Encoding.UTF8.GetBytes("x"));
        InProcess.Result result = InProcess.Run(InProcess.Giving(Samples.HalfCylinder(), file, file), "develop", _job);
        Assert.Equal(ExitStatus.CannotUse, result.Status);
        Assert.Contains("cover-preview.svg", result.Error, StringComparison.Ordinal);
    }

    private static Pipeline Giving(Development development) =>
        InProcess.Giving(development, new OutputFile("cover.svg", Encoding.UTF8.GetBytes("<svg/>")), new OutputFile("report.json", Encoding.UTF8.GetBytes("{}")));
}

using SurfaceUnroll.Cli;

namespace SurfaceUnroll.Tests.Cli;

public class CommandLineTests
{
    [Theory]
    [InlineData("--help")]
    [InlineData("develop --help")]
    [InlineData("check -h")]
    [InlineData("flatten --help")]
    [InlineData("new --help")]
    [InlineData("schema --help")]
    [InlineData("materials --help")]
    public void Help_is_asked_for_and_given(string line)
    {
        InProcess.Result result = InProcess.Run(line.Split(' '));
        Assert.Equal(ExitStatus.Done, result.Status);
        Assert.Contains("surfaceunroll", result.Out, StringComparison.Ordinal);
        Assert.Empty(result.Error);
        // A terminal has eighty columns unless someone made it wider; the descriptions of files run a little past that.
        Assert.All(result.Out.Split('\n'), l => Assert.InRange(l.Length, 0, 88));
    }

    [Fact]
    public void Help_of_develop_names_its_options()
    {
        string help = InProcess.Run("develop", "--help").Out;
        Assert.Contains("--out DIR", help, StringComparison.Ordinal);
        Assert.Contains("--strict", help, StringComparison.Ordinal);
    }

    [Fact]
    public void Version_is_the_reports_generator() => Assert.Equal("surfaceunroll 0.1.0\n", InProcess.Run("--version").Out);

    [Theory]
    [InlineData("", "surfaceunroll new cover.json")]
    [InlineData("devlop x.json", "Did you mean “develop”?")]
    [InlineData("--halp", "There is no option “--halp”.")]
    [InlineData("develop", "The name of the file is missing: JOB.json.")]
    [InlineData("check", "surfaceunroll check JOB.json [--strict]")]
    [InlineData("new", "The name of the file is missing: FILE.json.")]
    [InlineData("develop a.json --strickt", "Did you mean “--strict”?")]
    [InlineData("develop a.json b.json", "“b.json” is one word too many for “develop”.")]
    [InlineData("develop a.json --out", "“--out” needs one value and no more.")]
    [InlineData("develop a.json --kerf wide", "“wide” is no length.")]
    [InlineData("develop a.json --dxf r14", "Write r2000, or r12 for an old machine.")]
    public void A_wrong_command_line_ends_with_2_and_says_what_would_be_right(string line, string expected)
    {
        InProcess.Result result = InProcess.Run(line.Split(' ', StringSplitOptions.RemoveEmptyEntries));
        Assert.Equal(ExitStatus.CannotUse, result.Status);
        Assert.Contains(expected, result.Error, StringComparison.Ordinal);
        Assert.Empty(result.Out);
    }

    [Fact]
    public void A_mistake_in_the_program_ends_with_1_and_no_stack_trace()
    {
        using var folder = new TemporaryFolder();
        string job = folder.Write("job.json", "{}");
        var broken = new Pipeline((_, _) => throw new InvalidOperationException("oops"), (_, _) => null!, _ => []);
        InProcess.Result result = InProcess.Run(broken, "check", job);
        Assert.Equal(ExitStatus.Failed, result.Status);
        Assert.Contains("oops", result.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", result.Error, StringComparison.Ordinal);
    }
}

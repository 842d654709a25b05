using SurfaceUnroll.Cli;

namespace SurfaceUnroll.Tests.Cli;

public sealed class StartingTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Starter_job_runs_as_it_stands()
    {
        string job = _folder.At("cover.json");
        Assert.Equal(ExitStatus.Done, InProcess.Run("new", job).Status);
        InProcess.Result check = InProcess.Run("check", job, "--strict");
        Assert.Equal("", check.Error);
        Assert.Equal(ExitStatus.Done, check.Status);
        Assert.Contains("bends only", check.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_is_there_is_left_alone()
    {
        string job = _folder.Write("cover.json", "mine");
        InProcess.Result result = InProcess.Run("new", job);
        Assert.Equal(ExitStatus.CannotUse, result.Status);
        Assert.Contains("left alone", result.Error, StringComparison.Ordinal);
        Assert.Equal("mine", File.ReadAllText(job));
    }

    [Fact]
    public void A_folder_that_is_missing_is_named()
    {
        InProcess.Result result = InProcess.Run("new", _folder.At("absent", "cover.json"));
        Assert.Equal(ExitStatus.CannotUse, result.Status);
        Assert.Contains("absent", result.Error, StringComparison.Ordinal);
        Assert.Empty(Directory.EnumerateFileSystemEntries(_folder.Path));
    }

    [Fact]
    public void Schema_is_printed_as_json()
    {
        InProcess.Result result = InProcess.Run("schema");
        Assert.Equal(ExitStatus.Done, result.Status);
        System.Text.Json.JsonDocument.Parse(result.Out).Dispose();
    }
}

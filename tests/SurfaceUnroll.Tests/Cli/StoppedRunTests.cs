using System.Diagnostics;
using SurfaceUnroll.Cli;
using SurfaceUnroll.Files.JobFiles;

namespace SurfaceUnroll.Tests.Cli;

/// <summary>Runs of the real program that are killed on their way: what stays must be whole, old or new.</summary>
public sealed class StoppedRunTests : IDisposable
{
    private const int Runs = 16;

    private readonly TemporaryFolder _folder = new();
    private readonly string _old, _new;

    public StoppedRunTests()
    {
        // Two jobs with the same panel and other sizes, so that every output file differs.
        _old = _folder.Write("old.json", StarterJob.Text);
        _new = _folder.Write("new.json", Job("175"));
        Assert.Equal(ExitStatus.Done, InProcess.Run("develop", _old).Status);
        Assert.Equal(ExitStatus.Done, InProcess.Run("develop", _new).Status);
    }

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_folder_that_was_there_holds_old_or_new_files_each_whole()
    {
        string target = _folder.At("pattern");
        Assert.Equal(ExitStatus.Done, InProcess.Run("develop", _old, "--out", target).Status);
        for (int run = 0; run < Runs; run++)
        {
            StopSomewhere(run, run % 2 == 0 ? _new : _old, target, target);
            foreach (string name in Names(_folder.At("old-pattern")))
            {
                byte[] content = Timeless.Of(Path.Combine(target, name));
                bool whole = content.AsSpan().SequenceEqual(Timeless.Of(_folder.At("old-pattern", name)))
                    || content.AsSpan().SequenceEqual(Timeless.Of(_folder.At("new-pattern", name)));
                Assert.True(whole, $"{name} is neither the old file nor the new one after run {run}");
            }
        }
        FinishAndCompare(target);
    }

    [Fact]
    public void A_new_folder_is_absent_or_complete()
    {
        for (int run = 0; run < Runs; run++)
        {
            string target = _folder.At("fresh");
            StopSomewhere(run, _new, target, _folder.Path);
            if (!Directory.Exists(target)) continue;
            Assert.Equal(Names(_folder.At("new-pattern")), Names(target));
            Assert.All(Names(target), name => Assert.Equal(Timeless.Of(_folder.At("new-pattern", name)), Timeless.Of(Path.Combine(target, name))));
            Directory.Delete(target, recursive: true);
        }
        FinishAndCompare(_folder.At("fresh"));
    }

    // A run that is let finish leaves the new files and nothing else: no leftovers of the killed ones.
    private void FinishAndCompare(string target)
    {
        Assert.Equal(ExitStatus.Done, InProcess.Run("develop", _new, "--out", target).Status);
        Assert.Equal(Names(_folder.At("new-pattern")), Names(target));
        Assert.Equal(["fresh", "new-pattern", "old-pattern", "pattern"], Directory.GetDirectories(_folder.Path).Select(d => Path.GetFileName(d)!)
            .Union(["fresh", "pattern"]).Order(StringComparer.Ordinal));
    }

    // Even runs stop at a random moment of their life; odd ones as soon as the first unfinished file is seen, a random moment later.
    private static void StopSomewhere(int run, string job, string target, string watched)
    {
        var random = new Random(run);
        using Process process = Start("develop", job, "--out", target);
        if (run % 4 < 2) Thread.Sleep(random.Next(0, 600));
        else
        {
            while (!process.HasExited && !Directory.EnumerateFileSystemEntries(watched, ".*.unfinished").Any()) Thread.Yield();
            Thread.SpinWait(random.Next(0, 200_000));
        }
        process.Kill();
        process.WaitForExit();
    }

    private static Process Start(params string[] arguments) => Process.Start(new ProcessStartInfo(
        "dotnet", [Path.Combine(AppContext.BaseDirectory, "SurfaceUnroll.Cli.dll"), .. arguments])
    { RedirectStandardOutput = true, RedirectStandardError = true })!;

    private static string[] Names(string folder) => [.. Directory.EnumerateFileSystemEntries(folder).Select(p => Path.GetFileName(p)).Order(StringComparer.Ordinal)];

    private static string Job(string radius) => $$"""
        {
          "job": "Other cover", "units": "mm", "sheet": { "material": "mild steel", "thickness": 0 }, "measured": "middle",
          "curves": {
            "front": { "run": [ { "arc": {{radius}}, "turn": 180 } ] },
            "rear": { "run": [ { "arc": {{radius}}, "turn": 180 } ], "at": { "origin": [300, 0, 0] } }
          },
          "panels": [ { "name": "cover", "loft": ["front", "rear"] } ]
        }
        """;
}

using System.Text;
using SurfaceUnroll.Files.Output;

namespace SurfaceUnroll.Tests.Files.Output;

public sealed class OutputFolderTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    private static readonly OutputFile[] Files = [File("a.txt", "one"), File("report.json", "{}")];

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_new_folder_is_made_with_the_folders_above_it()
    {
        string target = _folder.At("deep", "down", "pattern");
        Assert.Null(OutputFolder.Write(target, Files));
        Assert.Equal(["a.txt", "report.json"], Names(target));
        Assert.Equal(["pattern"], Names(_folder.At("deep", "down")));
    }

    [Fact]
    public void Earlier_files_are_replaced_and_others_left_alone()
    {
        string target = _folder.At("pattern");
        OutputFolder.Write(target, [File("a.txt", "old and longer"), File("notes.txt", "mine")]);
        Assert.Null(OutputFolder.Write(target, Files));
        Assert.Equal("one", System.IO.File.ReadAllText(Path.Combine(target, "a.txt")));
        Assert.Equal(["a.txt", "notes.txt", "report.json"], Names(target));
    }

    [Fact]
    public void A_folder_path_that_ends_in_a_slash_is_the_same_folder()
    {
        Assert.Null(OutputFolder.Write(_folder.At("pattern") + "/", Files));
        Assert.Equal(["a.txt", "report.json"], Names(_folder.At("pattern")));
    }

    [Fact]
    public void A_file_in_the_way_is_named_and_nothing_written()
    {
        string file = _folder.Write("taken", "x");
        OutputFault fault = OutputFolder.Write(Path.Combine(file, "pattern"), Files)!;
        Assert.Equal(file, fault.Path);
        Assert.Contains("--out", fault.Mend, StringComparison.Ordinal);
        Assert.Equal(["taken"], Names(_folder.Path));
    }

    [Fact]
    public void A_folder_where_a_file_should_be_stops_the_whole_set()
    {
        string target = _folder.At("pattern");
        Directory.CreateDirectory(Path.Combine(target, "report.json"));
        OutputFault fault = OutputFolder.Write(target, Files)!;
        Assert.Equal(Path.Combine(target, "report.json"), fault.Path);
        Assert.Equal(["report.json"], Names(target));
    }

    [SkippableFact]
    public void A_place_where_nobody_may_write_is_a_fault_and_no_crash()
    {
        Skip.IfNot(OperatingSystem.IsLinux(), "needs a file system that refuses even root");
        OutputFault fault = OutputFolder.Write("/proc/pattern", Files)!;
        Assert.Equal("/proc/pattern", fault.Path);
        Assert.NotEmpty(fault.Mend);
    }

    [Fact]
    public void Leftovers_of_a_stopped_run_are_cleared()
    {
        string target = _folder.At("pattern");
        OutputFolder.Write(target, Files);
        // No process has this number: it is above the kernel's largest.
        System.IO.File.WriteAllText(Path.Combine(target, ".a.txt.99999999.unfinished"), "half");
        Directory.CreateDirectory(_folder.At(".pattern.99999999.unfinished"));
        Assert.Null(OutputFolder.Write(target, Files));
        Assert.Equal(["a.txt", "report.json"], Names(target));
        Assert.Equal(["pattern"], Names(_folder.Path));
    }

    [Fact]
    public void Files_of_a_run_that_still_works_are_left_to_it()
    {
        string target = _folder.At("pattern");
        OutputFolder.Write(target, Files);
        using var other = System.Diagnostics.Process.Start("sleep", "60");
        string working = Path.Combine(target, $".a.txt.{other.Id}.unfinished");
        try
        {
            System.IO.File.WriteAllText(working, "half");
            OutputFolder.Write(target, Files);
            Assert.True(System.IO.File.Exists(working));
        }
        finally
        {
            other.Kill();
        }
    }

    private static OutputFile File(string name, string content) => new(name, Encoding.UTF8.GetBytes(content));

    private static IEnumerable<string> Names(string folder) =>
        Directory.EnumerateFileSystemEntries(folder).Select(p => Path.GetFileName(p)).Order(StringComparer.Ordinal);
}

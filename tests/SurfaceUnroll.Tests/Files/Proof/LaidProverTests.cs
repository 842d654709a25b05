using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using SurfaceUnroll.Cli;
using SurfaceUnroll.Files.Proof;
using SurfaceUnroll.Tests.Cli;
using SurfaceUnroll.Tests.Files.JobFiles;

namespace SurfaceUnroll.Tests.Files.Proof;

/// <summary>The files with several pieces on them are compared with those of the pieces.</summary>
public sealed partial class LaidProverTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public LaidProverTests()
    {
        string job = _folder.Write("hood.json", File.ReadAllText(Fixtures.PathOf("jobs/bench-hood.json")).Replace("\"paper\": \"A4\"", "\"paper\": { \"size\": \"A3\", \"together\": true }, \"cutting\": { \"kerf\": 0.3 }", StringComparison.Ordinal));
        InProcess.Result result = InProcess.Run("develop", job, "--out", _folder.At("out"));
        Assert.True(result.Status == ExitStatus.Done, result.Error);
    }

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Nested_sheets_and_the_run_of_all_pieces_are_looked_at()
    {
        Assert.Equal(["nested-1.dxf", "nested-1.svg", "all-pieces.pdf"], Files().Select(f => f.File));
        Assert.All(Files(), f => Assert.True(f.Problem is null && f.Off <= Prover.Limit, $"{f.File} {f.Problem} {f.Off}"));
    }

    [Fact]
    public void A_thousandth_of_scale_and_a_mirrored_sheet_are_found()
    {
        string path = _folder.At("out", "nested-1.dxf"), text = File.ReadAllText(path);
        File.WriteAllText(path, Changed(text, 1.001, 1.001));
        Assert.Equal("shows another line", Problem("nested-1.dxf"));
        File.WriteAllText(path, Changed(text, -1, 1));
        Assert.Equal("shows another line", Problem("nested-1.dxf"));
        File.WriteAllText(path, text);
        Assert.Null(Problem("nested-1.dxf"));
        path = _folder.At("out", "nested-1.svg");
        File.WriteAllText(path, SvgMove().Replace(File.ReadAllText(path), m => "M" + (1.001 * double.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture)).ToString("R", CultureInfo.InvariantCulture)));
        Assert.Equal("shows another line", Problem("nested-1.svg"));
        Assert.Equal(ExitStatus.Failed, InProcess.Run("verify", _folder.At("out")).Status);
    }

    [Fact]
    public void A_run_of_other_pieces_and_files_of_an_earlier_run_are_found()
    {
        File.Copy(_folder.At("out", "nested-1.dxf"), _folder.At("out", "nested-2.dxf"));
        Assert.Contains("earlier run", Problem("nested-2.dxf"), StringComparison.Ordinal);
        string job = _folder.Write("other.json", File.ReadAllText(_folder.At("hood.json")).Replace("\"width\": 600", "\"width\": 599.4", StringComparison.Ordinal));
        InProcess.Result result = InProcess.Run("develop", job, "--out", _folder.At("other"));
        Assert.True(result.Status == ExitStatus.Done, result.Error);
        File.Copy(_folder.At("other", "all-pieces.pdf"), _folder.At("out", "all-pieces.pdf"), overwrite: true);
        Assert.NotNull(Problem("all-pieces.pdf"));
    }

    private ImmutableArray<ProvenFile> Files() => [.. Prover.Of(_folder.At("out")).Pieces.SelectMany(p => p.Files).Where(f => f.File.StartsWith("nested", StringComparison.Ordinal) || f.File == "all-pieces.pdf")];

    private string? Problem(string file) => Files().Single(f => f.File == file).Problem;

    // Places are groups 10 and 20; a code and its value take a line each.
    private static string Changed(string text, double x, double y)
    {
        string[] lines = text.Split('\n');
        for (int i = 0; i + 1 < lines.Length; i += 2)
            if (lines[i].Trim() is "10" or "20") lines[i + 1] = ((lines[i].Trim() == "10" ? x : y) * double.Parse(lines[i + 1], CultureInfo.InvariantCulture)).ToString("R", CultureInfo.InvariantCulture);
        return string.Join('\n', lines);
    }

    [GeneratedRegex("M(-?[0-9.]+)")]
    private static partial Regex SvgMove();
}

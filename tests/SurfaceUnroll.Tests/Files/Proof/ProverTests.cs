using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using SurfaceUnroll.Cli;
using SurfaceUnroll.Files.Printers;
using SurfaceUnroll.Files.Proof;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Tests.Cli;
using SurfaceUnroll.Tests.Files.JobFiles;

namespace SurfaceUnroll.Tests.Files.Proof;

public sealed partial class ProverTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    public static TheoryData<string> Demos => [.. Fixtures.Good.Where(name => name.StartsWith("jobs/", StringComparison.Ordinal))];

    [Theory]
    [MemberData(nameof(Demos))]
    public void Print_dxf_svg_and_obj_of_every_demo_show_one_line(string job)
    {
        InProcess.Result result = InProcess.Run("develop", Fixtures.PathOf(job), "--out", _folder.At("out"));
        Assert.True(result.Status == ExitStatus.Done, result.Error);
        (ImmutableArray<ProvenPiece> pieces, string? problem) = Prover.Of(_folder.At("out"));
        Assert.Null(problem);
        Assert.NotEmpty(pieces);
        Assert.All(pieces.SelectMany(p => p.Files), f => Assert.True(f.Problem is null && f.Off <= Prover.Limit, $"{f.File} {f.Problem} {f.Off}"));
        Assert.All(pieces, p => Assert.Equal(p.Piece.StartsWith("nested-", StringComparison.Ordinal) ? 2 : 4, p.Files.Length));
    }

    [Theory]
    [InlineData("--kerf", "0.4")]
    [InlineData("--dxf", "r12")]
    [InlineData("--paper", "A6")]
    [InlineData("--paper", "roll 300")]
    [InlineData("--printer", "askew")]
    public void Whatever_is_asked_for_is_taken_into_account(string option, string value)
    {
        var store = new PrinterStore(_folder.At("configuration"));
        Assert.Null(store.Keep(new PrinterScale("askew", 0.987, 1.004, 0.004)));
        InProcess.Result result = InProcess.Run(Pipeline.Real with { Printers = store }, "develop", Fixtures.PathOf("jobs/trike-full-cover.json"), option, value, "--out", _folder.At("out"));
        Assert.True(result.Status == ExitStatus.Done, result.Error);
        Assert.All(Prover.Of(_folder.At("out")).Pieces.SelectMany(p => p.Files), f => Assert.True(f.Problem is null, $"{f.File} {f.Problem} {f.Off}"));
    }

    // The mitre at the two corners of the cover, of 67°, stands out by 0.8 of half a kerf, and one of them is where the printed line begins.
    [Theory]
    [InlineData("0.2")]
    [InlineData("1.5")]
    public void Corners_that_run_on_round_a_kerf_are_no_fault(string kerf)
    {
        Assert.Equal(ExitStatus.Done, InProcess.Run("develop", Fixtures.PathOf("jobs/trike-tail-cover.json"), "--kerf", kerf, "--out", _folder.At("out")).Status);
        Assert.All(Prover.Of(_folder.At("out")).Pieces.SelectMany(p => p.Files), f => Assert.True(f.Problem is null, $"{f.File} {f.Problem} {f.Off}"));
    }

    [Theory]
    [InlineData("cover.dxf", 1.001)]
    [InlineData("cover.svg", 1.001)]
    [InlineData("cover.obj", 1.001)]
    public void A_file_that_is_a_thousandth_too_large_is_found(string name, double factor)
    {
        Develop();
        string path = _folder.At("out", name), text = File.ReadAllText(path);
        string scaled = name switch
        {
            "cover.dxf" => ScaledDxf(text, factor),
            "cover.svg" => SvgCuts().Replace(text, m => SvgNumbers().Replace(m.Value, n => Times(n.Value, factor))),
            _ => ObjPlaces().Replace(text, m => $"vt {Times(m.Groups[1].Value, factor)} {Times(m.Groups[2].Value, factor)}"),
        };
        Assert.NotEqual(text, scaled);
        File.WriteAllText(path, scaled);
        ProvenFile off = Assert.Single(Prover.Of(_folder.At("out")).Pieces[0].Files, f => f.Problem is not null);
        Assert.Equal(name, off.File);
        // The blank is 486 mm wide, its frame has its middle in the middle.
        Assert.InRange(off.Off, 0.2, 0.3);
    }

    [Fact]
    public void A_print_of_another_piece_and_of_another_scale_are_found()
    {
        Develop();
        string svg = _folder.At("out", "cover.svg"), text = File.ReadAllText(svg);
        File.WriteAllText(svg, SvgWidth().Replace(text, "width=\"100mm\""));
        Assert.Contains("1:1", Prover.Of(_folder.At("out")).Pieces[0].Files.Single(f => f.File == "cover.svg").Problem, StringComparison.Ordinal);
        File.WriteAllText(svg, text);
        string job = _folder.Write("other.json", File.ReadAllText(Fixtures.PathOf("jobs/trike-tail-cover.json")).Replace("{ \"line\": 55 }", "{ \"line\": 56 }", StringComparison.Ordinal));
        Assert.Equal(ExitStatus.Done, InProcess.Run("develop", job, "--out", _folder.At("other")).Status);
        File.Copy(_folder.At("other", "cover.pdf"), _folder.At("out", "cover.pdf"), overwrite: true);
        Assert.Contains(Prover.Of(_folder.At("out")).Pieces[0].Files, f => f is { File: "cover.pdf", Problem: not null });
    }

    [Theory]
    [InlineData("cover.pdf")]
    [InlineData("cover.dxf")]
    [InlineData("cover.svg")]
    [InlineData("cover.obj")]
    public void A_file_that_is_missing_or_broken_is_told_and_the_others_are_still_read(string name)
    {
        Develop();
        File.WriteAllText(_folder.At("out", name), "no such thing");
        Told();
        File.Delete(_folder.At("out", name));
        Told();

        void Told()
        {
            InProcess.Result result = InProcess.Run("verify", _folder.At("out"));
            Assert.Equal(ExitStatus.Failed, result.Status);
            Assert.Contains("NOT THE SAME", result.Out, StringComparison.Ordinal);
            Assert.NotNull(Prover.Of(_folder.At("out")).Pieces[0].Files.Single(f => f.File == name).Problem);
        }
    }

    [Fact]
    public void A_folder_without_a_report_is_refused_with_its_mend()
    {
        InProcess.Result result = InProcess.Run("verify", _folder.Path);
        Assert.Equal(ExitStatus.CannotUse, result.Status);
        Assert.Contains("mend: ", result.Error, StringComparison.Ordinal);
        _folder.Write("report.json", "{ }");
        Assert.Equal(ExitStatus.CannotUse, InProcess.Run("verify", _folder.Path).Status);
    }

    private void Develop() => Assert.Equal(ExitStatus.Done, InProcess.Run("develop", Fixtures.PathOf("jobs/trike-tail-cover.json"), "--out", _folder.At("out")).Status);

    private static string Times(string number, double factor) => (factor * double.Parse(number, CultureInfo.InvariantCulture)).ToString("R", CultureInfo.InvariantCulture);

    // Places are groups 10 and 11 with x, 20 and 21 with y; a code and its value take a line each.
    private static string ScaledDxf(string text, double factor)
    {
        string[] lines = text.Split('\n');
        for (int i = 0; i + 1 < lines.Length; i += 2)
            if (lines[i].Trim() is "10" or "20" or "11" or "21") lines[i + 1] = Times(lines[i + 1], factor);
        return string.Join('\n', lines);
    }

    [GeneratedRegex("width=\"[0-9.]+mm\"")]
    private static partial Regex SvgWidth();

    [GeneratedRegex("<g id=\"cut\".*?</g>", RegexOptions.Singleline)]
    private static partial Regex SvgCuts();

    // Not the width of the line, nor the two flags and the turn of an arc.
    [GeneratedRegex(@"(?<=[MLA ,])-?[0-9]+\.[0-9]+(?=[ ,A-Z""])")]
    private static partial Regex SvgNumbers();

    [GeneratedRegex("^vt ([^ ]+) ([^ \n]+)", RegexOptions.Multiline)]
    private static partial Regex ObjPlaces();
}

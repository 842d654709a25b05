using SurfaceUnroll.Cli;
using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Files.Printers;
using SurfaceUnroll.Tests.Files.Pdf;

namespace SurfaceUnroll.Tests.Cli;

public sealed class TestingPrinterTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    private Pipeline Pipeline => Pipeline.Real with { Printers = new PrinterStore(_folder.At("configuration")) };

    private InProcess.Result Run(params string[] arguments) => InProcess.Run(Pipeline, arguments);

    [Fact]
    public void A_page_is_written_and_what_is_measured_on_it_corrects_the_pattern()
    {
        string pdf = _folder.At("test.pdf"), job = _folder.Write("job.json", StarterJob.Text);
        Assert.Equal(ExitStatus.Done, Run("page-test", "--out", pdf).Status);
        Assert.Single(PdfSheets.Read(File.ReadAllBytes(pdf)));
        InProcess.Result kept = Run("page-test", "--measured", "98.6", "99.7", "--name", "shop laser");
        Assert.Equal(ExitStatus.Done, kept.Status);
        Assert.Contains("98.60 %", kept.Out, StringComparison.Ordinal);
        InProcess.Result result = Run("develop", job, "--printer", "Shop Laser", "--out", _folder.At("out"));
        Assert.Equal((ExitStatus.Done, ""), (result.Status, result.Error));
        PaperSheetOf(_folder.At("out", "cover.pdf"));

        // The bar of 100 mm is given longer, so that it comes out true.
        void PaperSheetOf(string path)
        {
            var sheet = PdfSheets.Read(File.ReadAllBytes(path))[1];
            bool level = sheet.Width > sheet.Height;
            Assert.Single(sheet.Straight(0.35, 100 / (level ? 0.997 : 0.986)), l => l.IsLevel);
            Assert.Single(sheet.Straight(0.35, 100 / (level ? 0.986 : 0.997)), l => l.IsUpright);
        }
    }

    [Fact]
    public void Printers_are_kept_beside_each_other_and_measured_again_in_place()
    {
        Run("page-test", "--measured", "99", "99.5");
        Run("page-test", "--measured", "99.4", "100.2", "--name", "b");
        Run("page-test", "--measured", "100", "100.1", "--name", "B");
        (var printers, var fault) = new PrinterStore(_folder.At("configuration")).Read();
        Assert.Null(fault);
        Assert.Equal([("B", 1.0), ("printer", 0.99)], printers.Select(p => (p.Name, Math.Round(p.Across, 9))));
    }

    [Theory]
    [InlineData("a bar that is far off", "--measured", "94 94")]
    [InlineData("one measure", "--measured", "99")]
    [InlineData("three measures", "--measured", "99 99 300")]
    [InlineData("no length", "--measured", "ninety 99")]
    [InlineData("zero", "--measured", "0 99")]
    [InlineData("unknown paper", "--paper", "A11")]
    [InlineData("small paper", "--paper", "A9")]
    public void What_cannot_be_used_is_refused_and_nothing_is_kept(string why, string option, string values)
    {
        InProcess.Result result = Run(["page-test", option, .. values.Split(' ')]);
        Assert.True(result.Status == ExitStatus.CannotUse, why);
        Assert.StartsWith(option, result.Error, StringComparison.Ordinal);
        Assert.Contains("mend: ", result.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(_folder.At("configuration")));
    }

    [Fact]
    public void Paper_and_printer_that_are_not_there_are_both_told()
    {
        string job = _folder.Write("job.json", StarterJob.Text);
        InProcess.Result result = Run("develop", job, "--paper", "A44", "--printer", "none", "--out", _folder.At("out"));
        Assert.Equal(ExitStatus.CannotUse, result.Status);
        Assert.Contains("A44", result.Error, StringComparison.Ordinal);
        Assert.Contains("page-test", result.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(_folder.At("out")));
    }

    [Fact]
    public void The_command_line_may_name_another_paper()
    {
        string job = _folder.Write("job.json", StarterJob.Text);
        Assert.Equal(ExitStatus.Done, Run("develop", job, "--paper", "ansi d", "--out", _folder.At("out")).Status);
        var sheet = PdfSheets.Read(File.ReadAllBytes(_folder.At("out", "cover.pdf")))[1];
        Assert.Equal((558.8, 863.6), (Math.Min(sheet.Width, sheet.Height), Math.Max(sheet.Width, sheet.Height)), (a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) < 0.002);
    }

    [Theory]
    [InlineData("no json")]
    [InlineData("{ \"printers\": [ { \"name\": \"p\", \"across\": 3, \"along\": 1, \"skewDeg\": 0 } ] }")]
    [InlineData("{ \"printers\": [ { \"name\": \"p\" } ] }")]
    public void A_broken_file_of_printers_is_told_and_left_alone(string text)
    {
        Directory.CreateDirectory(_folder.At("configuration"));
        string path = _folder.Write("configuration/printers.json", text);
        InProcess.Result result = Run("page-test", "--measured", "99.4", "100.2");
        Assert.Equal(ExitStatus.CannotUse, result.Status);
        Assert.Contains("printers.json", result.Error, StringComparison.Ordinal);
        Assert.Equal(text, File.ReadAllText(path));
    }
}

using SurfaceUnroll.Files.JobFiles;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Tests.Files.JobFiles;

public class PaperTextTests
{
    [Theory]
    [InlineData("a3", LengthUnit.Millimetre, 297, 420)]
    [InlineData(" Letter ", LengthUnit.Millimetre, 215.9, 279.4)]
    [InlineData("ansi d", LengthUnit.Millimetre, 558.8, 863.6)]
    [InlineData("roll 610", LengthUnit.Millimetre, 610, double.PositiveInfinity)]
    [InlineData("roll 24", LengthUnit.Inch, 609.6, double.PositiveInfinity)]
    [InlineData("roll 24 in", LengthUnit.Millimetre, 609.6, double.PositiveInfinity)]
    [InlineData("900 x 600", LengthUnit.Millimetre, 600, 900)]
    [InlineData("8 1/2 × 14", LengthUnit.Inch, 215.9, 355.6)]
    public void A_size_is_read_as_it_is_said(string text, LengthUnit units, double width, double height)
    {
        PaperSize? size = PaperText.Read(text, units).Size;
        Assert.NotNull(size);
        Assert.Equal(width, size.Width, 1e-9);
        Assert.Equal(height, size.Height, 1e-9);
    }

    [Theory]
    [InlineData("")]
    [InlineData("A11")]
    [InlineData("roll")]
    [InlineData("roll -3")]
    [InlineData("x")]
    [InlineData("3 x 4 x 5")]
    [InlineData("0 x 100")]
    public void What_is_no_size_is_told_with_its_mend(string text)
    {
        (PaperSize? size, string problem, string mend) = PaperText.Read(text, LengthUnit.Millimetre);
        Assert.Null(size);
        Assert.NotEmpty(problem);
        Assert.NotEmpty(mend);
    }

    [Fact]
    public void A_whole_block_is_read()
    {
        PaperSpec paper = Job("""{ "size": { "roll": 914 }, "margin": { "top": 5, "bottom": 17 }, "overlap": 8, "turn": 30, "together": true }""");
        Assert.Equal(new PaperSpec(PaperSize.Roll(914), new PaperMargins(5, 10, 17, 10), 8, PaperOrientation.Fewest) { Turn = 30 * Math.PI / 180, Together = true }, paper);
        Assert.Equal(PaperSize.Own(900, 600), Job("""{ "size": [600, 900] }""").Size);
        Assert.Null(Job("""{ "turn": "fewest" }""").Turn);
        Assert.Equal(0, Job("""{ "turn": "none" }""").Turn);
    }

    private static PaperSpec Job(string paper) =>
        JobFile.Read(StarterJob.Text.Replace("\"paper\": \"A4\"", $"\"paper\": {paper}", StringComparison.Ordinal)).Job!.Paper;
}

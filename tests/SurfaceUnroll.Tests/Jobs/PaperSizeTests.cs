using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Tests.Jobs;

public class PaperSizeTests
{
    // ISO 216:2007, trimmed sizes, series A and B (from memory).
    [Theory]
    [InlineData("A0", 841, 1189)]
    [InlineData("A1", 594, 841)]
    [InlineData("A2", 420, 594)]
    [InlineData("A3", 297, 420)]
    [InlineData("A4", 210, 297)]
    [InlineData("A5", 148, 210)]
    [InlineData("A6", 105, 148)]
    [InlineData("A7", 74, 105)]
    [InlineData("A8", 52, 74)]
    [InlineData("A9", 37, 52)]
    [InlineData("A10", 26, 37)]
    [InlineData("B0", 1000, 1414)]
    [InlineData("B1", 707, 1000)]
    [InlineData("B2", 500, 707)]
    [InlineData("B3", 353, 500)]
    [InlineData("B4", 250, 353)]
    [InlineData("B5", 176, 250)]
    [InlineData("B6", 125, 176)]
    [InlineData("B7", 88, 125)]
    [InlineData("B8", 62, 88)]
    [InlineData("B9", 44, 62)]
    [InlineData("B10", 31, 44)]
    // ANSI/ASME Y14.1, inches (from memory).
    [InlineData("ANSI A", 8.5 * 25.4, 11 * 25.4)]
    [InlineData("ANSI B", 11 * 25.4, 17 * 25.4)]
    [InlineData("ANSI C", 17 * 25.4, 22 * 25.4)]
    [InlineData("ANSI D", 22 * 25.4, 34 * 25.4)]
    [InlineData("ANSI E", 34 * 25.4, 44 * 25.4)]
    [InlineData("Letter", 8.5 * 25.4, 11 * 25.4)]
    public void Named_sizes_are_those_of_the_standards(string name, double width, double height)
    {
        PaperSize size = Assert.Single(PaperSize.Named, s => s.Name == name);
        Assert.Equal(width, size.Width, 1e-9);
        Assert.Equal(height, size.Height, 1e-9);
    }

    [Fact]
    public void Opposite_margins_of_a_level_sheet_are_the_wider_of_both()
    {
        PaperMargins level = new PaperMargins(Top: 3, Right: 5, Bottom: 17, Left: 4).OnItsSide();
        Assert.Equal(new PaperMargins(5, 17, 5, 17), level);
    }
}

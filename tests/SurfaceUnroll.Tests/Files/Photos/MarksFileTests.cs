using System.Text;
using SurfaceUnroll.Files.Photos;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Photos;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Tests.Files.Photos;

public class MarksFileTests
{
    private static MarksReading Read(string text, LengthUnit units = LengthUnit.Millimetre) => MarksFile.Read(Encoding.UTF8.GetBytes(text), units, 0.3);

    [Fact]
    public void Taps_and_distances_are_read_in_any_order_with_headings_and_remarks()
    {
        MarkReference marks = Read("# by tape\nmark; x; y\nA; 310; 1480\nA; B; 12,5 cm\n\nB; 1620.5; 1500\nC;1570;560\nD;350;540\nC;D;300\n").Marks!;
        Assert.True(marks.IsTaped);
        Assert.Equal(["A", "B", "C", "D"], marks.Marks.Select(m => m.Name));
        Assert.Equal(new Vec2(1620.5, 1500), marks.Marks[1].Tap);
        Assert.Equal([new TapedDistance(0, 1, 125), new TapedDistance(2, 3, 300)], marks.Distances.Select(d => d with { Length = Math.Round(d.Length, 9) }));
    }

    [Fact]
    public void Places_are_lengths_of_the_shop()
    {
        MarkReference marks = Read("A, 310, 1480, 0, 0\nB, 1620, 1500, 11 3/4, 0\nC, 1570, 560, 1' 0 1/2\", 8", LengthUnit.Inch).Marks!;
        Assert.False(marks.IsTaped);
        Assert.Equal([Vec2.Zero, new Vec2(298.45, 0), new Vec2(317.5, 203.2)], marks.Marks.Select(m => new Vec2(Math.Round(m.Place!.Value.X, 9), Math.Round(m.Place.Value.Y, 9))));
    }

    [Fact]
    public void Marks_may_be_called_by_numbers()
    {
        MarkReference marks = Read("1, 310, 1480\n2, 1620, 1500\n3, 1570, 560\n1, 2, 250\n2, 3, 180").Marks!;
        Assert.Equal(["1", "2", "3"], marks.Marks.Select(m => m.Name));
        Assert.Equal([new TapedDistance(0, 1, 250), new TapedDistance(1, 2, 180)], marks.Distances.AsEnumerable());
    }

    [Theory]
    [InlineData("", "line 1", "no marks")]
    [InlineData("A, 1, 2\nA, 3, 4", "line 2", "two marks called A")]
    [InlineData("A, 1, 2\nA, B, 250", "line 2", "no mark called B")]
    [InlineData("A, 1, 2\nA, A, 250", "line 2", "from A to itself")]
    [InlineData("A, 1, 2\nB, 3, 4, 5", "line 2", "neither a tap nor a distance")]
    [InlineData("A, 1, 2\nB, 3, 4\nA, B, -5", "line 3", "neither a tap nor a distance")]
    [InlineData("A, 1, 2, 3, wide", "line 1", "no place of a mark")]
    public void A_row_that_cannot_be_is_told_with_its_line(string text, string where, string message)
    {
        MarksReading reading = Read(text);
        Assert.Null(reading.Marks);
        Assert.Equal(where, reading.Faults[0].Where);
        Assert.Contains(message, reading.Faults[0].Message, StringComparison.Ordinal);
        Assert.NotNull(reading.Faults[0].Mend);
    }

    [Theory]
    [InlineData("A4", 297, 210)]
    [InlineData("letter", 279.4, 215.9)]
    [InlineData("200 x 300", 200, 300)]
    [InlineData("8 in x 10 1/2 in", 203.2, 266.7)]
    public void A_sheet_lies_as_the_photo_shows_it_unless_both_sides_are_given(string text, double width, double height)
    {
        SheetReference sheet = ReferenceText.Sheet(text, [new(100, 400), new(700, 410), new(650, 90), new(140, 80)], LengthUnit.Millimetre, 0.3).Sheet!;
        Assert.Equal((width, height), (Math.Round(sheet.Width, 9), Math.Round(sheet.Height, 9)));
        Assert.Equal(text.Contains('x', StringComparison.Ordinal) ? 0.3 : HandErrors.Paper, sheet.Spread);
    }

    [Theory]
    [InlineData("roll 610")]
    [InlineData("A44")]
    [InlineData("0 x 200")]
    public void Another_word_is_told(string text)
    {
        (SheetReference? sheet, string problem, string mend) = ReferenceText.Sheet(text, [new(100, 400), new(700, 410), new(650, 90), new(140, 80)], LengthUnit.Millimetre, 0.3);
        Assert.Null(sheet);
        Assert.NotEqual("", problem);
        Assert.NotEqual("", mend);
    }

    [Theory]
    [InlineData(0.1, "0.1 mm")]
    [InlineData(0.101, "0.11 mm")]
    [InlineData(0.996, "1.0 mm")]
    [InlineData(1.01, "1.1 mm")]
    public void A_bound_is_rounded_up(double mm, string text) => Assert.Equal(text, ErrorText.Of(mm));
}

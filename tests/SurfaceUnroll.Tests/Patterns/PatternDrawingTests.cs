using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Tests.Patterns;

public class PatternDrawingTests
{
    [Fact]
    public void Cut_line_is_drawn_once_and_closed()
    {
        Development half = Samples.HalfCylinder();
        Stroke cut = Assert.Single(Of(half).Strokes, s => s.Role == Role.Cut);
        Assert.True(cut.Closed);
        Assert.Equal(half.Panels[0].Cut, cut.Points);
    }

    [Fact]
    public void Numbered_lines_inside_the_piece_are_drawn_and_the_ones_on_the_cut_line_or_the_centreline_are_not()
    {
        // 13 lines are numbered: 1 and 13 are the ends of the sheet and 7 is its middle, where the centreline runs.
        Drawing drawing = Of(Samples.HalfCylinder());
        Stroke[] lines = [.. drawing.Strokes.Where(s => s.Role == Role.Element)];
        Assert.Equal(10, lines.Select(s => Math.Round(s.Points[0].X)).Distinct().Count());
        Assert.DoesNotContain(lines, s => Math.Abs(s.Points[0].X) < 1 || Math.Abs(s.Points[0].X) > 230);
        Assert.Single(drawing.Strokes, s => s.Role == Role.Centre);
    }

    [Theory]
    [InlineData(3, 10)]
    [InlineData(60, 300)]
    [InlineData(150, 400)]
    [InlineData(1500, 5000)]
    public void Words_stand_inside_the_piece_and_clear_of_one_another(double radius, double length)
    {
        Drawing drawing = Of(Samples.HalfCylinder(radius, length));
        TextOutline[] words = [.. drawing.Letterings.Select(TextOutline.Of)];
        double half = Math.PI * radius / 2;
        Assert.All(words, w => Assert.True(w.Bounds.Min.X > -half && w.Bounds.Max.X < half && w.Bounds.Min.Y > -length && w.Bounds.Max.Y < 0));
        for (int i = 0; i < words.Length; i++)
            for (int j = 0; j < i; j++)
                Assert.False(words[i].Overlaps(words[j]), $"“{drawing.Letterings[i].Text}” runs into “{drawing.Letterings[j].Text}”");
    }

    [Theory]
    [InlineData(60, 300)]
    [InlineData(150, 400)]
    [InlineData(1500, 5000)]
    public void Piece_of_ordinary_size_says_all_there_is_to_say(double radius, double length)
    {
        string[] words = [.. Of(Samples.HalfCylinder(radius, length)).Letterings.Select(t => t.Text)];
        foreach (string word in new[] { "Cover", "Half cylinder", "mild steel 0.9 mm", "OUTSIDE FACE UP", "FRONT", "REAR", "LEFT", "RIGHT" })
            Assert.Single(words, word);
        string radiusText = $"R {radius:0}";
        for (int number = 2; number <= 12; number++) Assert.Equal(2, words.Count(w => w == $"{number}  {radiusText}"));
    }

    [Fact]
    public void Words_read_from_below_or_from_the_right() =>
        Assert.All(Of(Samples.HalfCylinder()).Letterings, t => Assert.InRange(t.Angle, -Math.PI / 2 + 1e-6, Math.PI / 2 + 1e-6));

    [Fact]
    public void Inch_jobs_are_labelled_in_inches()
    {
        // 152.4 mm are 6 in; 0.9 mm are 0.0354 in.
        string[] words = [.. Of(Samples.HalfCylinder(152.4, 400, LengthUnit.Inch)).Letterings.Select(t => t.Text)];
        Assert.Contains("2  R 6", words);
        Assert.Contains("mild steel 0.035 in", words);
    }

    [Fact]
    public void Flat_lines_say_so()
    {
        Development half = Samples.HalfCylinder();
        PanelDevelopment panel = half.Panels[0];
        ImmutableArray<ElementLine> flat = [.. panel.Elements.Select(e => e with { BendRadiusFront = double.PositiveInfinity, BendRadiusRear = 0 })];
        string[] words = [.. PatternDrawing.Of(panel with { Elements = flat }, half.Job, []).Letterings.Select(t => t.Text)];
        Assert.Contains("2  flat", words);
        Assert.Contains("2  point", words);
    }

    private static Drawing Of(Development development) => PatternDrawing.Of(development.Panels[0], development.Job, development.Joints);
}

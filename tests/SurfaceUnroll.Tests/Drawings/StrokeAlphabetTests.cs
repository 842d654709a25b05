using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;
using SurfaceUnroll.Patterns.CutPaths;

namespace SurfaceUnroll.Tests.Drawings;

public class StrokeAlphabetTests
{
    private const string Signs = "°Ø×–—−“”‘’…→²¼½¾⅛⅜⅝⅞";

    private static string All => string.Concat(Enumerable.Range(' ', '~' - ' ' + 1).Select(c => (char)c)) + Signs;

    [Fact]
    public void Every_character_of_a_drawing_has_a_sign_and_no_two_look_alike()
    {
        Assert.All(All, c => Assert.True(StrokeAlphabet.Has(c), $"{c}"));
        // Dashes differ in length alone.
        string[] looks = [.. All.Except("–—−").Select(c => string.Join(' ', StrokeAlphabet.Lines(At(c.ToString(), 0)).SelectMany(s => s.Points.Select(p => $"{p.X / PageTextWidth.Of(c.ToString(), 10):0.00},{p.Y:0.0}"))))];
        Assert.Equal(looks.Length, looks.Distinct().Count());
    }

    [Theory]
    [InlineData(Anchor.Left, 0)]
    [InlineData(Anchor.Middle, 1.1)]
    [InlineData(Anchor.Right, -0.4)]
    public void Lines_keep_to_the_room_of_the_text(Anchor anchor, double angle)
    {
        foreach (string text in All.Select(c => c.ToString()).Append("Bend 1  DOWN 85–95°  R 0.9 gjpqy"))
        {
            Lettering lettering = At(text, angle) with { Anchor = anchor };
            Vec2[] corners = [.. TextOutline.Of(lettering).Corners];
            Vec2 right = (corners[1] - corners[0]).Unit;
            double width = (corners[1] - corners[0]).Length, height = (corners[3] - corners[0]).Length;
            foreach (Vec2 p in StrokeAlphabet.Lines(lettering).SelectMany(s => s.Points).Select(p => p - corners[0]))
            {
                Assert.InRange(p.Dot(right), 0, width);
                // Brackets and bars overshoot capitals and tails by a sixth of a capital.
                Assert.InRange(p.Dot(right.Left), -0.06 * 10, height + 0.2 * 10);
            }
        }
    }

    [Fact]
    public void Words_of_marks_and_notes_become_lines_of_their_layers_and_others_stay()
    {
        Development cover = FittedSamples.Cover();
        Drawing drawing = PatternDrawing.Of(cover.Panels[0], cover.Job, cover.Joints);
        Drawing scribed = CutFitting.Of(drawing, CuttingSpec.Default with { Lettering = CutLettering.Strokes });
        Assert.Empty(scribed.Letterings.Where(t => t.Role is Role.Mark or Role.Note));
        Assert.Equal(drawing.Letterings.Where(t => t.Role is not (Role.Mark or Role.Note)), scribed.Letterings);
        foreach (Role role in new[] { Role.Mark, Role.Note })
        {
            int lines = drawing.Letterings.Where(t => t.Role == role).Sum(t => StrokeAlphabet.Lines(t).Count());
            Assert.True(lines > 0);
            Assert.Equal(drawing.Strokes.Count(s => s.Role == role) + lines, scribed.Strokes.Count(s => s.Role == role));
        }
    }

    private static Lettering At(string text, double angle) => new(Role.Note, text, new Vec2(30, -20), 10, angle);
}

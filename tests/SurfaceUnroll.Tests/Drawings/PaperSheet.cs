using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Tests.Drawings;

/// <summary>What can be read off one printed sheet with rule and eye: lines with their thickness and words with the left end of their baseline, mm.</summary>
internal sealed record PaperSheet(double Width, double Height, IReadOnlyList<PaperLine> Lines, IReadOnlyList<PaperWord> Words)
{
    public const double WideLine = 0.7, NarrowLine = 0.35;

    /// <summary>The sheet as it was meant to be drawn.</summary>
    public static PaperSheet Of(Page page) => new(
        page.Width, page.Height,
        [.. page.Lines.Select(l => new PaperLine(Thickness(l.Pen), l.Closed ? [.. l.Points, l.Points[0]] : [.. l.Points]))],
        [.. page.Texts.Where(t => t.Anchor == Anchor.Left).Select(t => new PaperWord(t.Text, t.At))]);

    /// <summary>Straight lines of a thickness and length.</summary>
    public IEnumerable<PaperLine> Straight(double thickness, double length) =>
        Lines.Where(l => l.Points.Count == 2 && Math.Abs(l.Thickness - thickness) < 0.01 && Math.Abs((l.Points[1] - l.Points[0]).Length - length) < 0.01);

    /// <summary>Overlap marks: the middle of each cross of two 7 mm lines that has a letter beside it.</summary>
    public IReadOnlyDictionary<string, Vec2> Marks()
    {
        Vec2[] arms = [.. Straight(NarrowLine, 7).Where(l => l.IsLevel).Select(l => 0.5 * (l.Points[0] + l.Points[1]))];
        Vec2[] uprights = [.. Straight(NarrowLine, 7).Where(l => l.IsUpright).Select(l => 0.5 * (l.Points[0] + l.Points[1]))];
        var marks = new Dictionary<string, Vec2>();
        foreach (Vec2 middle in arms.Where(a => uprights.Any(u => (u - a).Length < 0.01)))
        {
            // The letter stands a millimetre up and to the right of the middle; wide ones are moved left at the frame.
            PaperWord? letter = Words.Where(w => w.Text.All(char.IsAsciiLetterLower) && Math.Abs(w.At.Y - middle.Y - 1) < 0.3 && w.At.X - middle.X is > -2.5 and < 1.3).MinBy(w => Math.Abs(w.At.X - middle.X - 1));
            if (letter is not null) marks.Add(letter.Text, middle);
        }
        return marks;
    }

    private static double Thickness(Pen pen) => pen switch { Pen.Wide => WideLine, Pen.Fine => 0.18, _ => NarrowLine };
}

internal sealed record PaperLine(double Thickness, IReadOnlyList<Vec2> Points)
{
    public bool IsLevel => Points.Count == 2 && Math.Abs(Points[1].Y - Points[0].Y) < 0.001;

    public bool IsUpright => Points.Count == 2 && Math.Abs(Points[1].X - Points[0].X) < 0.001;
}

internal sealed record PaperWord(string Text, Vec2 At);

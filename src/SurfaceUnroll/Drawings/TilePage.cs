using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Drawings;

/// <summary>Words that stand on every tile.</summary>
/// <param name="Piece">Name of the piece.</param>
/// <param name="Job">Name of the job.</param>
/// <param name="Sheet">Material and thickness.</param>
public sealed record TileWords(string Piece, string Job, string Sheet);

/// <summary>Draws one tile at true scale with its marks, bars, map and words.</summary>
internal static class TilePage
{
    // Half size of an overlap cross, mm; on a narrow overlap the frame cuts its arms.
    private const double CrossArm = 3.5;
    private const double TextHeight = 2.4, LabelHeight = 6;

    // Stands before the label, so that it is not taken for a measure.
    private const string SheetWord = "sheet ";

    // What the level check bars take of the foot, mm.
    private const double BarsWidth = 107, BarsHeight = 13;

    // The upright bars begin this far above the margin, above the level ones: so they fit the lowest sheet that a job may ask for, mm.
    private const double UprightBarsFoot = 15;

    private static readonly ImmutableArray<string> Advice = ["Print at 100 %: the bars", "must measure true."];

    /// <summary>The page of one tile.</summary>
    /// <param name="drawing">The whole drawing.</param>
    /// <param name="plan">The plan that the tile is of.</param>
    /// <param name="tile">A tile that is not empty.</param>
    /// <param name="pages">Number of this page and of all.</param>
    /// <param name="tapeMarks">The far marks of the piece, in the drawing.</param>
    /// <param name="words">Words for the foot of the page.</param>
    public static Page Draw(Drawing drawing, TilePlan plan, Tile tile, (int Number, int Count) pages, ImmutableArray<OverlapMark> tapeMarks, TileWords words)
    {
        Box onPaper = TileLayout.WindowOnPaper(plan);
        Vec2 shift = onPaper.Min - tile.Window.Min;
        ImmutableArray<Vec2> outline = drawing.Strokes.First(s => s.Role == Role.Cut).Points;
        List<PagePart> marks =
        [
            .. Strokes(drawing, tile, shift),
            .. OverlapMarks(plan, tile, shift),
            .. TapeMarks(tapeMarks, tile, shift),
            new PageLine(Pen.Fine, [onPaper.Min, new Vec2(onPaper.Max.X, onPaper.Min.Y), onPaper.Max, new Vec2(onPaper.Min.X, onPaper.Max.Y)], Closed: true),
            .. Letterings(drawing, tile, shift),
            .. CheckBars.Upright(new Vec2(plan.Paper.Margin + 4, plan.Paper.Margin + UprightBarsFoot)),
            .. CheckBars.Level(new Vec2(plan.Paper.Margin + 1, plan.Paper.Margin + 8.5)),
            .. Foot(plan, tile, outline, pages, words),
        ];
        return Page.Of(plan.Width, plan.Height, marks);
    }

    private static IEnumerable<PagePart> Strokes(Drawing drawing, Tile tile, Vec2 shift) =>
        from stroke in drawing.Strokes
        from part in Clip.Line(stroke.Points, stroke.Closed, tile.Window)
        select OnPage(stroke, part, shift);

    // A contour that is whole on this sheet stays closed, so that its ends are joined like its corners.
    private static PageLine OnPage(Stroke stroke, ImmutableArray<Vec2> part, Vec2 shift)
    {
        bool whole = stroke.Closed && part.Length == stroke.Points.Length + 1;
        return new PageLine(PenOf(stroke), [.. (whole ? part[..^1] : part).Select(p => p + shift)], whole);
    }

    private static Pen PenOf(Stroke stroke) => stroke.Role switch
    {
        Role.Cut => Pen.Wide,
        Role.Element => Pen.Chain,
        Role.Centre => Pen.LongChain,
        Role.Bend => stroke.Dashed ? Pen.NarrowDashed : Pen.Narrow,
        Role.Net => Pen.DoubleChain,
        Role.Contour => stroke.Dashed ? Pen.FineDashed : Pen.Fine,
        _ => Pen.Narrow,
    };

    // A text is drawn on every tile that holds the whole of it. One that no tile holds whole is moved just inside the tile where its middle is.
    private static IEnumerable<PageText> Letterings(Drawing drawing, Tile tile, Vec2 shift)
    {
        foreach (Lettering text in drawing.Letterings)
        {
            if (tile.Window.Contains(TextOutline.Of(text).Bounds.Centre)) yield return InFrame(text, tile, shift, halo: true);
        }
    }

    // The text at its place on the page, moved so far that all of it is inside the frame. White goes behind words that stand where the drawing has
    // room for them, and nowhere else: it must never hide the cut line.
    private static PageText InFrame(Lettering text, Tile tile, Vec2 shift, bool halo = false)
    {
        Vec2 move = Into(tile.Window.Grow(-0.5), TextOutline.Of(text).Bounds);
        return new PageText(text.Text, text.At + shift + move, text.Height, text.Angle, text.Anchor, Halo: halo && move == Vec2.Zero);
    }

    private static Vec2 Into(Box window, Box box) => new(
        Math.Max(0, window.Min.X - box.Min.X) - Math.Max(0, box.Max.X - window.Max.X),
        Math.Max(0, window.Min.Y - box.Min.Y) - Math.Max(0, box.Max.Y - window.Max.Y));

    private static IEnumerable<PagePart> OverlapMarks(TilePlan plan, Tile tile, Vec2 shift)
    {
        foreach (OverlapMark mark in plan.Marks.Where(m => tile.Window.Contains(m.At)))
        {
            foreach (PagePart line in Cross(mark.At, CrossArm, tile, shift)) yield return line;
            yield return InFrame(new Lettering(Role.Mark, mark.Letter, mark.At + new Vec2(1, 1), 2.2), tile, shift);
        }
    }

    private static IEnumerable<PagePart> TapeMarks(ImmutableArray<OverlapMark> marks, Tile tile, Vec2 shift)
    {
        const double radius = 2.5;
        foreach (OverlapMark mark in marks.Where(m => tile.Window.Grow(-radius - 1).Contains(m.At)))
        {
            foreach (PagePart line in Cross(mark.At, radius + 1, tile, shift)) yield return line;
            yield return new PageLine(Pen.Narrow, [.. Enumerable.Range(0, 36).Select(i => mark.At + shift + radius * Vec2.FromAngle(i * Math.PI / 18))], Closed: true);
            yield return InFrame(new Lettering(Role.Mark, mark.Letter, mark.At + new Vec2(radius + 1.5, 1), TextHeight), tile, shift);
        }
    }

    private static IEnumerable<PagePart> Cross(Vec2 at, double arm, Tile tile, Vec2 shift) =>
        from half in new[] { new Vec2(arm, 0), new Vec2(0, arm) }
        from part in Clip.Line([at - half, at + half], false, tile.Window)
        select new PageLine(Pen.Narrow, [.. part.Select(p => p + shift)]);

    private static IEnumerable<PagePart> Foot(TilePlan plan, Tile tile, ImmutableArray<Vec2> outline, (int Number, int Count) pages, TileWords words)
    {
        double margin = plan.Paper.Margin, top = margin + TileLayout.FootStrip - 3, left = margin + TileLayout.SideStrip;
        double mapLeft = plan.Width - margin - 26, number = left + PageTextWidth.Of(SheetWord, TextHeight), x = number + 4 + PageTextWidth.Of(tile.Label, LabelHeight);
        yield return new PageText(SheetWord.TrimEnd(), new Vec2(left, top - LabelHeight), TextHeight);
        yield return new PageText(tile.Label, new Vec2(number, top - LabelHeight), LabelHeight);
        string page = string.Create(CultureInfo.InvariantCulture, $"Page {pages.Number} of {pages.Count}   OUTSIDE FACE UP");
        string[] lines = [$"{words.Piece} – {words.Job}", words.Sheet, page];
        for (int i = 0; i < lines.Length; i++)
            yield return new PageText(PageTextWidth.Fit(lines[i], TextHeight, mapLeft - 2 - x), new Vec2(x, top - TextHeight - 4 * i), TextHeight);

        // Beside the level bars: advice and the map, or on narrow paper the map alone, above the bars.
        double advice = margin + BarsWidth, mapFoot = margin + (mapLeft > advice ? 1 : BarsHeight);
        if (mapLeft - advice > PageTextWidth.Of(Advice[0], TextHeight))
        {
            yield return new PageText(Advice[0], new Vec2(advice, margin + 7.6), TextHeight);
            yield return new PageText(Advice[1], new Vec2(advice, margin + 3.6), TextHeight);
        }
        Box room = new(new Vec2(mapLeft, mapFoot), new Vec2(plan.Width - margin - 1, margin + TileLayout.FootStrip - 2));
        foreach (PagePart part in TileMap.Small(plan, outline, room, tile)) yield return part;
    }
}

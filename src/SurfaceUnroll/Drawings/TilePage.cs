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
    // Half size of an overlap cross where the overlap has room for it, mm.
    private const double CrossArm = 3.5;
    private const double TextHeight = 2.4, LabelHeight = 6;

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
            .. CheckBars.Upright(new Vec2(plan.Paper.Margin + 3.4, onPaper.Min.Y + 2)),
            .. CheckBars.Level(new Vec2(plan.Paper.Margin + 1, plan.Paper.Margin + 8.5)),
            .. Foot(plan, tile, outline, pages, words),
        ];
        return Page.Of(plan.Width, plan.Height, marks);
    }

    private static IEnumerable<PagePart> Strokes(Drawing drawing, Tile tile, Vec2 shift) =>
        from stroke in drawing.Strokes
        from part in Clip.Line(stroke.Points, stroke.Closed, tile.Window)
        select new PageLine(PenOf(stroke.Role), [.. part.Select(p => p + shift)]);

    private static Pen PenOf(Role role) => role switch
    {
        Role.Cut => Pen.Wide,
        Role.Element => Pen.Chain,
        Role.Centre => Pen.LongChain,
        _ => Pen.Narrow,
    };

    // A text is drawn on every tile that holds the whole of it. One that no tile holds whole is moved just inside the tile where its middle is.
    private static IEnumerable<PageText> Letterings(Drawing drawing, Tile tile, Vec2 shift)
    {
        foreach (Lettering text in drawing.Letterings)
        {
            Box box = BoxOf(text);
            if (!Contains(tile.Window, box.Centre)) continue;
            Vec2 move = Into(tile.Window.Grow(-0.5), box);
            yield return new PageText(text.Text, text.At + shift + move, text.Height, text.Angle, text.Anchor, Halo: true);
        }
    }

    private static Box BoxOf(Lettering text)
    {
        double width = PageTextWidth.Of(text.Text, text.Height);
        double start = text.Anchor switch { Anchor.Middle => -0.5 * width, Anchor.Right => -width, _ => 0 };
        return Box.Around(new[] { new Vec2(start, -0.3 * text.Height), new Vec2(start + width, -0.3 * text.Height), new Vec2(start, text.Height), new Vec2(start + width, text.Height) }
            .Select(corner => text.At + corner.Rotate(text.Angle)));
    }

    private static Vec2 Into(Box window, Box box) => new(
        Math.Max(0, window.Min.X - box.Min.X) - Math.Max(0, box.Max.X - window.Max.X),
        Math.Max(0, window.Min.Y - box.Min.Y) - Math.Max(0, box.Max.Y - window.Max.Y));

    private static bool Contains(Box box, Vec2 p) => p.X >= box.Min.X && p.X <= box.Max.X && p.Y >= box.Min.Y && p.Y <= box.Max.Y;

    private static IEnumerable<PagePart> OverlapMarks(TilePlan plan, Tile tile, Vec2 shift)
    {
        double arm = Math.Min(CrossArm, 0.45 * plan.Paper.Overlap + 1e-3);
        foreach (OverlapMark mark in plan.Marks.Where(m => Contains(tile.Window, m.At)))
        {
            foreach (PagePart line in Cross(mark.At, arm, tile, shift)) yield return line;
            double height = Math.Min(2.2, 0.6 * arm + 0.2);
            yield return new PageText(mark.Letter, mark.At + shift + new Vec2(0.35 * arm, 0.25 * arm), height);
        }
    }

    private static IEnumerable<PagePart> TapeMarks(ImmutableArray<OverlapMark> marks, Tile tile, Vec2 shift)
    {
        const double radius = 2.5;
        foreach (OverlapMark mark in marks.Where(m => Contains(tile.Window.Grow(-radius - 1), m.At)))
        {
            foreach (PagePart line in Cross(mark.At, radius + 1, tile, shift)) yield return line;
            yield return new PageLine(Pen.Narrow, [.. Enumerable.Range(0, 36).Select(i => mark.At + shift + radius * Vec2.FromAngle(i * Math.PI / 18))], Closed: true);
            Vec2 at = mark.At + new Vec2(radius + 1.5, 1);
            at += Into(tile.Window.Grow(-0.5), new Box(at, at + new Vec2(PageTextWidth.Of(mark.Letter, TextHeight), TextHeight)));
            yield return new PageText(mark.Letter, at + shift, TextHeight, Halo: true);
        }
    }

    private static IEnumerable<PagePart> Cross(Vec2 at, double arm, Tile tile, Vec2 shift) =>
        from half in new[] { new Vec2(arm, 0), new Vec2(0, arm) }
        from part in Clip.Line([at - half, at + half], false, tile.Window)
        select new PageLine(Pen.Narrow, [.. part.Select(p => p + shift)]);

    private static IEnumerable<PagePart> Foot(TilePlan plan, Tile tile, ImmutableArray<Vec2> outline, (int Number, int Count) pages, TileWords words)
    {
        double margin = plan.Paper.Margin, top = margin + TileLayout.FootStrip - 3;
        string page = string.Create(CultureInfo.InvariantCulture, $"sheet {tile.Label}   page {pages.Number} of {pages.Count}");
        yield return new PageText(tile.Label, new Vec2(margin + 1, top - LabelHeight), LabelHeight);
        double x = margin + 5 + PageTextWidth.Of(tile.Label, LabelHeight), right = plan.Width - margin - 62;
        yield return new PageText(Fitted($"{words.Piece} – {words.Job}", right - x), new Vec2(x, top - TextHeight), TextHeight);
        yield return new PageText(Fitted($"{words.Sheet}   OUTSIDE FACE UP   {page}", right - x), new Vec2(x, top - LabelHeight), TextHeight);
        yield return new PageText("Print at 100 % (actual size): both bars", new Vec2(margin + 108, margin + 9.5), 1.9);
        yield return new PageText("of both directions must measure true.", new Vec2(margin + 108, margin + 6.2), 1.9);
        Box room = new(new Vec2(plan.Width - margin - 26, margin + 1), new Vec2(plan.Width - margin - 1, margin + TileLayout.FootStrip - 2));
        foreach (PagePart part in TileMap.Draw(plan, outline, room, tile, labelled: false)) yield return part;
    }

    private static string Fitted(string text, double room)
    {
        string fitted = text;
        while (fitted.Length > 1 && PageTextWidth.Of(fitted, TextHeight) > room) fitted = fitted[..^2] + "…";
        return fitted;
    }
}

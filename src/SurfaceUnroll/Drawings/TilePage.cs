using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Drawings;

/// <summary>Words that stand on every tile.</summary>
/// <param name="Piece">Name of the piece.</param>
/// <param name="Job">Name of the job.</param>
/// <param name="Sheet">Material and thickness.</param>
public sealed record TileWords(string Piece, string Job, string Sheet)
{
    /// <summary>Which way the drawing is seen.</summary>
    public string Face { get; init; } = "OUTSIDE FACE UP";
}

/// <summary>Draws one tile at true scale with its marks, bars, map and words.</summary>
internal static class TilePage
{
    // Half size of an overlap cross, mm; on a narrow overlap the frame cuts its arms.
    private const double CrossArm = 3.5;
    private const double TextHeight = 2.4, LabelHeight = 6;

    // Stands before the label, so that it is not taken for a measure.
    private const string SheetWord = "sheet ";

    // What the level check bars take of the foot, mm.
    private const double BarsHeight = 13;

    // White behind words of the frame keeps so clear of the cut line, mm.
    private const double RoomBesideCut = 0.8;

    // The upright bars begin this far above the margin, above the level ones: so they fit the lowest sheet that a job may ask for, mm.
    private const double UprightBarsFoot = 15;

    // So many lines off its place a word may stand.
    private static readonly ImmutableArray<double> Lines = [0, 1, -1, 2, -2, 3, -3, 4, -4];

    private static readonly ImmutableArray<string> Advice = ["Print at 100 %: the bars", "must measure true."];

    /// <summary>The page of one tile, in true millimetres.</summary>
    /// <param name="plan">The drawing and its tiles.</param>
    /// <param name="tile">A tile that is not empty.</param>
    /// <param name="pages">Number of this page and of all.</param>
    /// <param name="tapeMarks">The far marks of the piece, in the turned drawing.</param>
    /// <param name="words">Words for the foot of the page.</param>
    public static Page Draw(TilePlan plan, Tile tile, (int Number, int Count) pages, ImmutableArray<OverlapMark> tapeMarks, TileWords words)
    {
        Drawing drawing = plan.Drawing;
        Box onPaper = TileLayout.WindowOnPaper(plan), area = plan.Sheet.Area;
        Vec2 shift = onPaper.Min - tile.Window.Min;
        ImmutableArray<Vec2> outline = drawing.Strokes.First(s => s.Role == Role.Cut).Points;
        var bars = CheckBars.For(area);
        PageLine[] strokes = [.. Strokes(drawing, tile, shift)];
        PagePart[] marks = [.. OverlapMarks(plan, tile, shift), .. TapeMarks(tapeMarks, tile, shift)];
        PageText[] letters = [.. Letterings(drawing, tile, shift)];
        // The frame's own words keep off the pattern.
        PageLine[] cuts = [.. strokes.Where(l => l.Pen == Pen.Wide)];
        Box[] occupied = [.. letters.Concat(marks.OfType<PageText>()).Select(t => TextOutline.Of(t).Bounds), .. marks.OfType<PageLine>().Select(l => Box.Around(l.Points))];
        bool Taken(Box box) => occupied.Any(o => o.Meets(box)) || cuts.Any(l => !Clip.Line(l.Points, l.Closed, box.Grow(RoomBesideCut)).IsEmpty);
        PagePart[] seams = [.. TileSeams.Of(plan, tile, shift, Taken)];
        Box[] spoken = [.. seams.OfType<PageText>().Select(t => TextOutline.Of(t).Bounds)];
        List<PagePart> parts =
        [
            .. TileRuler.Of(plan, tile, shift, box => Taken(box) || spoken.Any(s => s.Meets(box))),
            .. strokes,
            .. seams,
            .. marks,
            new PageLine(Pen.Fine, [onPaper.Min, new Vec2(onPaper.Max.X, onPaper.Min.Y), onPaper.Max, new Vec2(onPaper.Min.X, onPaper.Max.Y)], Closed: true),
            .. letters,
            .. bars.Upright(area.Min + new Vec2(4, UprightBarsFoot)),
            .. bars.Level(area.Min + new Vec2(1, 8.5)),
            .. Foot(plan, tile, bars, outline, pages, words),
        ];
        return Page.Of(plan.Sheet.Width, plan.Sheet.Height, parts);
    }

    private static IEnumerable<PageLine> Strokes(Drawing drawing, Tile tile, Vec2 shift) =>
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

    // A text is drawn on every tile that holds the whole of it. One that no tile holds whole is moved just inside the tile where its middle is, and off
    // others that stand there.
    private static IEnumerable<PageText> Letterings(Drawing drawing, Tile tile, Vec2 shift)
    {
        PageText[] here = [.. drawing.Letterings.Where(t => tile.Window.Contains(TextOutline.Of(t).Bounds.Centre)).Select(t => InFrame(t, tile, shift, halo: true))];
        var placed = here.Where(t => t.Halo).Select(TextOutline.Of).ToList();
        Box frame = tile.Window.Grow(-0.5);
        frame = new Box(frame.Min + shift, frame.Max + shift);
        foreach (PageText text in here)
        {
            if (text.Halo)
            {
                yield return text;
                continue;
            }
            Vec2 line = 1.5 * text.Height * Vec2.FromAngle(text.Angle + 0.5 * Math.PI);
            PageText moved = Lines.Select(k => text with { At = text.At + k * line }).FirstOrDefault(t => TextOutline.Of(t) is var o && o.Corners.All(frame.Contains) && !placed.Any(o.Overlaps), text);
            placed.Add(TextOutline.Of(moved));
            yield return moved;
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

    private static IEnumerable<PagePart> Foot(TilePlan plan, Tile tile, CheckBars bars, ImmutableArray<Vec2> outline, (int Number, int Count) pages, TileWords words)
    {
        Box area = plan.Sheet.Area;
        double top = area.Min.Y + TileLayout.FootStrip - 3, left = area.Min.X + TileLayout.SideStrip;
        double mapLeft = area.Max.X - 26, number = left + PageTextWidth.Of(SheetWord, TextHeight), x = number + 4 + PageTextWidth.Of(tile.Label, LabelHeight);
        yield return new PageText(SheetWord.TrimEnd(), new Vec2(left, top - LabelHeight), TextHeight);
        yield return new PageText(tile.Label, new Vec2(number, top - LabelHeight), LabelHeight);
        string page = string.Create(CultureInfo.InvariantCulture, $"Page {pages.Number} of {pages.Count}   {words.Face}");
        string[] lines = [$"{words.Piece} – {words.Job}", plan.Paper.Printer is { } printer ? $"{words.Sheet}   corrected for {printer.Name}" : words.Sheet, page];
        for (int i = 0; i < lines.Length; i++)
        {
            string fitting = PageTextWidth.Fit(lines[i], TextHeight, mapLeft - 2 - x);
            if (fitting.Length > 0) yield return new PageText(fitting, new Vec2(x, top - TextHeight - 4 * i), TextHeight);
        }

        // Beside the level bars: advice and the map, or on narrow paper the map alone, above the bars.
        double advice = area.Min.X + bars.Width, mapFoot = area.Min.Y + (mapLeft > advice ? 1 : BarsHeight);
        if (mapLeft - advice > PageTextWidth.Of(Advice[0], TextHeight))
        {
            yield return new PageText(Advice[0], new Vec2(advice, area.Min.Y + 7.6), TextHeight);
            yield return new PageText(Advice[1], new Vec2(advice, area.Min.Y + 3.6), TextHeight);
        }
        Box room = new(new Vec2(mapLeft, mapFoot), new Vec2(area.Max.X - 1, area.Min.Y + TileLayout.FootStrip - 2));
        foreach (PagePart part in TileMap.Small(plan, outline, room, tile)) yield return part;
    }
}

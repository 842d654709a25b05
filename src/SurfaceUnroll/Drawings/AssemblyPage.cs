using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Drawings;

/// <summary>The first page: how the sheets go together, what the tape must show, the facts of the piece and the cautions.</summary>
internal static class AssemblyPage
{
    private const double Title = 5, Head = 3, Body = 2.3, Line = 4.1;

    private static readonly ImmutableArray<string> HowTo =
    [
        "Print every page at 100 % (“actual size”), never “fit to page”.",
        "On each sheet hold a rule against both bars in both directions.",
        "Cut or fold along the frame and lay letter on letter, cross on cross.",
        "Tape the sheets from the middle outward on a flat bench.",
        "Check the distance below with a tape before you cut any metal.",
        "The thick line is the cut line; cut along its middle.",
    ];

    private static readonly ImmutableArray<string> Cautions =
    [
        "Sheet edges and fresh cuts are razor sharp: gloves, and deburr first.",
        "Shears, rolls and brakes crush: keep hands clear, no loose sleeves.",
        "Grinding: face shield, hearing protection, guard on, no one in line.",
        "Welding: strip zinc coatings first; their fume is poisonous. Ventilate,",
        "shield eyes and skin, keep fire watch; thin sheet stays hot long.",
        "A changed vehicle may need approval before it goes on the road.",
        "Local codes and licensed practice decide.",
    ];

    /// <summary>Draws the page.</summary>
    /// <param name="drawing">The whole drawing.</param>
    /// <param name="plan">Its tiles.</param>
    /// <param name="tapeMarks">The two far marks.</param>
    /// <param name="tape">What the tape must show between them, in words.</param>
    /// <param name="facts">Name and value, in order.</param>
    /// <param name="words">Names of piece, job and sheet.</param>
    public static Page Draw(
        Drawing drawing, TilePlan plan, ImmutableArray<OverlapMark> tapeMarks, string tape, ImmutableArray<(string Name, string Value)> facts, TileWords words)
    {
        double margin = plan.Paper.Margin, left = margin + 2, right = plan.Width - margin - 2, top = plan.Height - margin - 2;
        var parts = new List<PagePart>
        {
            new PageText(words.Piece, new Vec2(left, top - Title), Title),
            new PageText($"{words.Job}   {words.Sheet}   OUTSIDE FACE UP", new Vec2(left, top - Title - 5.5), Head),
        };
        double bodyTop = top - Title - 10;
        // The words take the foot of an upright page and the right of a level one; the picture takes the rest.
        double wordsHeight = (Math.Max(facts.Length, HowTo.Length + Cautions.Length + 3) + 2) * Line;
        Box picture = plan.IsLandscape
            ? new Box(new Vec2(left, margin + 2), new Vec2(left + 0.5 * (right - left), bodyTop))
            : new Box(new Vec2(left, margin + wordsHeight + 8), new Vec2(right, bodyTop));
        parts.AddRange(TileMap.Draw(plan, drawing.Strokes.First(s => s.Role == Role.Cut).Points, picture, null, labelled: true));
        parts.AddRange(Marks(plan, tapeMarks, picture));
        Vec2 words0 = plan.IsLandscape ? new Vec2(picture.Max.X + 6, bodyTop) : new Vec2(left, picture.Min.Y - 6);
        parts.AddRange(plan.IsLandscape ? InOneColumn(words0, tape, facts) : InTwoColumns(words0, left + 0.47 * (right - left), tape, facts));
        return Page.Of(plan.Width, plan.Height, parts);
    }

    private static IEnumerable<PagePart> InTwoColumns(Vec2 at, double second, string tape, ImmutableArray<(string Name, string Value)> facts) =>
    [
        .. Facts(at, facts),
        .. Paragraphs(new Vec2(second, at.Y), tape),
    ];

    private static IEnumerable<PagePart> InOneColumn(Vec2 at, string tape, ImmutableArray<(string Name, string Value)> facts) =>
    [
        .. Facts(at, facts),
        .. Paragraphs(at - new Vec2(0, (facts.Length + 2) * Line), tape),
    ];

    private static IEnumerable<PagePart> Facts(Vec2 at, ImmutableArray<(string Name, string Value)> facts)
    {
        yield return new PageText("The piece", at, Head);
        foreach ((string name, string value) in facts)
        {
            at -= new Vec2(0, Line);
            yield return new PageText(name, at, Body);
            yield return new PageText(value, at + new Vec2(30, 0), Body);
        }
    }

    private static IEnumerable<PagePart> Paragraphs(Vec2 at, string tape)
    {
        yield return new PageText("Putting the sheets together", at, Head);
        int number = 0;
        foreach (string line in HowTo)
        {
            at -= new Vec2(0, Line);
            yield return new PageText(string.Create(CultureInfo.InvariantCulture, $"{++number}  {line}"), at, Body);
        }
        at -= new Vec2(0, 1.2 * Line);
        yield return new PageText(tape, at, Head);
        at -= new Vec2(0, 1.6 * Line);
        yield return new PageText("Take care", at, Head);
        foreach (string line in Cautions)
        {
            at -= new Vec2(0, Line);
            yield return new PageText(line, at, Body);
        }
    }

    private static IEnumerable<PagePart> Marks(TilePlan plan, ImmutableArray<OverlapMark> marks, Box room)
    {
        Box all = Box.Around(plan.Tiles.SelectMany(t => new[] { t.Window.Min, t.Window.Max }));
        double scale = Math.Min(room.Width / all.Width, room.Height / all.Height);
        foreach (OverlapMark mark in marks)
        {
            Vec2 at = room.Centre + scale * (mark.At - all.Centre);
            yield return new PageLine(Pen.Narrow, [at - new Vec2(2, 0), at + new Vec2(2, 0)]);
            yield return new PageLine(Pen.Narrow, [at - new Vec2(0, 2), at + new Vec2(0, 2)]);
            yield return new PageText(mark.Letter, at + new Vec2(2.4, 0.6), Body, Halo: true);
        }
        if (marks.Length == 2)
            yield return new PageLine(Pen.Chain, [.. marks.Select(m => room.Centre + scale * (m.At - all.Centre))]);
    }
}

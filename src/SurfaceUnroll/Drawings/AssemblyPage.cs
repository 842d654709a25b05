using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Drawings;

/// <summary>The first page: how the sheets go together, what the tape must show, the facts of the piece and the cautions.</summary>
internal static class AssemblyPage
{
    // Cap heights, mm.
    private const double Title = 5, Head = 3, Body = 2.2;

    // White between the edge of the printable area and the words, between columns, and between parts of a column, mm.
    private const double Inset = 2, Gutter = 7, Break = 2.5;

    // Words smaller than this part of their full size are for a page of their own.
    private const double LeastSize = 0.8;

    private static readonly ImmutableArray<string> HowTo =
    [
        "Print every page at 100 % (“actual size”), never “fit to page”.",
        "On each sheet hold a rule against both bars in both directions.",
        "Trim along the frame where sheets meet; lay cross on cross where the letters are the same.",
        "Tape the sheets from the middle outward on a flat bench.",
        "Measure from mark to mark as told below before you cut any metal.",
        "The thick line is the cut line; cut along its middle.",
    ];

    /// <summary>Draws the page.</summary>
    /// <param name="drawing">The whole drawing.</param>
    /// <param name="plan">Its tiles.</param>
    /// <param name="tapeMarks">The two far marks, or none.</param>
    /// <param name="tape">What the tape must show between them, in words.</param>
    /// <param name="facts">Name and value, in order.</param>
    /// <param name="cautions">All cautions that stand on this page.</param>
    /// <param name="words">Names of piece, job and sheet.</param>
    public static Page Draw(
        Drawing drawing, TilePlan plan, ImmutableArray<OverlapMark> tapeMarks, string tape, ImmutableArray<(string Name, string Value)> facts,
        ImmutableArray<string> cautions, TileWords words)
    {
        Box area = AreaOf(plan);
        TextColumn heading = Heading(area, words);
        double top = area.Max.Y - heading.Height;
        (Box picture, ImmutableArray<PageText> text, _) = Arrange(plan, area, top, tape, facts, cautions);
        List<PagePart> parts =
        [
            .. heading.At(new Vec2(area.Min.X, area.Max.Y)),
            .. TileMap.Labelled(plan, drawing.Strokes.First(s => s.Role == Role.Cut).Points, picture),
            .. TileMap.Inner(plan, drawing, picture),
            .. Marks(plan, tapeMarks, picture),
            .. text,
        ];
        return Page.Of(plan.Width, plan.Height, parts);
    }

    /// <summary>True if the words can be set in letters that are read at arm's length.</summary>
    public static bool Holds(TilePlan plan, string tape, ImmutableArray<(string Name, string Value)> facts, ImmutableArray<string> cautions, TileWords words)
    {
        Box area = AreaOf(plan);
        return Arrange(plan, area, area.Max.Y - Heading(area, words).Height, tape, facts, cautions).Size >= LeastSize;
    }

    private static Box AreaOf(TilePlan plan)
    {
        double inset = plan.Paper.Margin + Inset;
        return new Box(new Vec2(inset, inset), new Vec2(plan.Width - inset, plan.Height - inset));
    }

    private static TextColumn Heading(Box area, TileWords words)
    {
        var heading = new TextColumn(area.Width);
        heading.Add(words.Piece, Title);
        heading.Add($"{words.Job}   {words.Sheet}   OUTSIDE FACE UP", Head);
        heading.Skip(Break);
        return heading;
    }

    private static (Box Picture, ImmutableArray<PageText> Text, double Size) Arrange(
        TilePlan plan, Box area, double top, string tape, ImmutableArray<(string Name, string Value)> facts, ImmutableArray<string> cautions) =>
        plan.IsLandscape ? BesideWords(area, top, tape, facts, cautions) : AboveWords(area, top, tape, facts, cautions);

    // On an upright page the words take the foot, in two columns.
    private static (Box Picture, ImmutableArray<PageText> Text, double Size) AboveWords(
        Box area, double top, string tape, ImmutableArray<(string Name, string Value)> facts, ImmutableArray<string> cautions)
    {
        double half = 0.5 * (area.Width - Gutter);
        (TextColumn left, TextColumn right, double size) = Smaller(
            0.6 * (top - area.Min.Y), Math.Max,
            s => Piece(new TextColumn(half), s, tape, facts), s => Paragraphs(new TextColumn(half), s, cautions));
        double foot = area.Min.Y + Math.Max(left.Height, right.Height);
        var picture = new Box(new Vec2(area.Min.X, foot + Break), new Vec2(area.Max.X, top));
        return (picture, [.. left.At(new Vec2(area.Min.X, foot)), .. right.At(new Vec2(area.Min.X + half + Gutter, foot))], size);
    }

    // On a level page they stand to the right of the picture.
    private static (Box Picture, ImmutableArray<PageText> Text, double Size) BesideWords(
        Box area, double top, string tape, ImmutableArray<(string Name, string Value)> facts, ImmutableArray<string> cautions)
    {
        double width = 0.4 * area.Width, left = area.Max.X - width;
        (TextColumn above, TextColumn below, double size) = Smaller(
            top - area.Min.Y - Break, (a, b) => a + b,
            s => Piece(new TextColumn(width), s, tape, facts), s => Paragraphs(new TextColumn(width), s, cautions));
        var picture = new Box(area.Min, new Vec2(left - Gutter, top));
        return (picture, [.. above.At(new Vec2(left, top)), .. below.At(new Vec2(left, top - above.Height - Break))], size);
    }

    // Words at full size, or as much smaller as wide margins make them.
    private static (TextColumn First, TextColumn Second, double Size) Smaller(
        double room, Func<double, double, double> height, Func<double, TextColumn> first, Func<double, TextColumn> second)
    {
        (TextColumn, TextColumn, double) smallest = default;
        foreach (double size in new[] { 1, 0.9, 0.8, 0.7, 0.6, 0.5 })
        {
            (TextColumn a, TextColumn b) = (first(size), second(size));
            if (height(a.Height, b.Height) <= room) return (a, b, size);
            smallest = (a, b, 0);
        }
        return smallest;
    }

    private static TextColumn Piece(TextColumn column, double size, string tape, ImmutableArray<(string Name, string Value)> facts)
    {
        column.Add("The piece", size * Head);
        foreach ((string name, string value) in facts) column.AddNamed(name, value, size * Body, size * 31);
        column.Skip(size * Break);
        column.Add(tape, size * Head);
        return column;
    }

    private static TextColumn Paragraphs(TextColumn column, double size, ImmutableArray<string> cautions)
    {
        column.Add("Putting the sheets together", size * Head);
        for (int i = 0; i < HowTo.Length; i++) column.Add(HowTo[i], size * Body, (i + 1).ToString(CultureInfo.InvariantCulture), indent: size * 4);
        column.Skip(size * Break);
        column.Add("Take care", size * Head);
        foreach (string caution in cautions) column.Add(caution, size * Body, "–", indent: size * 4);
        return column;
    }

    private static IEnumerable<PagePart> Marks(TilePlan plan, ImmutableArray<OverlapMark> marks, Box room)
    {
        foreach (OverlapMark mark in marks)
        {
            Vec2 at = TileMap.PlaceOf(plan, room, mark.At);
            yield return new PageLine(Pen.Narrow, [at - new Vec2(2, 0), at + new Vec2(2, 0)]);
            yield return new PageLine(Pen.Narrow, [at - new Vec2(0, 2), at + new Vec2(0, 2)]);
            yield return new PageText(mark.Letter, at + new Vec2(1, 1), Body, Halo: true);
        }
        if (marks.Length == 2) yield return new PageLine(Pen.Chain, [.. marks.Select(m => TileMap.PlaceOf(plan, room, m.At))]);
    }
}

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

    /// <summary>How the sheets go together, step by step.</summary>
    public static ImmutableArray<string> HowTo { get; } =
    [
        "Print every page at 100 % (“actual size”), never “fit to page”.",
        "On each sheet hold a rule against both bars in both directions.",
        "Trim each sheet along its frame on the left and at the top where another meets it, and glue it over the ticked side of that one, cross on cross where the letters are the same.",
        "Work from the middle outward on a flat bench. The small crosses stand 50 mm apart over all sheets, and the numbers at the frame run on: lay a long row of sheets along a straight-edge by them.",
        "Measure from mark to mark as told below before you cut any metal.",
        "The thick line is the cut line; cut along its middle.",
    ];

    /// <summary>Draws the page.</summary>
    /// <param name="plan">The drawing and its tiles.</param>
    /// <param name="tapeMarks">Far marks in pairs, or none.</param>
    /// <param name="tape">What the tape must show between them, in words, a line each.</param>
    /// <param name="facts">Name and value, in order.</param>
    /// <param name="cautions">All cautions that stand on this page.</param>
    /// <param name="words">Names of piece, job and sheet.</param>
    public static Page Draw(
        TilePlan plan, ImmutableArray<OverlapMark> tapeMarks, ImmutableArray<string> tape, ImmutableArray<(string Name, string Value)> facts,
        ImmutableArray<string> cautions, TileWords words)
    {
        Box area = AreaOf(plan);
        TextColumn heading = Heading(area, words);
        double top = area.Max.Y - heading.Height;
        (Box picture, ImmutableArray<PageText> text, double size) = Arrange(plan, area, top, tape, facts, cautions);
        if (size == 0) (picture, text) = PictureAlone(area, top, tape);
        List<PagePart> parts =
        [
            .. heading.At(new Vec2(area.Min.X, area.Max.Y)),
            .. TileMap.Labelled(plan, plan.Drawing.Strokes.First(s => s.Role == Role.Cut).Points, picture),
            .. TileMap.Inner(plan, picture),
            .. Marks(plan, tapeMarks, picture),
            .. text,
        ];
        return Page.Of(SheetOf(plan).Width, SheetOf(plan).Height, parts);
    }

    /// <summary>True if the words can be set in letters that are read at arm's length.</summary>
    public static bool Holds(TilePlan plan, ImmutableArray<string> tape, ImmutableArray<(string Name, string Value)> facts, ImmutableArray<string> cautions, TileWords words) =>
        SizeOf(plan, tape, facts, cautions, words) >= LeastSize;

    /// <summary>True if the paper is so small, or its margins so wide, that only the picture and the tape's measures stand on the page.</summary>
    public static bool IsBare(TilePlan plan, ImmutableArray<string> tape, ImmutableArray<(string Name, string Value)> facts, ImmutableArray<string> cautions, TileWords words) =>
        SizeOf(plan, tape, facts, cautions, words) == 0;

    private static double SizeOf(TilePlan plan, ImmutableArray<string> tape, ImmutableArray<(string Name, string Value)> facts, ImmutableArray<string> cautions, TileWords words)
    {
        Box area = AreaOf(plan);
        return Arrange(plan, area, area.Max.Y - Heading(area, words).Height, tape, facts, cautions).Size;
    }

    private static (Box Picture, ImmutableArray<PageText> Text) PictureAlone(Box area, double top, ImmutableArray<string> tape)
    {
        var column = new TextColumn(area.Width);
        foreach (string line in tape) column.Add(line, Body);
        return (new Box(area.Min + new Vec2(0, column.Height + Break), new Vec2(area.Max.X, top)), [.. column.At(new Vec2(area.Min.X, area.Min.Y + column.Height))]);
    }

    // The picture is not to scale: it needs no correction for the printer.
    private static PrintSheet SheetOf(TilePlan plan) => PrintSheet.ForWords(plan.Paper, plan.IsLandscape);

    private static Box AreaOf(TilePlan plan) => SheetOf(plan).Area.Grow(-Inset);

    private static TextColumn Heading(Box area, TileWords words)
    {
        var heading = new TextColumn(area.Width);
        heading.Add(words.Piece, Title);
        heading.Add($"{words.Job}   {words.Sheet}   {words.Face}", Head);
        heading.Skip(Break);
        return heading;
    }

    private static (Box Picture, ImmutableArray<PageText> Text, double Size) Arrange(
        TilePlan plan, Box area, double top, ImmutableArray<string> tape, ImmutableArray<(string Name, string Value)> facts, ImmutableArray<string> cautions) =>
        SheetOf(plan).IsLandscape ? BesideWords(area, top, tape, facts, cautions) : AboveWords(area, top, tape, facts, cautions);

    // On an upright page the words take the foot, in two columns.
    private static (Box Picture, ImmutableArray<PageText> Text, double Size) AboveWords(
        Box area, double top, ImmutableArray<string> tape, ImmutableArray<(string Name, string Value)> facts, ImmutableArray<string> cautions)
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
        Box area, double top, ImmutableArray<string> tape, ImmutableArray<(string Name, string Value)> facts, ImmutableArray<string> cautions)
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

    private static TextColumn Piece(TextColumn column, double size, ImmutableArray<string> tape, ImmutableArray<(string Name, string Value)> facts)
    {
        column.Add("The piece", size * Head);
        foreach ((string name, string value) in facts) column.AddNamed(name, value, size * Body, size * 31);
        column.Skip(size * Break);
        foreach (string line in tape) column.Add(line, size * Head);
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
        for (int i = 0; i + 1 < marks.Length; i += 2) yield return new PageLine(Pen.Chain, [TileMap.PlaceOf(plan, room, marks[i].At), TileMap.PlaceOf(plan, room, marks[i + 1].At)]);
    }
}

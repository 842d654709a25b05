using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Drawings.ShopSheet;

/// <summary>A strip of a page that is not broken, the origin at its upper left corner.</summary>
/// <param name="Height">mm.</param>
/// <param name="Parts">What is drawn in it.</param>
internal sealed record SheetRow(double Height, ImmutableArray<PagePart> Parts)
{
    /// <summary>A column of text as one strip.</summary>
    public static SheetRow Of(TextColumn column) => new(column.Height, [.. column.At(Vec2.Zero)]);

    /// <summary>The head of a page: a title, what it is of, and a line below.</summary>
    public static SheetRow Heading(string title, string subject, double width)
    {
        var column = new TextColumn(width);
        column.Add(title, SheetSizes.Title);
        column.Add(subject, SheetSizes.Sub);
        column.Skip(1);
        return new SheetRow(column.Height + 2, [.. column.At(Vec2.Zero), new PageLine(Pen.Wide, [new Vec2(0, -column.Height), new Vec2(width, -column.Height)])]);
    }

    /// <summary>The strip, its upper left corner standing at a place of the page.</summary>
    public IEnumerable<PagePart> At(Vec2 corner) => Parts.Select<PagePart, PagePart>(part => part switch
    {
        PageText text => text with { At = corner + text.At },
        PageLine line => line with { Points = [.. line.Points.Select(p => corner + p)] },
        PageFill fill => fill with { Points = [.. fill.Points.Select(p => corner + p)], More = [.. fill.More.Select(loop => loop.Select(p => corner + p).ToImmutableArray())] },
        _ => part,
    });
}

/// <summary>Strips that belong together under a title. Where they go on overleaf or in the next column, title and head stand again.</summary>
/// <param name="Title">In one line.</param>
/// <param name="Lead">Stands once, under the first title.</param>
/// <param name="Head">Stands under each title.</param>
/// <param name="Rows">May be parted from each other.</param>
/// <param name="Width">mm.</param>
internal sealed record SheetBlock(string Title, ImmutableArray<SheetRow> Lead, ImmutableArray<SheetRow> Head, ImmutableArray<SheetRow> Rows, double Width)
{
    /// <summary>The least width at which its letters keep their size, mm; 0 where words are broken to any width.</summary>
    public double Needed { get; init; }

    /// <summary>Height of all of it, with the title once, mm.</summary>
    public double Height => Begun(false).Concat(Rows).Sum(r => r.Height);

    /// <summary>What stands before the rows.</summary>
    /// <param name="goesOn">The block goes on from another page or column.</param>
    public IEnumerable<SheetRow> Begun(bool goesOn)
    {
        var title = new TextColumn(Width);
        title.Add(goesOn ? Title + ", continued" : Title, SheetSizes.Head);
        return [SheetRow.Of(title), .. goesOn ? [] : Lead, .. Head];
    }

    /// <summary>A block of paragraphs, each with a label before it.</summary>
    public static SheetBlock Paragraphs(string title, double width, double indent, IEnumerable<(string Label, string Text)> paragraphs) =>
        new(title, [], [], [.. paragraphs.Select(p => Paragraph(p.Text, width, p.Label, indent))], width);

    /// <summary>A block of names with what there is to say of each.</summary>
    public static SheetBlock Facts(string title, double width, double indent, IEnumerable<(string Name, string Value)> facts) =>
        new(title, [], [], [.. facts.Select(f => Named(f.Name, f.Value, width, indent))], width);

    /// <summary>One paragraph as a strip.</summary>
    public static SheetRow Paragraph(string text, double width, string label = "", double indent = 0)
    {
        var column = new TextColumn(width);
        column.Add(text, SheetSizes.Body, label, indent);
        return SheetRow.Of(column);
    }

    private static SheetRow Named(string name, string value, double width, double indent)
    {
        var column = new TextColumn(width);
        column.AddNamed(name, value, SheetSizes.Body, indent);
        return SheetRow.Of(column);
    }
}

/// <summary>Sizes on a shop sheet, mm. It hangs on a wall: no letter has a cap height of less than 2.2 mm.</summary>
internal static class SheetSizes
{
    /// <summary>Cap heights.</summary>
    public const double Title = 6, Sub = 3, Head = 3.2, Body = 2.3, Letter = 3.6, Small = 2.2;

    /// <summary>White between the printable area and the words, between columns, and below a block.</summary>
    public const double Inset = 1, Gutter = 7, Break = 3;
}

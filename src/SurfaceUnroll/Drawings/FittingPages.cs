using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Drawings;

/// <summary>Pages for what the first page has no room for: bends, openings, allowances and joints of a piece, and cautions for them; on small paper all words. A long list goes on overleaf.</summary>
internal static class FittingPages
{
    // Cap heights, mm.
    private const double Title = 5, Head = 3, Body = 2.2;

    // White between the edge of the printable area and the words, between parts of a page, and room for a name, mm.
    private const double Inset = 2, Break = 3, Indent = 34;

    /// <summary>Draws the pages.</summary>
    /// <param name="sheet">Paper.</param>
    /// <param name="subject">What the pages are about, after the name of the piece.</param>
    /// <param name="facts">Name and value, in order.</param>
    /// <param name="steps">How the sheets go together; may be empty.</param>
    /// <param name="cautions">Cautions; may be empty.</param>
    /// <param name="words">Names of piece, job and sheet.</param>
    public static ImmutableArray<Page> Draw(
        PrintSheet sheet, string subject, ImmutableArray<(string Name, string Value)> facts, ImmutableArray<string> steps, ImmutableArray<string> cautions, TileWords words)
    {
        Box area = sheet.Area.Grow(-Inset);
        var pages = ImmutableArray.CreateBuilder<Page>();
        TextColumn column = Heading(area, subject, words, goesOn: false);
        bool empty = true;
        foreach (Action<TextColumn> add in Paragraphs(facts, steps, cautions))
        {
            var alone = new TextColumn(area.Width);
            add(alone);
            if (!empty && column.Height + alone.Height > area.Height)
            {
                pages.Add(PageOf(sheet, area, column));
                column = Heading(area, subject, words, goesOn: true);
            }
            add(column);
            empty = false;
        }
        pages.Add(PageOf(sheet, area, column));
        return pages.ToImmutable();
    }

    private static TextColumn Heading(Box area, string subject, TileWords words, bool goesOn)
    {
        var column = new TextColumn(area.Width);
        column.Add($"{words.Piece}: {subject}{(goesOn ? ", continued" : "")}", Title);
        column.Add($"{words.Job}   {words.Sheet}   {words.Face}", Head);
        column.Skip(Break);
        return column;
    }

    private static IEnumerable<Action<TextColumn>> Paragraphs(ImmutableArray<(string Name, string Value)> facts, ImmutableArray<string> steps, ImmutableArray<string> cautions)
    {
        foreach ((string name, string value) in facts) yield return column => column.AddNamed(name, value, Body, Indent);
        foreach ((string title, ImmutableArray<string> list) in new[] { ("Putting the sheets together", steps), ("Take care", cautions) })
            for (int i = 0; i < list.Length; i++)
            {
                (string text, bool first) = (list[i], i == 0);
                yield return column =>
                {
                    if (first) column.Skip(Break);
                    if (first) column.Add(title, Head);
                    column.Add(text, Body, "–", indent: 4);
                };
            }
    }

    private static Page PageOf(PrintSheet sheet, Box area, TextColumn column) =>
        Page.Of(sheet.Width, sheet.Height, [.. column.At(new Vec2(area.Min.X, area.Max.Y))]);
}

using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Drawings;

/// <summary>Pages for what the first page has no room for: bends, openings, allowances and joints of a piece, and cautions for them. A long list goes on overleaf.</summary>
internal static class FittingPages
{
    // Cap heights, mm.
    private const double Title = 5, Head = 3, Body = 2.2;

    // White between the edge of the printable area and the words, between parts of a page, and room for a name, mm.
    private const double Inset = 2, Break = 3, Indent = 34;

    /// <summary>Draws the pages.</summary>
    /// <param name="plan">For paper and margin.</param>
    /// <param name="facts">Name and value, in order.</param>
    /// <param name="cautions">Cautions; may be empty.</param>
    /// <param name="words">Names of piece, job and sheet.</param>
    public static ImmutableArray<Page> Draw(TilePlan plan, ImmutableArray<(string Name, string Value)> facts, ImmutableArray<string> cautions, TileWords words)
    {
        double inset = plan.Paper.Margin + Inset;
        var area = new Box(new Vec2(inset, inset), new Vec2(plan.Width - inset, plan.Height - inset));
        var pages = ImmutableArray.CreateBuilder<Page>();
        TextColumn column = Heading(area, words, goesOn: false);
        bool empty = true;
        foreach (Action<TextColumn> add in Paragraphs(facts, cautions))
        {
            var alone = new TextColumn(area.Width);
            add(alone);
            if (!empty && column.Height + alone.Height > area.Height)
            {
                pages.Add(PageOf(plan, area, column));
                column = Heading(area, words, goesOn: true);
            }
            add(column);
            empty = false;
        }
        pages.Add(PageOf(plan, area, column));
        return pages.ToImmutable();
    }

    private static TextColumn Heading(Box area, TileWords words, bool goesOn)
    {
        var column = new TextColumn(area.Width);
        column.Add($"{words.Piece}: bends and joints{(goesOn ? ", continued" : "")}", Title);
        column.Add($"{words.Job}   {words.Sheet}   OUTSIDE FACE UP", Head);
        column.Skip(Break);
        return column;
    }

    private static IEnumerable<Action<TextColumn>> Paragraphs(ImmutableArray<(string Name, string Value)> facts, ImmutableArray<string> cautions)
    {
        foreach ((string name, string value) in facts) yield return column => column.AddNamed(name, value, Body, Indent);
        for (int i = 0; i < cautions.Length; i++)
        {
            (string caution, bool first) = (cautions[i], i == 0);
            yield return column =>
            {
                if (first) column.Skip(Break);
                if (first) column.Add("Take care", Head);
                column.Add(caution, Body, "–", indent: 4);
            };
        }
    }

    private static Page PageOf(TilePlan plan, Box area, TextColumn column) =>
        Page.Of(plan.Width, plan.Height, [.. column.At(new Vec2(area.Min.X, area.Max.Y))]);
}

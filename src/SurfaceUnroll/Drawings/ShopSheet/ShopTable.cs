using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Drawings.ShopSheet;

/// <summary>Sets a table.</summary>
internal static class ShopTable
{
    // White between columns, the narrowest that a column of words is broken to, mm; from one line to the next, in cap heights.
    private const double LeastGap = 2.8, MostGap = 9, LeastWords = 22, Leading = 1.75;

    // Height of a row of one line, and from its upper rule to the letters, in cap heights.
    private const double Row1 = 1.8, Above = 0.3;

    /// <summary>The table as a block whose rows may be parted.</summary>
    /// <param name="title">Its title.</param>
    /// <param name="lead">What is said of all rows.</param>
    /// <param name="columns">At least one.</param>
    /// <param name="rows">As many entries each as there are columns.</param>
    /// <param name="width">mm.</param>
    public static SheetBlock Of(string title, ImmutableArray<string> lead, ImmutableArray<TableColumn> columns, ImmutableArray<ImmutableArray<string>> rows, double width)
    {
        bool words = columns[^1].Kind == ColumnKind.Words;
        int counted = words ? columns.Length - 1 : columns.Length;
        double body = SheetSizes.Body;
        double[] Widths() => [.. Enumerable.Range(0, counted).Select(c => rows.Select(r => r[c]).Concat(columns[c].Head.Split('\n')).Max(t => PageTextWidth.Of(t, body)))];
        double Least() => Widths().Sum() + (columns.Length - 1) * LeastGap + (words ? LeastWords : 0);
        // On paper much smaller than is meant for a wall the letters give way before the table does.
        double needed = Least();
        if (needed > width) body *= width / needed;
        double[] widths = Widths();
        double wanted = words ? rows.Select(r => r[^1]).Append(columns[^1].Head).Max(t => PageTextWidth.Of(t, body)) : 0;
        double gap = Math.Clamp((width - widths.Sum() - wanted) / Math.Max(1, columns.Length - 1), LeastGap, MostGap);
        double[] starts = new double[columns.Length];
        for (int c = 1; c < columns.Length; c++) starts[c] = starts[c - 1] + widths[c - 1] + gap;
        double end = words ? width : starts[^1] + widths[^1];

        PageText Entry(string text, int c, double y) => columns[c].Kind == ColumnKind.Right
            ? new PageText(text, new Vec2(starts[c] + widths[c], y), body, Anchor: Anchor.Right)
            : new PageText(text, new Vec2(starts[c], y), body);

        SheetRow Head()
        {
            int lines = columns.Max(c => c.Head.Split('\n').Length);
            double height = lines * Leading * body;
            return new SheetRow(
                height + 0.3 * body,
                [
                    .. columns.SelectMany((column, c) => column.Head.Split('\n').Reverse().Select((text, up) => Entry(text, c, -height + (0.75 + up * Leading) * body))),
                    new PageLine(Pen.Narrow, [new Vec2(0, -height), new Vec2(end, -height)]),
                ]);
        }

        SheetRow Row(ImmutableArray<string> entries)
        {
            var note = new TextColumn(words ? width - starts[^1] : width);
            if (words && entries[^1].Length > 0) note.Add(entries[^1], body);
            double height = Math.Max(note.Height + 0.3 * body, Row1 * body);
            return new SheetRow(
                height,
                [
                    .. Enumerable.Range(0, counted).Where(c => entries[c].Length > 0).Select(c => Entry(entries[c], c, -(1 + Above) * body)),
                    .. note.At(new Vec2(starts[^1], -Above * body)),
                    new PageLine(Pen.Fine, [new Vec2(0, -height), new Vec2(end, -height)]),
                ]);
        }

        return new SheetBlock(title, [.. lead.Select(text => SheetBlock.Paragraph(text, width))], [Head()], [.. rows.Select(Row)], width) { Needed = needed };
    }

    /// <summary>Words as a table.</summary>
    public static SheetBlock Of(ShopWords words, double width) => Of(words.Title, words.Lead, words.Columns, words.Rows, width);
}

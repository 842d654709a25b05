using Spectre.Console;

namespace SurfaceUnroll.Cli;

/// <summary>A table of several columns: framed in a terminal, else padded with spaces.</summary>
internal static class TextTable
{
    /// <summary>Writes headings and rows.</summary>
    /// <param name="screen">Where to.</param>
    /// <param name="headings">One for each column.</param>
    /// <param name="rows">As many cells in each.</param>
    public static void Write(Screen screen, string[] headings, IReadOnlyCollection<string[]> rows)
    {
        if (screen.Rich)
        {
            var table = new Table { Border = TableBorder.Rounded };
            foreach (string heading in headings) table.AddColumn(new TableColumn($"[bold]{Markup.Escape(heading)}[/]"));
            foreach (string[] row in rows) table.AddRow([.. row.Select(Markup.Escape)]);
            screen.Terminal.Write(table);
            return;
        }
        int[] widths = [.. headings.Select((heading, i) => rows.Select(r => r[i].Length).Append(heading.Length).Max())];
        foreach (string[] row in rows.Prepend(headings))
            screen.Out.WriteLine(string.Join("  ", row.Select((cell, i) => cell.PadRight(widths[i]))).TrimEnd());
    }
}

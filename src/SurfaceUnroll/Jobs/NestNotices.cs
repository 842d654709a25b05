using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Patterns.Nesting;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Jobs;

/// <summary>What does not fit on the sheets of the stock.</summary>
internal static class NestNotices
{
    /// <summary>Warnings of a layout.</summary>
    /// <param name="job">Stock and units.</param>
    /// <param name="names">Of the pieces, by their numbers.</param>
    /// <param name="nest">Null without stock.</param>
    public static IEnumerable<Notice> Of(Job job, ImmutableArray<string> names, NestLayout? nest)
    {
        if (nest is null) yield break;
        string stock = job.Stock is [var only] ? $"a sheet of {Size(job, only)}" : "any sheet of the stock";
        foreach (int piece in nest.TooLarge)
            yield return new Notice("stock-too-small", Severity.Warning, "stock", $"“{names[piece]}” does not fit on {stock} as it may be turned.", "Split the panel into more pieces, take larger sheets, or let it be turned (\"nest\": { \"turns\": \"any\" }) if its grain does not matter.");
        foreach ((StockSheet sheet, int count) in nest.Taken)
        {
            // A size may be listed more than once.
            int? have = job.Stock.Where(s => s == sheet).Sum(s => s.Count);
            if (sheet.Count is null || count <= have) continue;
            yield return new Notice("stock-too-few", Severity.Warning, "stock", $"The pieces take {Number(count)} {(count == 1 ? "sheet" : "sheets")} of {Size(job, sheet)}, and there {(have == 1 ? "is" : "are")} {Number(have ?? 0)}.", "Get more sheets, or narrow the gap and let pieces be turned (\"nest\").");
        }
    }

    private static string Number(int n) => n.ToString(CultureInfo.InvariantCulture);

    private static string Size(Job job, StockSheet sheet) => $"{ShopLength.Print(sheet.Length, job.Units, 1)} × {ShopLength.Print(sheet.Width, job.Units, 1)}";
}

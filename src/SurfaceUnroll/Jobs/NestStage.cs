using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Patterns.Nesting;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Jobs;

/// <summary>Lays all pieces out on the sheets of the stock, and says what does not fit.</summary>
internal static class NestStage
{
    // At a sharp tip a cut runs on by three half kerfs and turns there at its ends, one more to the side: √10 of them at most. It is half a kerf wide to either side: (√10 + 1) / 2.
    private const double Kerfs = 2.1;

    /// <summary>The layout and its notices.</summary>
    /// <param name="job">Stock, gap, turns and kerf.</param>
    /// <param name="panels">All pieces.</param>
    /// <returns>Null without stock.</returns>
    public static (NestLayout? Nest, ImmutableArray<Notice> Notices) Of(Job job, ImmutableArray<PanelDevelopment> panels)
    {
        if (job.Stock.IsEmpty) return (null, []);
        NestSpec nest = job.Nest with { Gap = GapOf(job) };
        ImmutableArray<NestPiece> pieces = [.. panels.Select(p => Piece(p, nest))];
        NestLayout layout = Nester.OnSheets(pieces, job.Stock, nest);
        return (layout, [.. Wider(job, nest), .. layout.TooLarge.Select(i => TooLarge(job, panels[i].Spec.Name, NestRelief.Of(pieces[i], job.Stock, nest))), .. TooFew(job, layout)]);
    }

    /// <summary>The gap that is kept, mm: the job's, but never so little that the cut of one piece reaches into the next.</summary>
    public static double GapOf(Job job) => Math.Max(job.Nest.Gap, Kerfs * job.Cutting.Kerf);

    private static NestPiece Piece(PanelDevelopment panel, NestSpec nest) => new(panel.Cut, !nest.GrainIsFree && panel.Plan is { Grain: { Matters: true } grain } ? grain.Along : null);

    private static IEnumerable<Notice> Wider(Job job, NestSpec nest)
    {
        if (nest.Gap > job.Nest.Gap)
            yield return new Notice("nest-gap-kerf", Severity.Note, "nest.gap", $"With a kerf of {Mm(job, job.Cutting.Kerf)} the pieces are laid {Mm(job, nest.Gap)} apart instead of {Mm(job, job.Nest.Gap)}: at a sharp corner the cut runs on so far.", "Nothing to do if that is right. To be rid of this note, ask for a gap of 2.1 times the kerf or more.");
    }

    private static Notice TooLarge(Job job, string name, NestRelief? relief)
    {
        string stock = job.Stock is [var only] ? $"a sheet of {Size(job, only)}" : "any sheet of the stock";
        string size = "Make it of more pieces, or take larger sheets";
        (string why, string mend) = relief switch
        {
            null => ($"does not fit on {stock}, however it is turned.", $"{size}."),
            { FreeGrain: false } => ($"does not fit on {stock} as it may be turned; at another angle it does.", "Let pieces be turned by any angle (\"nest\": { \"turns\": \"any\" }), or take larger sheets."),
            { AnyTurn: var any, OtherGrain: var other } => (
                $"does not fit on {stock} with its grain along that of the sheet; turned against the grain it does.",
                $"{size}{(other ? ", or sheets whose grain runs the other way" : "")}. Or let the grain go (\"nest\": {{ \"grain\": \"free\"{(any ? ", \"turns\": \"any\"" : "")} }}) and bend it with care: along the grain metal cracks sooner."),
        };
        return new Notice("stock-too-small", Severity.Warning, "stock", $"“{name}” {why}", mend);
    }

    private static IEnumerable<Notice> TooFew(Job job, NestLayout nest)
    {
        foreach ((StockSheet sheet, int count) in nest.Taken)
        {
            // A size may be listed more than once.
            int? have = job.Stock.Where(s => s == sheet).Sum(s => s.Count);
            if (sheet.Count is null || count <= have) continue;
            yield return new Notice("stock-too-few", Severity.Warning, "stock", $"The pieces take {Number(count)} {(count == 1 ? "sheet" : "sheets")} of {Size(job, sheet)}, and there {(have == 1 ? "is" : "are")} {Number(have ?? 0)}.", "Get more sheets, or narrow the gap and let pieces be turned (\"nest\").");
        }
    }

    private static string Number(int n) => n.ToString(CultureInfo.InvariantCulture);

    private static string Mm(Job job, double length) => ShopLength.Print(length, job.Units, 1);

    private static string Size(Job job, StockSheet sheet) => $"{ShopLength.Print(sheet.Length, job.Units, 1)} × {ShopLength.Print(sheet.Width, job.Units, 1)}";
}

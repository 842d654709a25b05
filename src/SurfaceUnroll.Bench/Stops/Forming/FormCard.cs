using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Drawings.ShopSheet;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Bench.Stops.Forming;

/// <summary>A step of the work.</summary>
/// <param name="Key">Its words with those of its card, by which its tick is remembered.</param>
/// <param name="Cells">What is to be read off, in the order of the card's heads.</param>
/// <param name="IsDone">There is something to do, so that it can be ticked off.</param>
public sealed record FormStep(string Key, ImmutableArray<string> Cells, bool IsDone);

/// <summary>Steps that belong together, as a card.</summary>
/// <param name="Id">For the page, of letters, digits and dashes.</param>
/// <param name="Title">Over it.</param>
/// <param name="Lead">What holds for all steps.</param>
/// <param name="Heads">What each cell is; empty for steps that are one sentence.</param>
/// <param name="Steps">In the order of the work.</param>
public sealed record FormCard(string Id, string Title, ImmutableArray<string> Lead, ImmutableArray<string> Heads, ImmutableArray<FormStep> Steps)
{
    /// <summary>The steps that can be ticked off.</summary>
    public IEnumerable<string> Keys => Steps.Where(s => s.IsDone).Select(s => s.Key);

    /// <summary>The cards of one piece, in the order of the work.</summary>
    public static ImmutableArray<FormCard> Of(PanelDevelopment panel, Job job)
    {
        if (panel.Plan is not { } plan) return [];
        string piece = panel.Spec.Name;
        return
        [
            .. new[]
            {
                Of(piece, "bends", PieceWords.Bends(panel, plan, job.Units)), Of(piece, "rolls", PieceWords.Rolls(panel, plan, job.Units)),
                Of(piece, "stretch", PieceWords.Stretch(plan)), Of(piece, "tapes", PieceWords.Tapes(plan, job.Units)),
            }.OfType<FormCard>(),
        ];
    }

    /// <summary>The order of work of the whole job.</summary>
    public static FormCard Order(Development development) =>
        new("order", WorkWords.OrderTitle, [], [], InOrder("", "order", [.. WorkWords.Order(development).Select(step => ImmutableArray.Create(step))]));

    /// <summary>The tacks of a joint in the order in which they are set, or the lengths between them in the order in which they are welded.</summary>
    /// <param name="plan">Of the joint.</param>
    /// <param name="along">Its tacks along the joint.</param>
    /// <param name="welds">The welds.</param>
    public static FormCard Tacks(TackPlan plan, ImmutableArray<TackWords> along, bool welds)
    {
        // The first tack of a closed joint stands at its end again, and is set once.
        ImmutableArray<ImmutableArray<string>> steps = welds
            ? [.. Enumerable.Range(0, along.Length).Where(i => along[i].Weld is not null).OrderBy(i => along[i].Weld).Select(i => ImmutableArray.Create(Count(along[i].Weld!.Value), $"{along[i + 1].At} back to {along[i].At}"))]
            : [.. along.DistinctBy(t => t.Number).OrderBy(t => t.Number).Select(t => ImmutableArray.Create(Count(t.Number), t.At))];
        string kind = welds ? "weld" : "tack";
        return new FormCard($"joint-{Slug.Of(plan.Joint)}-{kind}", welds ? "Weld in this order" : "Tack in this order", [], [kind, welds ? "from" : "at"], InOrder($"joint {plan.Joint}", kind, steps));
    }

    private static FormCard? Of(string piece, string kind, ShopWords? words) => words is null ? null : new FormCard(
        $"{Slug.Of(piece)}-{kind}", words.Title, words.Lead, [.. words.Columns.Select(c => c.Head.Replace('\n', ' '))], InOrder(piece, kind, words.Rows));

    // Two steps of the same words are told apart by a count.
    private static ImmutableArray<FormStep> InOrder(string owner, string kind, ImmutableArray<ImmutableArray<string>> rows)
    {
        var taken = new HashSet<string>(StringComparer.Ordinal);
        return
        [
            .. rows.Select(cells =>
            {
                string words = $"{owner} {kind}: {string.Join(" | ", cells)}".TrimStart(), key = words;
                for (int i = 2; !taken.Add(key); i++) key = $"{words} ({Count(i)})";
                // Nothing is done at lines that stay flat.
                return new FormStep(key, cells, kind != "rolls" || cells.Length < 2 || cells[1] != "–");
            }),
        ];
    }

    private static string Count(int n) => n.ToString(CultureInfo.InvariantCulture);
}

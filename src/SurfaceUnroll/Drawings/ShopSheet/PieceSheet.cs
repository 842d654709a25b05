using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;

namespace SurfaceUnroll.Drawings.ShopSheet;

/// <summary>The page of one piece for the wall: the part and the blank with their letters, the tables, the cautions. Long tables go on overleaf.</summary>
public static class PieceSheet
{
    // Heights that the pictures may have, mm: the most that takes the fewest pages.
    private static readonly ImmutableArray<double> Heights = [125, 110, 98, 88, 78, 70, 62, 56];

    // Above a picture for its words, and the least that a column of tape checks and cautions takes, mm.
    private const double Caption = 6, LeastBeside = 60;

    // Where the tables stand: beside the checks, with the cautions under either or parted between both, or above them all.
    private enum Arrangement
    {
        CautionsRight,
        CautionsLeft,
        CautionsParted,
        TablesAbove,
    }

    // How the room of the pictures may be parted, first for the part, then for the blank.
    private static readonly ImmutableArray<double> Shares = [0.5, 0.45, 0.55, 0.4, 0.6, 0.35, 0.65];
    private static readonly ImmutableArray<bool> Ways = [true, false];

    /// <summary>The pages; none if it is not known how the piece is formed.</summary>
    /// <param name="panel">The piece.</param>
    /// <param name="job">For names, units and paper.</param>
    /// <param name="joints">All joints of the job.</param>
    /// <param name="view">The formed piece.</param>
    public static ImmutableArray<Page> Of(PanelDevelopment panel, Job job, ImmutableArray<JointFit> joints, FormedView view)
    {
        if (panel.Plan is not { } plan) return [];
        (SheetFlow Flow, double Height, Arrangement Arrangement)? best = null;
        // How the page breaks goes by the height of the pictures alone: they are drawn once that is settled.
        foreach ((double height, Arrangement arrangement) in from height in Heights from arrangement in Enum.GetValues<Arrangement>() select (height, arrangement))
        {
            if (Draw(panel, plan, job, joints, _ => new SheetRow(height, []), arrangement) is { } flow && (best is null || flow.IsShorterThan(best.Value.Flow))) best = (flow, height, arrangement);
            if (best is { Flow.IsWhole: true }) break;
        }
        return Draw(panel, plan, job, joints, width => Pictures(panel, plan, job, view, width, best!.Value.Height), best!.Value.Arrangement)!.Pages;
    }

    // Null where the tables do not stand so.
    private static SheetFlow? Draw(
        PanelDevelopment panel, FormingPlan plan, Job job, ImmutableArray<JointFit> joints, Func<double, SheetRow> pictures, Arrangement arrangement)
    {
        var flow = new SheetFlow(job.Paper, (goesOn, width) => SheetRow.Heading(goesOn ? $"{panel.Spec.Name}, continued" : panel.Spec.Name, $"{job.Name}   {PatternDrawing.SheetText(job)}   OUTSIDE FACE UP", width));
        flow.Add(pictures(flow.Width));
        SheetBlock[] Tables(double width) => [.. new[] { PieceTables.Bends(panel, plan, job.Units, width), PieceTables.Rolls(panel, plan, job.Units, width) }.OfType<SheetBlock>()];
        SheetBlock[] Others(double width) =>
        [
            .. new[] { PieceTables.Tapes(plan, job.Units, width), PieceTables.Stretch(plan, width) }.OfType<SheetBlock>(),
            PieceTables.Blank(panel, plan, job, width),
            .. PieceTables.Errors(panel, job.Units, width) is { } errors ? [errors] : Array.Empty<SheetBlock>(),
        ];
        string[] cautions = [.. ShopCautions.Of(panel, JointWords.Of(panel, joints))];
        SheetBlock[] Care(double width, Range which) => cautions[which] is { Length: > 0 } some ? [SheetBlock.Paragraphs("Take care", width, 4, some.Select(c => ("–", c)))] : [];
        SheetBlock[] tables = Tables(flow.Width);
        double left = tables.Select(t => t.Needed).DefaultIfEmpty(0).Max(), right = Math.Max(LeastBeside, Others(flow.Half).Max(o => o.Needed)), spare = flow.Width - SheetSizes.Gutter - left - right;
        if (arrangement != Arrangement.TablesAbove)
        {
            if (tables.Length == 0 || spare < 0) return null;
            // Side by side; what both leave goes to both.
            double x = left + 0.5 * spare + SheetSizes.Gutter;
            SheetBlock[] Left(int first) => [.. Tables(x - SheetSizes.Gutter), .. Care(x - SheetSizes.Gutter, ..first)];
            SheetBlock[] Right(int first) => [.. Others(flow.Width - x), .. Care(flow.Width - x, first..)];
            int underLeft = arrangement switch
            {
                Arrangement.CautionsRight => 0,
                Arrangement.CautionsLeft => cautions.Length,
                _ => Enumerable.Range(0, cautions.Length + 1).MinBy(k => Math.Max(Left(k).Sum(b => b.Height), Right(k).Sum(b => b.Height))),
            };
            flow.AddBeside(Left(underLeft), Right(underLeft), x);
        }
        else
        {
            foreach (SheetBlock table in tables) flow.Add(table);
            flow.AddInColumns([.. Others(flow.Half), .. Care(flow.Half, ..)]);
        }
        return flow;
    }

    // Beside each other or one above the other, whichever shows the smaller of the two larger.
    private static SheetRow Pictures(PanelDevelopment panel, FormingPlan plan, Job job, FormedView view, double width, double height)
    {
        (Box Part, Box Blank) best = (from share in Shares
                                      from level in Ways
                                      let boxes = Parted(width, height, share, level)
                                      orderby Math.Round(Math.Min(FormedArt.ScaleIn(boxes.Part, view) * Size(view.Bounds), FlatArt.ScaleIn(boxes.Blank, panel) * Size(Box.Around(panel.Cut))), 1) descending
                                      select boxes).First();
        bool behind = plan.Marks.Any(m => view.Hides(m.Formed));
        return new SheetRow(
            height,
            [
                .. FormedArt.Draw(best.Part, view, panel, plan),
                .. FlatArt.Draw(best.Blank, panel, plan, job),
                Words(best.Part, $"Formed, from the {view.From}"),
                .. behind ? [Words(best.Part with { Max = new Vec2(best.Part.Max.X, best.Part.Min.Y) }, "In brackets: on the far side")] : Array.Empty<PageText>(),
                Words(best.Blank, "Flat, forward up, not to scale"),
            ]);
    }

    // What a picture of a scale is as a whole: a long one is not the smaller for being low.
    private static double Size(Box box) => Math.Sqrt(Math.Max(1, box.Width) * Math.Max(1, box.Height));

    private static PageText Words(Box box, string text) =>
        new(PageTextWidth.Fit(text, SheetSizes.Small, box.Width), new Vec2(box.Min.X, box.Max.Y + 0.4 * Caption), SheetSizes.Small);

    private static (Box Part, Box Blank) Parted(double width, double height, double share, bool level)
    {
        Box From(double x, double top, double wide, double high) => new(new Vec2(x, top - high), new Vec2(x + wide, top - Caption));
        double across = share * (width - SheetSizes.Gutter), down = share * height;
        return level
            ? (From(0, 0, across, height), From(across + SheetSizes.Gutter, 0, width - across - SheetSizes.Gutter, height))
            : (From(0, 0, width, down), From(0, -down, width, height - down));
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;

namespace SurfaceUnroll.Drawings.ShopSheet;

/// <summary>The page of one piece for the wall: the part and the blank with their letters, the tables, the cautions. Long tables go on overleaf.</summary>
public static class PieceSheet
{
    // Heights that the pictures may have, mm, the most first; the first that leaves room for all on one page is taken, else the ordinary one.
    private static readonly ImmutableArray<double> PictureHeights = [120, 105, 92, 80, 70, 60];
    private const double OrdinaryPicture = 92, Caption = 6;

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
        foreach (double height in PictureHeights)
        {
            ImmutableArray<Page> pages = Draw(panel, plan, job, joints, view, height);
            if (pages.Length == 1) return pages;
        }
        return Draw(panel, plan, job, joints, view, OrdinaryPicture);
    }

    private static ImmutableArray<Page> Draw(PanelDevelopment panel, FormingPlan plan, Job job, ImmutableArray<JointFit> joints, FormedView view, double picture)
    {
        var flow = new SheetFlow(job.Paper, (goesOn, width) => Heading(goesOn ? $"{panel.Spec.Name}, continued" : panel.Spec.Name, job, width));
        flow.Add(Pictures(panel, plan, view, flow.Width, picture));
        foreach (SheetBlock? table in new[] { PieceTables.Bends(panel, plan, job.Units, flow.Width), PieceTables.Rolls(panel, plan, job.Units, flow.Width) })
            if (table is not null) flow.Add(table);
        SheetBlock?[] beside =
        [
            PieceTables.Tapes(plan, job.Units, flow.Half), PieceTables.Stretch(panel, plan, job.Units, flow.Half), PieceTables.Blank(plan, job, flow.Half),
            SheetBlock.Paragraphs("Take care", flow.Half, 4, ShopCautions.Of(panel, JointWords.Of(panel, joints)).Select(c => ("–", c))),
        ];
        flow.AddInColumns([.. beside.OfType<SheetBlock>()]);
        return flow.Pages;
    }

    private static SheetRow Heading(string title, Job job, double width)
    {
        var column = new TextColumn(width);
        column.Add(title, SheetSizes.Title);
        column.Add($"{job.Name}   {PatternDrawing.SheetText(job)}   OUTSIDE FACE UP", SheetSizes.Sub);
        column.Skip(1);
        return new SheetRow(column.Height + 2, [.. column.At(Vec2.Zero), new PageLine(Pen.Wide, [new Vec2(0, -column.Height), new Vec2(width, -column.Height)])]);
    }

    // Beside each other or one above the other, whichever shows the smaller of the two larger.
    private static SheetRow Pictures(PanelDevelopment panel, FormingPlan plan, FormedView view, double width, double height)
    {
        (Box Part, Box Blank) best = (from share in Shares
                                      from level in Ways
                                      let boxes = Parted(width, height, share, level)
                                      orderby Math.Round(Math.Min(FormedArt.ScaleIn(boxes.Part, view), FlatArt.ScaleIn(boxes.Blank, panel)), 4) descending
                                      select boxes).First();
        return new SheetRow(
            height,
            [
                .. FormedArt.Draw(best.Part, view, panel, plan),
                .. FlatArt.Draw(best.Blank, panel, plan),
                Words(best.Part, $"Formed, seen from the {view.From}" + (plan.Marks.Any(m => view.Hides(m.Formed)) ? "; (a) lies behind" : "")),
                Words(best.Blank, "Flat, forward up, not to scale"),
            ]);
    }

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

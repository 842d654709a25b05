using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Drawings.ShopSheet;

/// <summary>A joint as a line with its tacks: above it in what order they are set, between them in what order the lengths are welded and which way, below it where they stand.</summary>
internal static class TackStrip
{
    private const double Number = 3, Tick = 1.4, Height = 16.5, Line = 6.2;

    /// <summary>The block of one joint.</summary>
    /// <summary>The block of one joint.</summary>
    public static SheetBlock Of(TackPlan plan, JointFit? joint, LengthUnit units, double width)
    {
        string lead = WorkWords.TackLead(plan, joint, units);
        return new SheetBlock(WorkWords.TackTitle(plan, units), [SheetBlock.Paragraph(lead, width)], [], [.. Rows([.. WorkWords.Along(plan, units)], width)], width);
    }

    private static IEnumerable<SheetRow> Rows(TackWords[] along, double width)
    {
        if (along.Length == 0) yield break;
        double cell = along.Max(t => PageTextWidth.Of(t.At, SheetSizes.Small)) + 2.5;
        int fit = Math.Max(2, (int)(width / cell)), rows = Math.Max(1, (along.Length - 1 + fit - 2) / (fit - 1)), each = (along.Length - 1 + rows - 1) / rows;
        // The last tack of a row is the first of the next: the length between them is drawn once.
        for (int from = 0; from == 0 || from < along.Length - 1; from += Math.Max(1, each))
            yield return Row(along[from..Math.Min(along.Length, from + each + 1)], cell, (width - cell) / Math.Max(1, each));
    }

    private static SheetRow Row(TackWords[] tacks, double cell, double step)
    {
        double X(int i) => 0.5 * cell + i * step;
        List<PagePart> parts = [];
        if (tacks.Length > 1) parts.Add(new PageLine(Pen.Narrow, [new Vec2(X(0), -Line), new Vec2(X(tacks.Length - 1), -Line)]));
        for (int i = 0; i < tacks.Length; i++)
        {
            parts.Add(new PageLine(Pen.Wide, [new Vec2(X(i), -Line - Tick), new Vec2(X(i), -Line + Tick)]));
            parts.Add(new PageText(SheetNumbers.Count(tacks[i].Number), new Vec2(X(i), -Line + Tick + 1), Number, Anchor: Anchor.Middle));
            parts.Add(new PageText(tacks[i].At, new Vec2(X(i), -Line - Tick - 1 - 2 * SheetSizes.Small - 1.6), SheetSizes.Small, Anchor: Anchor.Middle));
            if (i + 1 < tacks.Length && tacks[i].Weld is { } weld)
                parts.Add(new PageText(
                    $"←{SheetNumbers.Count(weld)}", new Vec2(X(i) + 0.5 * step, -Line - 1 - SheetSizes.Small), SheetSizes.Small, Anchor: Anchor.Middle));
        }
        return new SheetRow(Height, [.. parts]);
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Drawings.ShopSheet;

/// <summary>A joint as a line with its tacks: above it in what order they are set, between them in what order the lengths are welded and which way, below it where they stand.</summary>
internal static class TackStrip
{
    private const double Number = 3, Tick = 1.4, Height = 16.5, Line = 6.2;

    // Ends of a stitch lie on tacks; less than this apart they are one, mm.
    private const double SamePlace = 0.05;

    /// <summary>The block of one joint.</summary>
    public static SheetBlock Of(TackPlan plan, JointFit? joint, LengthUnit units, double width)
    {
        Tack[] along = [.. Along(plan)];
        string edge = joint is { Mates.IsEmpty: false } ? $", measured along {joint.Mates[0].Edge}" : "";
        string[] last = [.. plan.Tacks.GroupBy(t => t.Round).OrderBy(g => g.Key).Select(g => SheetNumbers.Count(g.Max(t => t.Number)))];
        string cool = last.Length > 1 ? $" Let the joint cool after {SheetNumbers.List(last[..^1])}." : "";
        string lead = $"No more than {ShopLength.Print(plan.Pitch, units)} apart{edge}.{cool}";
        return new SheetBlock($"Joint {plan.Joint}: tacks, {SheetNumbers.Unit(units)}", [SheetBlock.Paragraph(lead, width)], [], [.. Rows(along, plan.Stitches, units, width)], width);
    }

    // In the order along the joint. A closed one ends at its first tack, which stands there again.
    private static IEnumerable<Tack> Along(TackPlan plan)
    {
        Tack? first = null, before = null;
        foreach (Tack tack in plan.Tacks.OrderBy(t => t.Place))
        {
            if (before is not null && Between(before, tack, plan.Stitches) is null && Closing(before, first!, plan) is { } closing)
            {
                yield return closing;
                first = tack;
            }
            first ??= tack;
            before = tack;
            yield return tack;
        }
        if (before is not null && Closing(before, first!, plan) is { } end) yield return end;
    }

    // Where a length of weld runs on from the last tack of a run, the first one again at its end.
    private static Tack? Closing(Tack last, Tack first, TackPlan plan) =>
        plan.Stitches.FirstOrDefault(s => Math.Abs(s.To - last.At) < SamePlace && !plan.Tacks.Any(t => Math.Abs(t.At - s.From) < SamePlace)) is { } stitch ? first with { At = stitch.From } : null;

    private static IEnumerable<SheetRow> Rows(Tack[] along, ImmutableArray<Stitch> stitches, LengthUnit units, double width)
    {
        if (along.Length == 0) yield break;
        double cell = along.Max(t => PageTextWidth.Of(SheetNumbers.Length(t.At, units), SheetSizes.Small)) + 2.5;
        int fit = Math.Max(2, (int)(width / cell)), rows = Math.Max(1, (along.Length - 1 + fit - 2) / (fit - 1)), each = (along.Length - 1 + rows - 1) / rows;
        // The last tack of a row is the first of the next: the length between them is drawn once.
        for (int from = 0; from == 0 || from < along.Length - 1; from += Math.Max(1, each))
            yield return Row(along[from..Math.Min(along.Length, from + each + 1)], stitches, units, cell, (width - cell) / Math.Max(1, each));
    }

    private static SheetRow Row(Tack[] tacks, ImmutableArray<Stitch> stitches, LengthUnit units, double cell, double step)
    {
        double X(int i) => 0.5 * cell + i * step;
        List<PagePart> parts = [];
        if (tacks.Length > 1) parts.Add(new PageLine(Pen.Narrow, [new Vec2(X(0), -Line), new Vec2(X(tacks.Length - 1), -Line)]));
        for (int i = 0; i < tacks.Length; i++)
        {
            parts.Add(new PageLine(Pen.Wide, [new Vec2(X(i), -Line - Tick), new Vec2(X(i), -Line + Tick)]));
            parts.Add(new PageText(SheetNumbers.Count(tacks[i].Number), new Vec2(X(i), -Line + Tick + 1), Number, Anchor: Anchor.Middle));
            parts.Add(new PageText(SheetNumbers.Length(tacks[i].At, units), new Vec2(X(i), -Line - Tick - 1 - 2 * SheetSizes.Small - 1.6), SheetSizes.Small, Anchor: Anchor.Middle));
            if (i + 1 < tacks.Length && Between(tacks[i], tacks[i + 1], stitches) is { } stitch)
                parts.Add(new PageText(
                    $"←{SheetNumbers.Count(stitch.Number)}", new Vec2(X(i) + 0.5 * step, -Line - 1 - SheetSizes.Small), SheetSizes.Small, Anchor: Anchor.Middle));
        }
        return new SheetRow(Height, [.. parts]);
    }

    private static Stitch? Between(Tack a, Tack b, ImmutableArray<Stitch> stitches) =>
        stitches.FirstOrDefault(s => Math.Abs(Math.Min(s.From, s.To) - a.At) < SamePlace && Math.Abs(Math.Max(s.From, s.To) - b.At) < SamePlace);
}

using System.Collections.Immutable;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns.Strain;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Drawings.ShopSheet;

/// <summary>The tables of one piece.</summary>
internal static class PieceTables
{
    /// <summary>What is rolled, line by line; null if nothing is.</summary>
    public static SheetBlock? Rolls(PanelDevelopment panel, FormingPlan plan, LengthUnit units, double width)
    {
        if (plan.Rolls is not { } rolls || rolls.Lines.IsEmpty) return null;
        (string first, string last) = Ends(panel);
        ImmutableArray<TableColumn> columns =
        [
            new("line", ColumnKind.Left),
            new($"step\n{first}", ColumnKind.Right), new($"step\n{last}", ColumnKind.Right),
            new($"finished\nR {first}", ColumnKind.Right), new($"finished\nR {last}", ColumnKind.Right),
            new($"roll to\nR {first}", ColumnKind.Right), new($"roll to\nR {last}", ColumnKind.Right),
            new("bends", ColumnKind.Left), new("note", ColumnKind.Words),
        ];
        string lead = "Lay each numbered line along the roll. A step is from the line before, along the edge of the blank. R is the radius of the inside of the bend. DOWN is away from you as "
            + "the blank lies, outside face up. “Roll to” has the springback in it: roll a little past" + (rolls.OverRoll > 0 ? $", {SheetNumbers.Percent(rolls.OverRoll)} tighter," : "")
            + $" and open by hand (common practice). Springback: {rolls.Source}.";
        return ShopTable.Filled($"Roll schedule, {SheetNumbers.Unit(units)}", lead, columns, [.. rolls.Lines.Select(l => Line(l, units))], width);
    }

    /// <summary>The sharp bends in order; null if there are none.</summary>
    public static SheetBlock? Bends(PanelDevelopment panel, FormingPlan plan, LengthUnit units, double width)
    {
        if (plan.Bends.IsEmpty) return null;
        ImmutableArray<TableColumn> columns =
        [
            new("bend", ColumnKind.Left), new("way", ColumnKind.Left), new("angle", ColumnKind.Right), new("bend to", ColumnKind.Right), new("inside R", ColumnKind.Right),
            new("allowance", ColumnKind.Right), new("note", ColumnKind.Words),
        ];
        string lead = "Bend in this order. UP is towards you as the blank lies, outside face up. Angles are those that the sheet is bent through; “bend to” has the springback in it. "
            + $"Springback: {string.Join("; ", plan.Bends.Select(b => b.Source).Distinct())}.";
        return ShopTable.Filled($"Bend table, {SheetNumbers.Unit(units)}", lead, columns, [.. plan.Bends.Select(step => Bend(step, panel, units))], width);
    }

    /// <summary>Where metal is stretched or shrunk, the worst place first; null if nowhere.</summary>
    public static SheetBlock? Stretch(PanelDevelopment panel, FormingPlan plan, LengthUnit units, double width)
    {
        if (plan.Stretch.IsEmpty) return null;
        ImmutableArray<StrainSpot> spots = panel.DrawnMap is { } map ? StrainSpots.Of(panel.Mesh, map, panel.Edges, panel.Elements, units) : [];
        ImmutableArray<ImmutableArray<string>> rows =
        [
            .. plan.Stretch.Select(s => (ImmutableArray<string>)
            [
                "×" + SheetNumbers.Count(s.Number), $"{(s.Strain < 0 ? "shrink" : "stretch")} {SheetNumbers.Percent(Math.Abs(s.Strain))}", spots.FirstOrDefault(spot => spot.Number == s.Number)?.Where ?? "",
            ]),
        ];
        return ShopTable.Filled(
            "Stretch plan", "The crosses on the flat, worst first. The map of stretch and shrink has the whole.",
            [new("place", ColumnKind.Left), new("work", ColumnKind.Left), new("where", ColumnKind.Words)], rows, width);
    }

    /// <summary>What the tape must show; null if there is nothing to hold it to.</summary>
    public static SheetBlock? Tapes(FormingPlan plan, LengthUnit units, double width)
    {
        if (plan.Tapes.IsEmpty) return null;
        ImmutableArray<ImmutableArray<string>> rows =
        [
            .. plan.Tapes.Select(t => (ImmutableArray<string>)
            [
                $"{t.From} – {t.To}", SheetNumbers.Length(t.OnBlank, units), SheetNumbers.Length(t.OnPart, units), t.How == TapeRun.Taut ? "taut" : "laid on the sheet",
            ]),
        ];
        return ShopTable.Of(
            $"Tape checks, {SheetNumbers.Unit(units)}", "From dot to dot. On the part at the middle of the sheet’s thickness.",
            [new("from – to", ColumnKind.Left), new("on the\nblank", ColumnKind.Right), new("on the\npart", ColumnKind.Right), new("tape on the part", ColumnKind.Left)], rows, width);
    }

    /// <summary>What the piece takes, and how it lies to the grain.</summary>
    public static SheetBlock Blank(FormingPlan plan, Job job, double width)
    {
        (BlankNeed blank, LengthUnit units) = (plan.Blank, job.Units);
        string radius = $"least inside radius across the grain R {BendWords.Radius(plan.Grain.MinimumRadius, units)} {ShopLength.Name(units)}";
        return SheetBlock.Facts(
            "Blank", width, 20,
            [
                ("Size", $"{ShopLength.Print(blank.Width, units)} × {ShopLength.Print(blank.Height, units)}"),
                ("Area", AreaWords.Of(blank.Area, units)),
                ("Mass", SheetNumbers.Mass(blank.Mass, units)),
                ("Grain", plan.Grain.Matters
                    ? $"along the arrow, square to most of the bending (common practice); {radius}"
                    : $"nothing bends tightly enough for it to count; best along the arrow (common practice); {radius}"),
                .. blank.IsTooThickToShear ? [("Cutting", "too thick for the shear: saw, torch or laser")] : Array.Empty<(string, string)>(),
            ]);
    }

    /// <summary>The ends of an element line: those of a bent plate run from its left side to its right.</summary>
    public static (string First, string Last) Ends(PanelDevelopment panel) => panel.Spec.Kind == "bent" ? ("left", "right") : ("front", "rear");

    private static ImmutableArray<string> Line(RollLine line, LengthUnit units)
    {
        string note = line.Limits.IsEmpty ? "" : "CANNOT BE ROLLED: " + string.Join("; ", line.Limits.Select(Words));
        string[] radii = line.IsFlat
            ? ["flat", "flat", "–", "–"]
            : [SheetNumbers.Radius(line.RadiusFront, units), SheetNumbers.Radius(line.RadiusRear, units), SheetNumbers.Radius(line.RollFront, units), SheetNumbers.Radius(line.RollRear, units)];
        return
        [
            SheetNumbers.Count(line.Number), SheetNumbers.Length(line.StepFront, units), SheetNumbers.Length(line.StepRear, units),
            // The sheet turns away from its convex face.
            .. radii, line.IsFlat ? "–" : line.BendsOutward ? "DOWN" : "UP", note,
        ];
    }

    private static string Words(RollLimit limit) => limit switch
    {
        RollLimit.TooLong => "longer than the roll",
        RollLimit.TooTightForRoll => "tighter than the roll goes",
        _ => "tighter than the metal bears",
    };

    private static ImmutableArray<string> Bend(BendStep step, PanelDevelopment panel, LengthUnit units)
    {
        BendLine? bend = panel.Bends.FirstOrDefault(b => b.Number == step.Number);
        string[] notes =
        [
            .. step.IsTooSharp ? [$"SHARPER THAN THE METAL BEARS: at least R {BendWords.Radius(step.MinimumRadius, units)}"] : Array.Empty<string>(),
            .. step.IsTooLong ? ["LONGER THAN THE BRAKE"] : Array.Empty<string>(),
        ];
        return
        [
            SheetNumbers.Count(step.Number) + (bend?.Lip is { } lip ? $", lip {lip}" : ""), bend is null ? "" : BendWords.Way(bend),
            bend is null ? SheetNumbers.Degrees(step.Angle) : BendWords.Angle(bend), SheetNumbers.Degrees(step.BendTo),
            bend is null ? "" : BendWords.Radius(bend.InsideRadius, units), bend is null ? "" : BendWords.Fine(bend.Length.Allowance, units), string.Join("; ", notes),
        ];
    }
}

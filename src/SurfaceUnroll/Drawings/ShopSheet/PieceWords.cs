using System.Collections.Immutable;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Drawings.ShopSheet;

/// <summary>How one piece is formed, in the words of its shop sheet: what is printed on it and what the page of the bench shows.</summary>
public static class PieceWords
{
    // Keeps a number and its sign on one line.
    private const char Unbroken = '\u00a0';

    /// <summary>What is rolled, line by line; null if nothing is.</summary>
    public static ShopWords? Rolls(PanelDevelopment panel, FormingPlan plan, LengthUnit units)
    {
        if (plan.Rolls is not { } rolls || rolls.Lines.IsEmpty) return null;
        (string first, string last) = Ends(panel);
        ImmutableArray<TableColumn> columns =
        [
            new("line", ColumnKind.Left),
            new($"at\n{first}", ColumnKind.Right), new($"at\n{last}", ColumnKind.Right), new("leads\nby", ColumnKind.Right),
            new($"finished\nR {first}", ColumnKind.Right), new($"finished\nR {last}", ColumnKind.Right),
            new($"roll to\nR {first}", ColumnKind.Right), new($"roll to\nR {last}", ColumnKind.Right),
            new("bends", ColumnKind.Left),
        ];
        RollLine[] rolled = [.. rolls.Lines.Where(l => !l.IsFlat)];
        bool oneWay = rolled.All(l => l.BendsOutward == rolled[0].BendsOutward);
        // A way that all lines share is said once.
        ImmutableArray<ImmutableArray<string>> rows = [.. Rows(rolls, oneWay, first, last, units)];
        string lead = $"Lay each numbered line along the roll. “At” is how far it stands from line 1, along the finished edge of the blank{(rows.Any(r => r[3].Length > 0) ? "; the end that leads is fed farther than the other since the line before, by so much" : "")}. R is the inside radius. "
            + (!oneWay ? "DOWN is away from you as the blank lies. " : $"Every line bends {Way(rolled[0])}, {(rolled[0].BendsOutward ? "away from" : "towards")} you as the blank lies. ")
            + "“Roll to” has the springback in it: roll a little past" + (rolls.OverRoll > 0 ? $", {SheetNumbers.Percent(rolls.OverRoll).Replace(' ', Unbroken)} tighter," : "")
            + $" and open by hand (common practice). Springback: {rolls.Source}.";
        return ShopWords.Filled($"Roll schedule, {SheetNumbers.Unit(units)}", [lead, .. CannotBeRolled(rolls)], columns, rows);
    }

    /// <summary>The sharp bends in order; null if there are none.</summary>
    public static ShopWords? Bends(PanelDevelopment panel, FormingPlan plan, LengthUnit units)
    {
        if (plan.Bends.IsEmpty) return null;
        ImmutableArray<TableColumn> columns =
        [
            new("bend", ColumnKind.Left), new("way", ColumnKind.Left), new("angle", ColumnKind.Right), new("bend to", ColumnKind.Right), new("inside R", ColumnKind.Right),
            new("allowance", ColumnKind.Right),
        ];
        // The parts of a lip that a corner parts are one bend.
        ImmutableArray<ImmutableArray<string>> rows = [.. plan.Bends.Select((step, i) => Bend(step, i < panel.Bends.Length ? panel.Bends[i] : null, units)).DistinctBy(row => string.Join('|', row))];
        string lead = "Bend in this order. UP is towards you as the blank lies, outside face up. Angles are those that the sheet is bent through; “bend to” has the springback in it. "
            + $"Springback: {string.Join("; ", plan.Bends.Select(b => b.Source).Distinct())}.";
        return ShopWords.Filled($"Bend table, {SheetNumbers.Unit(units)}", [lead, .. Warnings(plan, units)], columns, rows);
    }

    /// <summary>Where metal is stretched or shrunk, the worst place first; null if nowhere.</summary>
    public static ShopWords? Stretch(FormingPlan plan)
    {
        if (plan.Stretch.IsEmpty) return null;
        ImmutableArray<ImmutableArray<string>> rows =
        [
            .. plan.Stretch.Select(s => (ImmutableArray<string>)
            [
                "×" + SheetNumbers.Count(s.Number), $"{(s.Strain < 0 ? "shrink" : "stretch")} {SheetNumbers.Percent(Math.Abs(s.Strain))}", s.Where,
            ]),
        ];
        return ShopWords.Filled(
            "Stretch plan", ["The crosses on the flat, worst first. The map of stretch and shrink has the whole."],
            [new("place", ColumnKind.Left), new("work", ColumnKind.Left), new("where", ColumnKind.Words)], rows);
    }

    /// <summary>What the tape must show; null if there is nothing to hold it to.</summary>
    public static ShopWords? Tapes(FormingPlan plan, LengthUnit units)
    {
        if (plan.Tapes.IsEmpty) return null;
        ImmutableArray<ImmutableArray<string>> rows =
        [
            .. plan.Tapes.Select(t => (ImmutableArray<string>)
            [
                $"{t.From} – {t.To}", SheetNumbers.Length(t.OnBlank, units), SheetNumbers.Length(t.OnPart, units), t.How == TapeRun.Taut ? "taut" : "laid on",
            ]),
        ];
        return new ShopWords(
            $"Tape checks, {SheetNumbers.Unit(units)}", ["From dot to dot; on the part at mid-thickness. Taut: straight through the air. Laid on: the shortest way along the sheet."],
            [new("from – to", ColumnKind.Left), new("on the\nblank", ColumnKind.Right), new("on the\npart", ColumnKind.Right), new("tape", ColumnKind.Left)], rows);
    }

    /// <summary>What the piece takes, and how it lies to the grain, as names and what there is to say of each.</summary>
    public static ImmutableArray<(string Name, string Value)> Blank(PanelDevelopment panel, FormingPlan plan, Job job)
    {
        (BlankNeed blank, LengthUnit units) = (plan.Blank, job.Units);
        return
        [
            ("Size", $"{ShopLength.Print(blank.Width, units)} × {ShopLength.Print(blank.Height, units)}"),
            ("Area", AreaWords.Of(blank.Area, units)),
            ("Mass", SheetNumbers.Mass(blank.Mass, units)),
            ("Grain", $"{(plan.Grain.Matters ? "along the arrow, square to most of the bending" : "any way; best along the arrow")} (common practice)"),
            ("Least R", plan.Grain.MinimumRadius > 0 ? $"{BendWords.Radius(plan.Grain.MinimumRadius, units)} {ShopLength.Name(units)} inside, bent across the grain" : "–"),
            .. panel.Freedom is { } fit ? [("Moved", $"{fit.Spec.Curve}: {FreedomWords.Largest(fit, units)}; what meets it there is cut to its template")] : Array.Empty<(string, string)>(),
            .. blank.IsTooThickToShear ? [("Cutting", "too thick for the shear: saw, torch or laser")] : Array.Empty<(string, string)>(),
        ];
    }

    /// <summary>How far each edge may be off by the errors of the readings, and which one to take again first; none where they have no errors.</summary>
    public static ImmutableArray<(string Name, string Value)> Errors(PanelDevelopment panel, LengthUnit units) => panel.Error is not { Readings.IsEmpty: false } error
        ? []
        :
        [
            .. error.Edges.Select(e => (e.Name, $"{ErrorWords.Band(e, units)}: {(ErrorWords.IsLeftOn(panel, e.Name) ? "left on: " + ErrorWords.Steps(e.Name, e.Leave, panel, units) : ErrorWords.Leave(e, panel, units))}")),
            ("First", $"measure again {ErrorWords.First(error.Readings[0])}"),
        ];

    /// <summary>The ends of an element line: those of a bent plate run from its left side to its right.</summary>
    public static (string First, string Last) Ends(PanelDevelopment panel) => panel.Spec.Kind == "bent" ? ("left", "right") : ("front", "rear");

    // Neighbours that stay flat are one row: nothing is done at them.
    private static IEnumerable<ImmutableArray<string>> Rows(RollSchedule rolls, bool oneWay, string first, string last, LengthUnit units)
    {
        ImmutableArray<RollLine> lines = rolls.Lines;
        ImmutableArray<(double Front, double Rear)> places = rolls.Places();
        for (int i = 0; i < lines.Length; i++)
        {
            int from = i;
            while (lines[i].IsFlat && i + 1 < lines.Length && lines[i + 1].IsFlat) i++;
            string number = i == from ? SheetNumbers.Count(lines[i].Number) : $"{SheetNumbers.Count(lines[from].Number)} – {SheetNumbers.Count(lines[i].Number)}";
            yield return lines[i].IsFlat
                ? [number, "–", "–", "", "flat", "flat", "–", "–", oneWay ? "" : "–"]
                : Rolled(lines[i], places[i], number, i == 0, oneWay, first, last, units);
        }
    }

    private static ImmutableArray<string> Rolled(RollLine line, (double Front, double Rear) at, string number, bool begins, bool oneWay, string first, string last, LengthUnit units)
    {
        string leads = SheetNumbers.Length(Math.Abs(line.ConeOffset), units);
        return
        [
            number + (line.Limits.IsEmpty ? "" : " !"),
            SheetNumbers.Length(at.Front, units), SheetNumbers.Length(at.Rear, units),
            begins || leads == SheetNumbers.Length(0, units) ? "" : $"{(line.ConeOffset > 0 ? last : first)} {leads}",
            SheetNumbers.Radius(line.RadiusFront, units), SheetNumbers.Radius(line.RadiusRear, units), SheetNumbers.Radius(line.RollFront, units), SheetNumbers.Radius(line.RollRear, units),
            oneWay ? "" : Way(line),
        ];
    }

    // The sheet turns away from its convex face.
    private static string Way(RollLine line) => line.BendsOutward ? "DOWN" : "UP";

    // The lines by what is against them.
    private static IEnumerable<string> CannotBeRolled(RollSchedule rolls) =>
        from limit in Enum.GetValues<RollLimit>()
        let lines = rolls.Lines.Where(l => l.Limits.Contains(limit)).Select(l => SheetNumbers.Count(l.Number)).ToArray()
        where lines.Length > 0
        select $"! CANNOT BE ROLLED as it stands, {Words(limit)}: {(lines.Length == 1 ? "line" : "lines")} {SheetNumbers.List(lines)}.";

    private static string Words(RollLimit limit) => limit switch
    {
        RollLimit.TooLong => "longer than the roll",
        RollLimit.TooTightForRoll => "tighter than the roll goes",
        _ => "tighter than the metal bears",
    };

    // The bends by what is against them.
    private static IEnumerable<string> Warnings(FormingPlan plan, LengthUnit units)
    {
        BendStep[] sharp = [.. plan.Bends.Where(b => b.IsTooSharp)], tooLong = [.. plan.Bends.Where(b => b.IsTooLong)];
        if (sharp.Length > 0) yield return $"! SHARPER THAN THE METAL BEARS, which is inside R {BendWords.Radius(sharp.Max(b => b.MinimumRadius), units)}: {Named(sharp)}.";
        if (tooLong.Length > 0) yield return $"! LONGER THAN THE BRAKE: {Named(tooLong)}.";

        static string Named(BendStep[] steps)
        {
            string[] numbers = [.. steps.Select(b => SheetNumbers.Count(b.Number)).Distinct()];
            return $"{(numbers.Length == 1 ? "bend" : "bends")} {SheetNumbers.List(numbers)}";
        }
    }

    private static ImmutableArray<string> Bend(BendStep step, BendLine? bend, LengthUnit units) =>
    [
        SheetNumbers.Count(step.Number) + (bend?.Lip is { } lip ? $", lip {lip}" : "") + (step.IsTooSharp || step.IsTooLong ? " !" : ""), bend is null ? "" : BendWords.Way(bend),
        bend is null ? SheetNumbers.Degrees(step.Angle) : BendWords.Angle(bend), SheetNumbers.Degrees(step.BendTo),
        bend is null ? "" : BendWords.Radius(bend.InsideRadius, units), bend is null ? "" : BendWords.Fine(bend.Length.Allowance, units),
    ];
}

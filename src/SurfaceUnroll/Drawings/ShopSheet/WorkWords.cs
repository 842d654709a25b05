using System.Collections.Immutable;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Drawings.ShopSheet;

/// <summary>A tack as it stands along its joint.</summary>
/// <param name="Number">In the order of setting; the first tack of a closed joint stands at its end again.</param>
/// <param name="At">Distance along the joint, without its unit.</param>
/// <param name="Weld">In which order the length from here to the next tack is welded, back towards here; null where none is.</param>
public readonly record struct TackWords(int Number, string At, int? Weld);

/// <summary>The work on a whole job in the words of its shop sheet.</summary>
public static class WorkWords
{
    /// <summary>Over the order of work.</summary>
    public const string OrderTitle = "Order of work (common practice)";

    /// <summary>What holds for the tacks of every joint.</summary>
    public const string TackRules =
        "Above each line stands the order of the tacks: the ends and the middle first, then always halfway between; what is set in one round cools before the next. Below it between the tacks stands the "
        + "order of the welds: skip about, and lay each length the way its arrow points, back against the way in which the whole goes on. Under the ticks stands how far along the joint they are.";

    // Ends of a stitch lie on tacks; less than this apart they are one, mm.
    private const double SamePlace = 0.05;

    /// <summary>The order of work, with the steps that the job asks for.</summary>
    public static ImmutableArray<string> Order(Development development)
    {
        ImmutableArray<PanelDevelopment> panels = development.Panels;
        bool meets = development.Joints.Any(j => j.Mates.Length == 2), tacked = !development.Tacks.IsEmpty;
        (bool Asked, string Step)[] all =
        [
            (true, "Cut the blanks along the thick lines and take over all marks."),
            (true, "Deburr every edge."),
            (panels.Any(p => !p.Openings.IsEmpty), "Drill the holes and cut the openings while the blank is flat; deburr both sides."),
            (panels.Any(p => Lipped(p) && p.Plan?.Rolls is null), "Bend the lips of pieces that are not rolled."),
            (panels.Any(p => p.Bends.Any(b => b.Lip is null)), "Bend the plates, in the order of the bend table."),
            (panels.Any(p => p.Plan?.Rolls is not null), "Roll line by line, and open by hand what is rolled too far."),
            (panels.Any(p => Lipped(p) && p.Plan?.Rolls is not null), "Turn the lips of rolled pieces, over a former or with a bead roller: a flange stands in the way of the rolls."),
            (panels.Any(p => p.Plan is { Stretch.IsEmpty: false }), "Stretch and shrink where the plan says, a little at a time."),
            (true, "Check with the tape, letter to letter."),
            (meets, "Fit on trial, mark to mark; mend what does not meet now."),
            (panels.Any(p => p.Allowances.Any(a => a.Kind == JointKind.Trim)), "Hold each piece in its place, scribe along what it meets, and trim away what was left on; deburr again."),
            (tacked, "Clamp and tack in the order given."),
            (tacked, "Check with the tape again, then weld in the order given."),
            (tacked, "Grind and dress."),
        ];
        return [.. all.Where(s => s.Asked).Select(s => s.Step)];
    }

    /// <summary>Each caution that a piece of the job asks for, once.</summary>
    public static ImmutableArray<string> Care(Development development) =>
        [.. ShopCautions.Always.Concat(development.Panels.SelectMany(p => ShopCautions.Beside(p, JointWords.Of(p, development.Joints)))).Distinct()];

    /// <summary>Over the tacks of a joint.</summary>
    public static string TackTitle(TackPlan plan, LengthUnit units) => $"Joint {plan.Joint}: tacks, {SheetNumbers.Unit(units)}";

    /// <summary>How far the tacks of a joint stand apart, and when it cools.</summary>
    public static string TackLead(TackPlan plan, JointFit? joint, LengthUnit units)
    {
        string edge = joint is { Mates.IsEmpty: false } ? $", measured along {joint.Mates[0].Edge}" : "";
        string[] last = [.. Rounds(plan).SkipLast(1).Select(SheetNumbers.Count)];
        string cool = last.Length > 0 ? $" Let the joint cool after {SheetNumbers.List(last)}." : "";
        return $"No more than {ShopLength.Print(plan.Pitch, units)} apart{edge}.{cool}";
    }

    /// <summary>The last tack of each round, in order: after all but the last the joint cools.</summary>
    public static ImmutableArray<int> Rounds(TackPlan plan) => [.. plan.Tacks.GroupBy(t => t.Round).OrderBy(g => g.Key).Select(g => g.Max(t => t.Number))];

    /// <summary>The tacks in the order along the joint, with the welds between them.</summary>
    public static ImmutableArray<TackWords> Along(TackPlan plan, LengthUnit units)
    {
        Tack[] along = [.. InPlace(plan)];
        return [.. along.Select((tack, i) => new TackWords(tack.Number, SheetNumbers.Length(tack.At, units), i + 1 < along.Length ? Between(tack, along[i + 1], plan.Stitches)?.Number : null))];
    }

    // A closed joint ends at its first tack, which stands there again.
    private static IEnumerable<Tack> InPlace(TackPlan plan)
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

    private static Stitch? Between(Tack a, Tack b, ImmutableArray<Stitch> stitches) =>
        stitches.FirstOrDefault(s => Math.Abs(Math.Min(s.From, s.To) - a.At) < SamePlace && Math.Abs(Math.Max(s.From, s.To) - b.At) < SamePlace);

    private static bool Lipped(PanelDevelopment panel) => panel.Bends.Any(b => b.Lip is not null);
}

using System.Collections.Immutable;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Drawings.ShopSheet;

/// <summary>The tables of a whole job.</summary>
internal static class JobTables
{
    /// <summary>How the pieces meet; null if there are no joints.</summary>
    public static SheetBlock? Joints(Development development, double width)
    {
        if (development.Joints.IsEmpty) return null;
        LengthUnit units = development.Job.Units;
        ImmutableArray<TableColumn> columns =
        [
            new("joint", ColumnKind.Left), new("first\nlength", ColumnKind.Right), new("second\nlength", ColumnKind.Right), new("between\nthe sheets", ColumnKind.Right), new("edges, and how they meet", ColumnKind.Words),
        ];
        return ShopTable.Filled($"How the pieces meet, {SheetNumbers.Unit(units)}", [], columns, [.. development.Joints.Select(j => Row(j, units))], width);
    }

    /// <summary>What is cut, and from how many sheets.</summary>
    public static SheetBlock Pieces(Development development, double width)
    {
        LengthUnit units = development.Job.Units;
        ImmutableArray<TableColumn> columns =
        [
            new("piece", ColumnKind.Left), new("width", ColumnKind.Right), new("height", ColumnKind.Right), new("area", ColumnKind.Right), new("mass", ColumnKind.Right),
        ];
        ImmutableArray<ImmutableArray<string>> rows =
        [
            .. from panel in development.Panels
               let blank = panel.Plan?.Blank
               where blank is not null
               select (ImmutableArray<string>)
               [
                   panel.Spec.Name, SheetNumbers.Length(blank.Width, units), SheetNumbers.Length(blank.Height, units), AreaWords.Of(blank.Area, units), SheetNumbers.Mass(blank.Mass, units),
               ],
        ];
        return ShopTable.Of($"Pieces to cut, {SheetNumbers.Unit(units)}", [Stock(development)], columns, rows, width);
    }

    /// <summary>The order of work, with the steps that the job asks for.</summary>
    public static SheetBlock Order(Development development, double width)
    {
        ImmutableArray<PanelDevelopment> panels = development.Panels;
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
            (!development.Joints.IsEmpty, "Fit on trial, mark to mark; mend what does not meet now."),
            (!development.Joints.IsEmpty, "Clamp and tack in the order given."),
            (!development.Joints.IsEmpty, "Check with the tape again, then weld in the order given."),
            (!development.Joints.IsEmpty, "Grind and dress."),
        ];
        return SheetBlock.Paragraphs("Order of work (common practice)", width, 6, all.Where(s => s.Asked).Select((s, i) => (SheetNumbers.Count(i + 1), s.Step)));
    }

    private static bool Lipped(PanelDevelopment panel) => panel.Bends.Any(b => b.Lip is not null);

    /// <summary>Each caution that a piece of the job asks for, once.</summary>
    public static SheetBlock Care(Development development, double width) =>
        SheetBlock.Paragraphs("Take care", width, 4, ShopCautions.Always.Concat(development.Panels.SelectMany(p => ShopCautions.Beside(p, JointWords.Of(p, development.Joints)))).Distinct().Select(c => ("–", c)));

    /// <summary>What holds for the tacks of every joint.</summary>
    public static SheetBlock TackRules(double width) =>
        SheetBlock.Paragraphs(
            "Tacking and welding (common practice)", width, 0,
            [
                ("", "Above each line stands the order of the tacks: the ends and the middle first, then always halfway between; what is set in one round cools before the next. Below it between the tacks stands the "
                    + "order of the welds: skip about, and lay each length the way its arrow points, back against the way in which the whole goes on. Under the ticks stands how far along the joint they are."),
            ]);

    private static ImmutableArray<string> Row(JointFit joint, LengthUnit units) =>
    [
        joint.Label,
        joint.Mates.Length > 0 ? SheetNumbers.Length(joint.Mates[0].Length, units) : "", joint.Mates.Length > 1 ? SheetNumbers.Length(joint.Mates[1].Length, units) : "",
        joint.Dihedral is { } d ? BendWords.Degrees(d.Least, d.Greatest, 0.5 * (d.Least + d.Greatest)) : "",
        $"{JointWords.Edges(joint)}, {JointWords.Kind(joint, units)}{(joint.Fits || joint.Mates.Length < 2 ? "" : "; DOES NOT FIT")}",
    ];

    private static string Stock(Development development)
    {
        if (development.Nest is not { } nest) return "The job names no sheets of stock.";
        string few = development.Notices.Any(n => n.Code == "stock-too-few") ? " THERE ARE NOT SO MANY." : "";
        string large = nest.TooLarge.IsEmpty ? "" : $" TOO LARGE FOR THE STOCK: {SheetNumbers.List([.. nest.TooLarge.Select(i => development.Panels[i].Spec.Name)])}.";
        return $"Stock: {NestWords.Summary(nest, development.Job.Units)}{(nest.Sheets.IsEmpty ? "" : "; laid out as in nesting.svg")}.{few}{large}";
    }
}

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
        return ShopTable.Of(ShopWords.Filled($"How the pieces meet, {SheetNumbers.Unit(units)}", [], columns, [.. development.Joints.Select(j => Row(j, units))]), width);
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
    public static SheetBlock Order(Development development, double width) =>
        SheetBlock.Paragraphs(WorkWords.OrderTitle, width, 6, WorkWords.Order(development).Select((step, i) => (SheetNumbers.Count(i + 1), step)));

    /// <summary>Each caution that a piece of the job asks for, once.</summary>
    public static SheetBlock Care(Development development, double width) => SheetBlock.Paragraphs("Take care", width, 4, WorkWords.Care(development).Select(c => ("–", c)));

    /// <summary>What holds for the tacks of every joint.</summary>
    public static SheetBlock TackRules(double width) => SheetBlock.Paragraphs("Tacking and welding (common practice)", width, 0, [("", WorkWords.TackRules)]);

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

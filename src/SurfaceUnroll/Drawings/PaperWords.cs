using System.Globalization;

namespace SurfaceUnroll.Drawings;

/// <summary>What a pattern takes of paper, in words.</summary>
public static class PaperWords
{
    /// <summary>Facts for the first page: name and value.</summary>
    public static IEnumerable<(string Name, string Value)> Of(TilePlan plan)
    {
        yield return ("Paper", Paper(plan));
        yield return ("Sheets", Sheets(plan));
        if (plan.Turn != 0) yield return ("Turned", Turned(plan));
        if (plan.Paper.Printer is { } printer)
            yield return ("Printer", string.Create(CultureInfo.InvariantCulture, $"{printer.Name}: drawn {1 / printer.Across:0.0000} times as wide and {1 / printer.Along:0.0000} times as long, so that it comes out true"));
    }

    /// <summary>All of it in one line: <c>A4 portrait, 6 sheets, turned 12° for 2 fewer</c>.</summary>
    public static string Line(TilePlan plan)
    {
        int printed = plan.Printed.Count();
        string sheets = plan.Paper.Size.IsRoll ? Sheets(plan) : $"{Number(printed)} {(printed == 1 ? "sheet" : "sheets")}";
        return $"{Paper(plan)}, {sheets}{(plan.Turn != 0 ? ", turned " + Turned(plan) : "")}";
    }

    private static string Paper(TilePlan plan) => plan.Paper.Size.IsRoll ? plan.Paper.Size.Name : $"{plan.Paper.Size.Name}, {(plan.IsLandscape ? "landscape" : "portrait")}";

    private static string Sheets(TilePlan plan)
    {
        int printed = plan.Printed.Count(), empty = plan.Tiles.Length - printed;
        string left = empty == 0 ? "" : $" ({Number(empty)} left out: nothing on {(empty == 1 ? "it" : "them")})";
        return plan.Paper.Size.IsRoll ? $"{Number(printed)} {(printed == 1 ? "length" : "lengths")} of {plan.Sheet.Height.ToString("0", CultureInfo.InvariantCulture)} mm{left}" : Number(printed) + left;
    }

    private static string Turned(TilePlan plan)
    {
        string angle = string.Create(CultureInfo.InvariantCulture, $"{Math.Abs(plan.Turn) * 180 / Math.PI:0.#}° {(plan.Turn > 0 ? "to the left" : "to the right")}");
        if (plan.CostUnturned is not { } unturned) return angle;
        double spared = unturned - plan.Cost;
        return plan.Paper.Size.IsRoll
            ? string.Create(CultureInfo.InvariantCulture, $"{angle}, which spares {spared:0} mm of paper")
            : $"{angle}, which spares {Number((int)spared)} {(spared == 1 ? "sheet" : "sheets")}";
    }

    private static string Number(int n) => n.ToString(CultureInfo.InvariantCulture);
}

using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Forming;

/// <summary>Lays out what is rolled: for each numbered line the finished radius and the one to roll to.</summary>
internal static class RollPlanner
{
    // Roll a little past and open by hand (common practice, no source).
    private const double OverRoll = 0.03;

    /// <summary>The schedule of a piece; null if it has no numbered lines, or all of them stay flat.</summary>
    /// <param name="panel">Developed, with its element lines.</param>
    /// <param name="stock">Sheet.</param>
    /// <param name="shop">Roll.</param>
    public static RollSchedule? Of(PanelDevelopment panel, SheetStock stock, ShopSpec shop)
    {
        ElementLine[] numbered = [.. panel.Elements.Where(e => e.Number > 0 && e.Length > 0).GroupBy(e => e.Number).Select(Whole).OrderBy(e => e.Number)];
        RollLine[] lines = [.. numbered.Select((line, i) => Line(line, i > 0 ? numbered[i - 1] : null, panel, stock, shop))];
        return lines.All(l => l.IsFlat) ? null : new RollSchedule([.. lines], OverRoll, Source(stock));
    }

    // A line that openings or trims part is rolled in one go from end to end, at the radii of its longest run.
    private static ElementLine Whole(IEnumerable<ElementLine> runs)
    {
        ElementLine longest = runs.MaxBy(e => e.Length)!;
        Vec2 way = longest.Rear - longest.Front;
        ElementLine[] inOrder = [.. runs.OrderBy(e => e.Front.Dot(way))];
        (ElementLine first, ElementLine last) = (inOrder[0], inOrder[^1]);
        return first == last ? first : longest with
        {
            Front = first.Front,
            FormedFront = first.FormedFront,
            FrontLength = first.FrontLength,
            Rear = last.Rear,
            FormedRear = last.FormedRear,
            RearLength = last.RearLength,
            FormedPath = [.. inOrder.SelectMany(e => e.FormedPath)],
        };
    }

    private static RollLine Line(ElementLine line, ElementLine? before, PanelDevelopment panel, SheetStock stock, ShopSpec shop)
    {
        double front = Inside(line.BendRadiusFront, stock), rear = Inside(line.BendRadiusRear, stock);
        double rollFront = RollTo(front, stock), rollRear = RollTo(rear, stock);
        (double stepFront, double stepRear) = before is null ? (0, 0) : Steps(before, line, panel.Spec.Trims.IsEmpty);
        var limits = ImmutableArray.CreateBuilder<RollLimit>();
        bool flat = double.IsPositiveInfinity(front) && double.IsPositiveInfinity(rear);
        if (!flat && line.Length > shop.RollWidth) limits.Add(RollLimit.TooLong);
        if (Math.Min(rollFront, rollRear) < shop.RollMinRadius) limits.Add(RollLimit.TooTightForRoll);
        if (Math.Min(rollFront, rollRear) < stock.MinimumRadius) limits.Add(RollLimit.TooTightForMaterial);
        return new RollLine(line.Number, line.Length, stepFront, stepRear, front, rear, rollFront, rollRear, line.BendsOutward, limits.ToImmutable());
    }

    private static string Source(SheetStock stock)
    {
        Material metal = stock.Metal;
        return stock.Thickness <= 0 ? "none, since no thickness is given" : string.Create(CultureInfo.InvariantCulture, $"Ri/Rf = 4x³ − 3x + 1, x = Ri·Y/(E·t), Y {metal.Yield.Value:0} MPa, E {metal.Modulus.Value / 1000:0} GPa");
    }

    // From that of the middle surface.
    private static double Inside(double middle, SheetStock stock) => middle > RollSchedule.FlatRadius ? double.PositiveInfinity : Math.Max(0, middle - 0.5 * stock.Thickness);

    private static double RollTo(double inside, SheetStock stock) =>
        double.IsPositiveInfinity(inside) || inside == 0 || stock.Thickness <= 0 ? inside : Springback.RollTo(inside, stock.Thickness, stock.Metal.Yield.Value, stock.Metal.Modulus.Value);

    // Along whole edges; of a line that a trim may have cut, from end to end.
    private static (double Front, double Rear) Steps(ElementLine before, ElementLine line, bool whole) => whole
        ? (line.FrontLength - before.FrontLength, line.RearLength - before.RearLength)
        : ((line.Front - before.Front).Length, (line.Rear - before.Rear).Length);
}

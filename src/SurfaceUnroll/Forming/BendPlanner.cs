using System.Globalization;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Forming;

/// <summary>To what angle sharp bends are bent, and what they may not be.</summary>
internal static class BendPlanner
{
    /// <summary>One bend.</summary>
    /// <param name="bend">On the blank.</param>
    /// <param name="runs">All of its number: a hole or a notch parts a bend that is made in one stroke. The parts of a lip go round corners, and are made one by one.</param>
    /// <param name="stock">Sheet.</param>
    /// <param name="shop">Brake.</param>
    public static BendStep Of(BendLine bend, IEnumerable<BendLine> runs, SheetStock stock, ShopSpec shop)
    {
        double length = bend.Lip is null ? Reach([.. runs.SelectMany(r => r.Centre)]) : Reach(bend.Centre);
        (double to, string source) = BendTo(bend, stock);
        return new BendStep(bend.Number, bend.Angle, to, stock.MinimumRadius, IsTooSharp(bend, stock), length > shop.BrakeLength, source);
    }

    // From end to end, mm.
    private static double Reach(IReadOnlyCollection<Vec2> places) => places.Select(p => places.Max(q => (q - p).Length)).DefaultIfEmpty(0).Max();

    /// <summary>Its inside radius is smaller than the material bears.</summary>
    public static bool IsTooSharp(BendLine bend, SheetStock stock) => bend.InsideRadius < stock.MinimumRadius - 1e-9;

    private static (double Angle, string Source) BendTo(BendLine bend, SheetStock stock)
    {
        if (stock.Thickness <= 0) return (bend.Angle, "no thickness is given");
        double to = Springback.BendTo(bend.Angle, stock.Metal, bend.InsideRadius, stock.Thickness);
        string source = Springback.Factor(stock.Metal, bend.InsideRadius / stock.Thickness) is { } factor
            ? string.Create(CultureInfo.InvariantCulture, $"springback factor {factor:0.###}, table") : "formula for rolled sheet";
        return (to, source);
    }
}

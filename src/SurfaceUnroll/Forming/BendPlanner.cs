using System.Globalization;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Forming;

/// <summary>To what angle sharp bends are bent, and what they may not be.</summary>
internal static class BendPlanner
{
    /// <summary>One bend.</summary>
    /// <param name="bend">On the blank.</param>
    /// <param name="stock">Sheet.</param>
    /// <param name="shop">Brake.</param>
    public static BendStep Of(BendLine bend, SheetStock stock, ShopSpec shop)
    {
        double length = bend.Centre.Length < 2 ? 0 : PathLength.Of(bend.Centre.Select(p => new Vec3(p.X, p.Y, 0)));
        (double to, string source) = BendTo(bend, stock);
        return new BendStep(bend.Number, bend.Angle, to, stock.MinimumRadius, IsTooSharp(bend, stock), length > shop.BrakeLength, source);
    }

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

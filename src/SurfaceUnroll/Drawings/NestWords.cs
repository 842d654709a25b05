using System.Globalization;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns.Nesting;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Drawings;

/// <summary>Words for pieces laid out on sheets.</summary>
public static class NestWords
{
    /// <summary>How many sheets of which sizes.</summary>
    public static string Sheets(NestLayout nest, LengthUnit units) =>
        string.Join(" and ", nest.Taken.Select(t => $"{t.Count.ToString(CultureInfo.InvariantCulture)} {(t.Count == 1 ? "sheet" : "sheets")} of {Size(t.Stock, units)}"));

    /// <summary>Both sides of a sheet, the longer first.</summary>
    public static string Size(StockSheet sheet, LengthUnit units) => $"{ShopLength.PrintNumber(sheet.Length, units)} × {ShopLength.Print(sheet.Width, units)}";

    /// <summary>Share of a sheet that pieces take, in whole percent.</summary>
    public static string Use(double fraction) => Math.Round(100 * fraction, MidpointRounding.AwayFromZero).ToString("0", CultureInfo.InvariantCulture) + " % used";

    /// <summary>One line for the whole layout.</summary>
    public static string Summary(NestLayout nest, LengthUnit units) =>
        nest.Sheets.IsEmpty ? "No piece fits on the sheets of the stock" : $"Nested on {Sheets(nest, units)}, {Use(nest.Use)}";
}

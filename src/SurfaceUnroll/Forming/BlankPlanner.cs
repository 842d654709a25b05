using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Forming;

/// <summary>What pieces take of the stock.</summary>
internal static class BlankPlanner
{
    // Between pieces on a sheet and to its rim, mm.
    private const double Gap = 5;

    /// <summary>Size, area and mass of one blank.</summary>
    /// <param name="panel">With its cut lines.</param>
    /// <param name="stock">Sheet.</param>
    /// <param name="shop">Shear.</param>
    public static BlankNeed Of(PanelDevelopment panel, SheetStock stock, ShopSpec shop)
    {
        Box box = Box.Around(panel.Cut);
        double area = panel.Areas.Blank;
        return new BlankNeed(box.Width, box.Height, area, area * stock.Thickness * stock.Metal.Density.Value * 1e-9, stock.Thickness > shop.ShearThickness);
    }

    /// <summary>Sheets of one size that all pieces take, laid out in rows by their upright boxes, the highest first and each turned flat.</summary>
    /// <param name="panels">All pieces.</param>
    /// <param name="sheet">The size.</param>
    public static StockNeed Sheets(IEnumerable<PanelDevelopment> panels, StockSheet sheet)
    {
        (double length, double width) = (sheet.Length - Gap, sheet.Width - Gap);
        var boxes = panels.Select(p => (p.Spec.Name, Box: Box.Around(p.Cut)))
            .Select(p => (p.Name, Long: Math.Max(p.Box.Width, p.Box.Height) + Gap, Short: Math.Min(p.Box.Width, p.Box.Height) + Gap)).ToArray();
        ImmutableArray<string> tooLarge = [.. boxes.Where(b => b.Long > length || b.Short > width).Select(b => b.Name)];
        // First fit by decreasing height: rows along the sheet's length.
        var rows = new List<(int Sheet, double Height, double Used)>();
        var used = new List<double>();
        foreach ((string _, double along, double across) in boxes.Where(b => !tooLarge.Contains(b.Name)).OrderByDescending(b => b.Short).ThenByDescending(b => b.Long))
        {
            int row = rows.FindIndex(r => r.Height >= across && r.Used + along <= length);
            if (row >= 0)
            {
                rows[row] = rows[row] with { Used = rows[row].Used + along };
                continue;
            }
            int on = used.FindIndex(u => u + across <= width);
            if (on < 0)
            {
                on = used.Count;
                used.Add(0);
            }
            used[on] += across;
            rows.Add((on, across, along));
        }
        return new StockNeed(sheet, used.Count, tooLarge);
    }
}

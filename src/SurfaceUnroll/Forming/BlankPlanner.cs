using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Forming;

/// <summary>What a piece takes of the stock.</summary>
internal static class BlankPlanner
{
    // A shear is rated for mild steel of this tensile strength, MPa; what it takes to shear goes with strength and with the square of thickness (common practice, no source).
    private static readonly double MildSteel = Materials.Of("mild steel").Material.Tensile.Value;

    /// <summary>Size, area and mass of one blank.</summary>
    /// <param name="panel">With its cut lines.</param>
    /// <param name="stock">Sheet.</param>
    /// <param name="shop">Shear.</param>
    public static BlankNeed Of(PanelDevelopment panel, SheetStock stock, ShopSpec shop)
    {
        Box box = Box.Around(panel.Cut);
        double area = panel.Areas.Blank;
        return new BlankNeed(box.Width, box.Height, area, area * stock.Thickness * stock.Metal.Density.Value * 1e-9, stock.Thickness * Math.Sqrt(stock.Metal.Tensile.Value / MildSteel) > shop.ShearThickness);
    }
}

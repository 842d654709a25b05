using SurfaceUnroll.Forming;

namespace SurfaceUnroll.Tests.Published;

/// <summary>Gauge tables against published rows: the manufacturers' standard gauge of sheet steel, galvanized sheet, and the B&amp;S gauge of aluminium, in inches as printed.</summary>
public class GaugeTests
{
    private const double Inch = 25.4;

    [Theory]
    [InlineData(10, .1345, .1382, .1019)]
    [InlineData(12, .1046, .1084, .0808)]
    [InlineData(14, .0747, .0785, .0641)]
    [InlineData(16, .0598, .0635, .0508)]
    [InlineData(18, .0478, .0516, .0403)]
    [InlineData(20, .0359, .0396, .0320)]
    [InlineData(22, .0299, .0336, .0253)]
    [InlineData(24, .0239, .0276, .0201)]
    public void Rows_are_as_printed(int gauge, double steel, double galvanized, double aluminium)
    {
        Assert.Equal(steel, Gauges.Thickness(GaugeSystem.SheetSteel, gauge)!.Value / Inch, 1e-9);
        Assert.Equal(galvanized, Gauges.Thickness(GaugeSystem.Galvanized, gauge)!.Value / Inch, 1e-9);
        Assert.Equal(aluminium, Gauges.Thickness(GaugeSystem.Aluminium, gauge)!.Value / Inch, 1e-9);
        Assert.DoesNotContain("memory", Gauges.Source(GaugeSystem.SheetSteel, gauge), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(GaugeSystem.SheetSteel)]
    [InlineData(GaugeSystem.Galvanized)]
    [InlineData(GaugeSystem.Aluminium)]
    public void Sheet_thins_with_every_number_and_a_number_outside_the_table_has_no_thickness(GaugeSystem system)
    {
        (int first, int last) = Gauges.Range(system);
        double[] thicknesses = [.. Enumerable.Range(first, last - first + 1).Select(n => Gauges.Thickness(system, n)!.Value)];
        Assert.Equal(thicknesses.OrderDescending(), thicknesses);
        Assert.Null(Gauges.Thickness(system, first - 1));
        Assert.Null(Gauges.Thickness(system, last + 1));
    }

    // No source gives these rows: what a coating adds is the same for all sheet, .0037 or .0038 in of the rows that are published.
    [Fact]
    public void Rows_from_memory_hold_what_the_published_ones_show_of_the_coating()
    {
        (int first, int last) = Gauges.Range(GaugeSystem.SheetSteel);
        for (int n = first; n <= last; n++)
            Assert.InRange((Gauges.Thickness(GaugeSystem.Galvanized, n)!.Value - Gauges.Thickness(GaugeSystem.SheetSteel, n)!.Value) / Inch, .00365, .00385);
        Assert.Equal("from memory", Gauges.Source(GaugeSystem.SheetSteel, 11));
    }
}

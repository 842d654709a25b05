using SurfaceUnroll.Forming;

namespace SurfaceUnroll.Tests.Published;

/// <summary>Springback against a university worksheet (rolled sheet) and a German book of tables for the trade (factor kR; the headings of its columns from memory).</summary>
public class SpringbackTests
{
    // The worksheet: 20 ga (.0359 in), Ri = .5 in, Y = 40 ksi, E = 29e6 psi. The formula is free of units.
    private const double Thickness = .0359, Yield = 40e3, Modulus = 29e6, Radius = .5;

    private static readonly double[] Columns = [1, 1.6, 2.5, 4, 6.3, 10, 16, 25, 40, 63, 100];

    public static TheoryData<string, double[]> Factors => new()
    {
        { "DC01", [.99, .99, .99, .97, .96, .96, .93, .90, .85, .77, .66] },
        { "DC04", [.99, .99, .99, .98, .97, .97, .96, .94, .91, .87, .83] },
        { "stainless steel", [.99, .98, .97, .95, .93, .89, .84, .76, .63] },
        { "copper", [.98, .97, .97, .96, .95, .93, .90, .85, .79, .72, .60] },
    };

    [Fact]
    public void Rolled_radius_of_the_worksheet()
    {
        Assert.Equal(.0192105, Radius * Yield / (Modulus * Thickness), 5e-8);
        double finished = Springback.FinishedRadius(Radius, Thickness, Yield, Modulus);
        Assert.Equal(.53056, finished, 5e-6);
        Assert.Equal(.942397, Radius / finished, 5e-7);
        Assert.Equal(.47277, Springback.RollTo(Radius, Thickness, Yield, Modulus), 5e-6);
    }

    [Theory]
    [InlineData(0.01)]
    [InlineData(1)]
    [InlineData(20)]
    [InlineData(150)]
    [InlineData(2000)]
    [InlineData(1e6)]
    public void What_is_rolled_to_the_radius_asked_for_finishes_where_it_shall(double finished)
    {
        double radius = Springback.RollTo(finished, 1, 200, 210_000);
        Assert.InRange(radius, 0, finished);
        Assert.Equal(finished, Springback.FinishedRadius(radius, 1, 200, 210_000), finished * (finished < 1e5 ? 1e-11 : 1e-8));
    }

    [Fact]
    public void Sheet_that_hardly_yields_opens_flat()
    {
        // x = 1/2 at Ri = E·t/(2Y) = 525 mm.
        Assert.Equal(double.PositiveInfinity, Springback.FinishedRadius(525, 1, 200, 210_000));
        Assert.Equal(double.PositiveInfinity, Springback.FinishedRadius(9000, 1, 200, 210_000));
        Assert.True(double.IsFinite(Springback.FinishedRadius(524, 1, 200, 210_000)));
        Assert.Equal(525, Springback.RollTo(double.PositiveInfinity, 1, 200, 210_000), 1e-9);
    }

    [Theory]
    [MemberData(nameof(Factors))]
    public void Factor_kR_is_that_of_the_book_and_straight_between_its_columns(string name, double[] printed)
    {
        Material material = Materials.Of(name).Material;
        Assert.Equal(printed.Length, material.Springback.Length);
        for (int i = 0; i < printed.Length; i++) Assert.Equal(printed[i], Springback.Factor(material, Columns[i]));
        for (int i = 1; i < printed.Length; i++)
            Assert.Equal((printed[i - 1] + printed[i]) / 2, Springback.Factor(material, (Columns[i - 1] + Columns[i]) / 2)!.Value, 1e-12);
        Assert.Equal((printed[0], printed[^1]), (Springback.Factor(material, 0), Springback.Factor(material, 1000)));
        Assert.Contains("from memory", material.SpringbackSource, StringComparison.Ordinal);
    }

    [Fact]
    public void Galvanized_sheet_is_taken_as_DC01_and_says_so()
    {
        (Material bare, Material coated) = (Materials.Of("DC01").Material, Materials.Of("galvanized").Material);
        Assert.Equal(bare.Springback.AsEnumerable(), coated.Springback);
        Assert.Contains("as DC01", coated.SpringbackSource, StringComparison.Ordinal);
    }

    [Fact]
    public void A_bend_is_bent_further_by_the_factor_or_without_a_table_by_the_formula()
    {
        Assert.Equal(90 / .97, Springback.BendTo(90, Materials.Of("DC01").Material, 4, 1), 1e-12);
        Material brass = Materials.Of("brass").Material;
        Assert.Null(Springback.Factor(brass, 4));
        // By hand, Y 120 MPa, E 110 GPa: x = .004307, Ri/Rf = .98708, so formed to 3.9483; the middle of the sheet keeps its length, 90 · 4.5/4.4483.
        Assert.Equal((120.0, 110_000.0), (brass.Yield.Value, brass.Modulus.Value));
        Assert.Equal(91.046, Springback.BendTo(90, brass, 4, 1), 0.001);
        Assert.Equal(90, Springback.BendTo(90, brass, 0, 1));
    }
}

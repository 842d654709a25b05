using SurfaceUnroll.Curves;
using SurfaceUnroll.Forming;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Tests.Plates;

namespace SurfaceUnroll.Tests.Published;

/// <summary>Lengths of sharp bends against handbooks.</summary>
public class BendingTests
{
    private const double Inch = 25.4;

    private static double Degrees(double degrees) => degrees * Math.PI / 180;

    /// <summary>The channel of aircraft sheet-metal handbooks (FAA airframe handbook type): t .040, R .16, setback .2, flats .8, 1.6 and .8; allowance .27907 a bend.</summary>
    private static readonly SheetStock Channel = new("aluminium 2024-T3", 0.040 * Inch) { Bending = new BendSetup(BendRule.PerDegree, null, null) };

    [Fact]
    public void Channel_of_the_handbook_is_3_7581_wide_on_the_blank()
    {
        BendLength bend = BendAllowance.Of(Channel, 0.16 * Inch, Degrees(90));
        Assert.Equal(0.27907, bend.Allowance / Inch, 5e-6);
        Assert.Equal(0.2, bend.Setback / Inch, 1e-9);
        Assert.Equal(3.7581, (0.8 + 1.6 + 0.8) + 2 * bend.Allowance / Inch, 5e-5);
    }

    [Fact]
    public void The_channel_developed_as_a_plate_has_that_width_and_its_bends_where_the_handbook_has_them()
    {
        var side = new SideRun(
            [new SideLine(0.8 * Inch), new SideBend(Degrees(90), 0.16 * Inch), new SideLine(1.6 * Inch), new SideBend(Degrees(90), 0.16 * Inch), new SideLine(0.8 * Inch)], Degrees(-90), Vec2.Zero);
        PanelDevelopment plate = PlateJobs.Develop(PlateJobs.Bent("channel", new BentSpec([], side, null, Placement.None) { Width = 100 }), Channel);
        Assert.Equal(3.7581 * Inch, Box.Around(plate.Cut).Height, 5e-5 * Inch);
        Assert.Equal([1, 2], plate.Bends.Select(b => b.Number));
        Assert.Equal([0.8 + 0.27907 / 2, 0.8 + 1.6 + 1.5 * 0.27907], plate.Bends.Select(b => -b.Centre[0].Y / Inch).Order(), (a, b) => Math.Abs(a - b) < 1e-4);
        // Turning down, away from the outside face.
        Assert.All(plate.Bends, b => Assert.False(b.Up));
    }

    /// <summary>DIN 6935, worked in a German Tabellenbuch: β = 60°, a = 16, b = 21, r = 6, s = 5, k = 0.7 read from the chart; v = 5.77, L ≈ 31.2 (printed rounded up, 32).</summary>
    [Fact]
    public void Bend_of_the_Tabellenbuch_is_shortened_by_5_77()
    {
        var stock = new SheetStock("steel", 5) { Bending = new BendSetup(BendRule.Din6935, 0.7 / 2, null) };
        BendLength bend = BendAllowance.Of(stock, 6, Degrees(180 - 60));
        Assert.Equal(5.77, bend.Deduction, 0.005);
        Assert.Equal(31.2, 16 + 21 - bend.Deduction, 0.05);
    }

    [Theory]
    [InlineData(1.2, 0.69)] // the formula where the chart reads 0.7
    [InlineData(1, 0.65)]
    [InlineData(5, 0.9995)]
    [InlineData(5.01, 1)]
    [InlineData(0.01, 0)]
    public void K_of_DIN_6935_is_half_of_k(double ratio, double k) => Assert.Equal(0.5 * k, BendAllowance.Din6935(ratio), 0.0005);

    [Theory]
    [InlineData(0.125, 0.125, 0.44, 90, 0.2827, 0.2173)]
    public void Allowance_and_deduction_of_the_worked_example(double radius, double thickness, double k, double angle, double allowance, double deduction)
    {
        // BA = θ(R + K t) and 2(R + t) − BA, computed.
        BendLength bend = BendAllowance.Of(new SheetStock("any", thickness) { Bending = new BendSetup(BendRule.KFactor, k, null) }, radius, Degrees(angle));
        Assert.Equal(allowance, bend.Allowance, 5e-5);
        Assert.Equal(deduction, bend.Deduction, 5e-5);
    }

    [Fact]
    public void Between_90_and_165_degrees_included_the_outside_is_measured_to_where_the_faces_meet()
    {
        // DIN 6935: v = 2(r + s)·tan((180 − β)/2) − π((180 − β)/180)(r + k s/2), by hand for β = 120°, r = 10, s = 2, k = 1: 2·12·tan 30° − (π/3)·11.
        BendLength bend = BendAllowance.Of(new SheetStock("steel", 2) { Bending = new BendSetup(BendRule.Din6935, 0.5, null) }, 10, Degrees(60));
        Assert.Equal(24 * Math.Tan(Degrees(30)) - Math.PI / 3 * 11, bend.Deduction, 1e-12);
    }

    [Fact]
    public void A_measured_bend_gives_back_its_own_deduction_at_every_thickness()
    {
        foreach (double thickness in new[] { 0.7, 1, 2, 3 })
        {
            var own = new OwnBend(1.5, Degrees(90), 1.6 * thickness + 0.4);
            var stock = new SheetStock("steel", thickness) { Bending = new BendSetup(BendRule.KFactor, 0.3, own) };
            Assert.Equal(own.Deduction, BendAllowance.Of(stock, own.Radius, own.Angle).Deduction, 1e-12);
        }
    }

    [Fact]
    public void The_table_runs_on_into_the_middle_surface_at_five_thicknesses()
    {
        foreach (BendClass sheet in Enum.GetValues<BendClass>())
        {
            Assert.Equal(0.5, BendAllowance.FromTable(sheet, 5));
            Assert.Equal(0.5, BendAllowance.FromTable(sheet, 50));
            double[] k = [.. Enumerable.Range(0, 60).Select(i => BendAllowance.FromTable(sheet, 0.1 * i))];
            Assert.Equal(k.Order(), k);
        }
        // Columns of shop tables for bending in air (from memory).
        Assert.Equal([0.33, 0.38, 0.40], Enum.GetValues<BendClass>().Select(c => BendAllowance.FromTable(c, 1)));
        Assert.Equal([0.40, 0.43, 0.45], Enum.GetValues<BendClass>().Select(c => BendAllowance.FromTable(c, 3)));
    }

    /// <summary>R = c²/(8h) + h/2 (geometry; common practice in the shop).</summary>
    [Theory]
    [InlineData(240, 120, 120)]
    [InlineData(300, 40, 301.25)]
    [InlineData(200, 150, 108.33333)]
    public void Arc_from_chord_and_rise_has_the_radius_of_the_shop_formula(double chord, double rise, double radius)
    {
        Assert.Equal(radius, chord * chord / (8 * rise) + rise / 2, 1e-5);
        SpaceCurve arc = MeasuredCurve.Build(new ChordSpec(chord, rise, Placement.None), "curves.arc").Curve!;
        Assert.Equal(1 / radius, arc.AtLength(0.3 * arc.Length).CurvatureVector.Length, 1e-9);
    }
}

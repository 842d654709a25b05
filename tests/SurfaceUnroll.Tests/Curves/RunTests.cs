using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using static SurfaceUnroll.Tests.Curves.Measured;

namespace SurfaceUnroll.Tests.Curves;

public class RunTests
{
    [Fact]
    public void Arch_of_two_straights_and_a_half_circle_stands_centred_with_its_feet_at_zero()
    {
        SpaceCurve arch = Curve(Run(Line(55), Arc(120, 180), Line(55)));
        Near(110 + 120 * Math.PI, arch.Length, 1e-12);
        Near(new Vec3(0, -120, 0), arch.Start.Point, 1e-12);
        Near(new Vec3(0, 120, 0), arch.End.Point, 1e-12);
        Near(new Vec3(0, 0, 175), arch.AtLength(arch.Length / 2).Point, 1e-9);
    }

    [Fact]
    public void Run_starts_where_and_heading_as_it_is_told()
    {
        SpaceCurve level = Curve(Run(Line(10), Arc(5, -90)) with { Heading = 90 * Degree, Start = new Vec2(3, 4) });
        Assert.Equal(new Vec3(0, 3, 4), level.Start.Point);
        Near(new Vec3(0, 18, 9), level.End.Point, 1e-12);
        Near(new Vec3(0, 0, 1), level.End.Tangent, 1e-12);
    }

    [Fact]
    public void Straights_in_one_line_become_one()
    {
        SpaceCurve curve = Curve(Run(Line(10), Line(20)));
        Assert.True(Assert.Single(curve.Pieces).IsStraight);
        Near(30, curve.Length, 1e-15);
    }

    [Theory]
    [InlineData(200, 30)]
    [InlineData(200, 100)]
    [InlineData(200, 170)] // more than a half circle
    [InlineData(200, -30)]
    [InlineData(10_000, 0.01)]
    public void Arc_over_a_chord_passes_through_its_ends_and_its_rise(double chord, double rise)
    {
        SpaceCurve arc = Curve(new ChordSpec(chord, rise, Placement.None));
        double radius = chord * chord / (8 * Math.Abs(rise)) + Math.Abs(rise) / 2;
        Near(new Vec3(0, -chord / 2, 0), arc.Start.Point, 1e-15 * radius);
        Near(new Vec3(0, chord / 2, 0), arc.End.Point, 1e-15 * radius);
        Near(new Vec3(0, 0, rise), arc.Pieces[0].At(0.5).Point, 1e-15 * radius);
        Near(4 * radius * Math.Atan(2 * Math.Abs(rise) / chord), arc.Length, 1e-12);
        Near(1 / radius, arc.Pieces[0].At(0.3).CurvatureVector.Length, 1e-12);
    }

    [Fact]
    public void Closed_tube_comes_back_to_its_start()
    {
        SpaceCurve tube = Curve(Run(Arc(50, 360)));
        Near(tube.Start.Point, tube.End.Point, 1e-12);
        Near(100 * Math.PI, tube.Length, 1e-14);
        Curve(Run(Line(40), Arc(20, 180), Line(40), Arc(20, 180)));
    }

    [Fact]
    public void Run_that_crosses_itself_is_refused_with_the_place()
    {
        Notice fault = Fault(Run(Line(50), Arc(20, -270), Line(100)));
        Assert.Equal("curve-crosses-itself", fault.Code);
        // The arc turns left about a place 20 to the left of the top of the first line and ends below it, heading right: 20 down.
        Assert.Contains("up 30 mm", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Spiral_that_passes_close_by_itself_is_not_a_crossing()
    {
        // A half turn, then half turns of growing radius: neighbouring turns stay 2 mm apart.
        SpaceCurve spiral = Curve(Run(Arc(50, 180), Arc(51, 180), Arc(52, 180), Arc(53, 180), Arc(54, 180)));
        Near(260 * Math.PI, spiral.Length, 1e-12);
    }

    [Theory]
    [InlineData(0, 5, 90, ".run[0]")]
    [InlineData(5, -1, 90, ".run[1]")]
    [InlineData(5, 5, 0, ".run[1]")]
    [InlineData(5, 5, 361, ".run[1]")]
    [InlineData(double.NaN, 5, 90, ".run[0]")]
    public void Steps_that_cannot_be_laid_are_told_with_their_place(double line, double radius, double turn, string part) =>
        Assert.Equal("curves.test" + part, Fault(Run(Line(line), Arc(radius, turn))).Where);

    [Fact]
    public void Run_without_steps_is_refused() => Assert.Equal("curve-too-few-points", Fault(Run()).Code);

    [Theory]
    [InlineData(0, 5)]
    [InlineData(-3, 5)]
    [InlineData(double.PositiveInfinity, 5)]
    [InlineData(5, double.NaN)]
    public void Chords_that_cannot_be_are_refused(double chord, double rise) =>
        Assert.Equal("curves.test.chord", Fault(new ChordSpec(chord, rise, Placement.None)).Where);
}

using FsCheck.Xunit;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Fitness;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Lofting;
using SurfaceUnroll.Patterns;

namespace SurfaceUnroll.Tests.Lofting;

public class BendOnlyMatchingTests
{
    private const double Degree = Math.PI / 180;

    [Theory]
    [InlineData(120, 55, 25, 120, 175)]
    [InlineData(120, 0.5, 25, 120, 175)]
    [InlineData(120, 55, 0, 120, 175)]
    [InlineData(120, 55, -20, 120, 60)]
    [InlineData(120, 300, 25, 120, 175)]
    [InlineData(120, 55, 60, 120, 400)]
    public void Arch_to_hoop_that_meet_only_bends_and_even_spacing_would_twist(double radius, double leg, double lean, double rearRadius, double rearLeg)
    {
        SpaceCurve arch = Shapes.Arch(radius, leg, lean), hoop = Shapes.Hoop(rearRadius, rearLeg);
        TwistSummary twist = SheetFitness.Twist(Loft.Between(arch, hoop, ElementMatching.BendOnly));
        // 0.01° is asked for; a root found is good to rounding.
        Assert.InRange(twist.Max, 0, 1e-9);
        Assert.True(SheetFitness.EvenTwist(arch, hoop).Max > 2 * Degree);
    }

    [Fact]
    public void Lattice_size_does_not_change_the_branch()
    {
        SpaceCurve arch = Shapes.Arch(), hoop = Shapes.Hoop();
        double[] areas = [.. new[] { 40, 120, 240 }.Select(n => Blank.Of(Loft.Between(arch, hoop, ElementMatching.BendOnly, n)).FlatArea)];
        Assert.Equal(areas[1], areas[0], 1e-6 * areas[1]);
        Assert.Equal(areas[1], areas[2], 1e-6 * areas[1]);
    }

    [Property(MaxTest = 12)]
    public bool Moving_and_scaling_the_job_moves_and_scales_the_blank(byte a, byte b, byte c)
    {
        Vec3 axis = new Vec3(a - 127.3, b - 120.1, c - 99.7).Unit;
        double scale = Math.Pow(10, (a - 128) / 85.0);
        Func<Vec3, Vec3> turn = Shapes.Rotation(axis, b / 40.0);
        SpaceCurve Move(SpaceCurve curve) => Shapes.Moved(curve, v => scale * turn(v), new Vec3(3 * c, -b, a));
        Blank still = Blank.Of(Loft.Between(Shapes.Arch(), Shapes.Hoop(), ElementMatching.BendOnly));
        Blank moved = Blank.Of(Loft.Between(Move(Shapes.Arch()), Move(Shapes.Hoop()), ElementMatching.BendOnly));
        // Strips differ (their count follows size), the areas do not: both are integrals to about 1e-9.
        return Math.Abs(moved.FlatArea / (scale * scale * still.FlatArea) - 1) < 1e-7;
    }

    [Fact]
    public void Swapping_left_and_right_mirrors_a_lopsided_sheet()
    {
        SpaceCurve front = Shapes.HalfCircle(100, 0), rear = AnalyticPiece.Arc(new Vec3(300, 40, 20), -Shapes.Y, Shapes.Z, 180, 0.1, 2.6);
        Blank blank = Blank.Of(Loft.Between(front, rear, ElementMatching.BendOnly));
        SpaceCurve Mirror(SpaceCurve curve) => Shapes.Moved(curve.Reversed(), v => v with { Y = -v.Y }, default);
        Blank mirror = Blank.Of(Loft.Between(Mirror(front), Mirror(rear), ElementMatching.BendOnly));
        Assert.Equal(blank.FlatArea, mirror.FlatArea, 1e-6 * blank.FlatArea);
        Assert.Equal(blank.FlatLines.First().Rear.X, -mirror.FlatLines.Last().Rear.X, 1e-6);
        Assert.Equal(blank.FlatLines.Last().Rear.Y, mirror.FlatLines.First().Rear.Y, 1e-6);
    }

    [Fact]
    public void Square_corners_get_fans_and_square_sides_flat_triangles()
    {
        (SpaceCurve square, SpaceCurve circle) = Shapes.SquareToRound();
        RuledSheet sheet = Loft.Between(square, circle, ElementMatching.BendOnly);
        Assert.InRange(SheetFitness.Twist(sheet).Max, 0, 1e-9);
        double fans = sheet.Strips.Where(s => s.FrontStill).Sum(s => (s.Right.Rear - s.Left.Rear).Length);
        // Every fan stands on a corner, and the fans take the whole circle (chords here: a little shorter).
        Assert.InRange(fans, 0.99999 * 100 * Math.PI, 100 * Math.PI);
        Assert.All(sheet.Strips.Where(s => s.FrontStill), s => Assert.Equal(100, Math.Abs(s.Left.Front.Y), 1e-9));
        Assert.All(sheet.Strips.Where(s => s.RearStill), s => Assert.True(s.Left.Normal.AngleTo(s.Right.Normal) < 1e-12));
    }

    [Fact]
    public void Skew_lines_have_no_bend_only_sheet()
    {
        SpaceCurve a = AnalyticPiece.Polyline(new(0, -100, -50), new(0, 100, 50)), b = AnalyticPiece.Polyline(new(200, -100, 50), new(200, 100, -50));
        StrainSummary strain = SheetFitness.Strain(Loft.Between(a, b, ElementMatching.BendOnly));
        Assert.Equal(Verdict.NeedsStretching, SheetFitness.Judge(strain, 0.2));
    }

    [Fact]
    public void Hyperbolic_paraboloid_twists_by_the_angle_of_its_end_lines_at_the_middle()
    {
        SpaceCurve a = AnalyticPiece.Polyline(new(0, -100, -50), new(0, 100, 50)), b = AnalyticPiece.Polyline(new(200, -100, 50), new(200, 100, -50));
        RuledSheet even = Loft.Between(a, b, ElementMatching.Even);
        // Half way both edges stand square to the line and lie at ±atan(1/2) to the level: closed form.
        Assert.Equal(2 * Math.Atan(0.5), SheetFitness.Twist(even).Max, 1e-9);
        Assert.Equal(1 - Math.Cos(Math.Atan(0.5)), SheetFitness.Strain(even).MaxShrink, 1e-9);
    }

    [Fact]
    public void Lines_never_cross_on_either_edge()
    {
        foreach (RuledSheet sheet in new[]
        {
            Loft.Between(Shapes.Arch(), Shapes.Hoop(), ElementMatching.BendOnly),
            Loft.Between(Shapes.Arch(), Shapes.Hoop(95, 220), ElementMatching.BendOnly),
            Loft.Between(Shapes.Arch(), Shapes.Hoop(), ElementMatching.Even),
        })
        {
            foreach (Strip s in sheet.Strips)
            {
                Assert.True(s.FrontStill || (s.Right.Front - s.Left.Front).Dot(s.Middle.FrontTangent) > 0);
                Assert.True(s.RearStill || (s.Right.Rear - s.Left.Rear).Dot(s.Middle.RearTangent) > 0);
            }
        }
    }
}

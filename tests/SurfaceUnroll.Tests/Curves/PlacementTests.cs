using System.Collections.Immutable;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using static SurfaceUnroll.Tests.Curves.Measured;

namespace SurfaceUnroll.Tests.Curves;

public class PlacementTests
{
    private static readonly Vec3 Right = new(0, 1, 0), Up = new(0, 0, 1);

    private static readonly PointsSpec Hook = Points(Fit.Smooth, false, (-90, 0), (-70, 60), (-10, 85), (40, 70), (95, 10));

    [Fact]
    public void Inverse_takes_back_what_was_placed_and_mirrored()
    {
        var frame = Frame.Of(Measured.At(new Vec3(40, -7, 12), 11, 23, 37)).After(Frame.MirrorLeftRight);
        var p = new Vec3(3, 5, -8);
        Measured.Near(p, frame.Inverse.Point(frame.Point(p)), 1e-12);
        Measured.Near(p, frame.Point(frame.Inverse.Point(p)), 1e-12);
    }

    [Fact]
    public void Unplaced_profile_stands_upright_across_the_job() =>
        Assert.Equal(new Vec3(0, 3, 4), Frame.Of(Placement.None).Point(new Vec3(0, 3, 4)));

    [Fact]
    public void Lean_of_90_lays_the_profile_flat_with_up_pointing_aft()
    {
        Frame flat = Frame.Of(At(lean: 90));
        Assert.Equal(new Vec3(1, 0, 0), flat.Direction(Up));
        Assert.Equal(Right, flat.Direction(Right));
        Assert.All(Curve(Hook with { At = At(new Vec3(0, 0, 7), lean: 90) }).Samples(), s => Assert.Equal(7, s.Point.Z));
    }

    [Fact]
    public void Lean_of_25_tips_up_towards_aft() =>
        Near(new Vec3(Math.Sin(25 * Degree), 0, Math.Cos(25 * Degree)), Frame.Of(At(lean: 25)).Direction(Up), 1e-15);

    [Fact]
    public void Roll_raises_the_right_end()
    {
        Assert.Equal(Up, Frame.Of(At(roll: 90)).Direction(Right));
        Near(new Vec3(0, Math.Cos(0.1), Math.Sin(0.1)), Frame.Of(new Placement(Vec3.Zero, 0.1, 0, 0)).Direction(Right), 1e-15);
    }

    [Fact]
    public void Turn_swings_the_right_end_forward() => Assert.Equal(new Vec3(-1, 0, 0), Frame.Of(At(turn: 90)).Direction(Right));

    [Fact]
    public void Roll_comes_first_then_lean_then_turn()
    {
        // Right is raised to up, up is tipped aft, aft is swung to the right.
        Assert.Equal(Right, Frame.Of(At(roll: 90, lean: 90, turn: 90)).Direction(Right));
        Near(new Vec3(10, 21, 30), Frame.Of(At(new Vec3(10, 20, 30), roll: 90, lean: 90, turn: 90)).Point(Right), 1e-12);
    }

    [Theory]
    [InlineData(-270)]
    [InlineData(180)]
    [InlineData(450)]
    [InlineData(-720)]
    public void Quarter_turns_are_exact(double angle)
    {
        (double sin, double cos) = QuarterTurns.SinCos(angle * Degree);
        Assert.Equal(Math.Round(Math.Sin(angle * Degree)), sin);
        Assert.Equal(Math.Round(Math.Cos(angle * Degree)), cos);
    }

    [Fact]
    public void Points_in_space_are_placed_by_the_same_rotations()
    {
        SpaceCurve curve = Curve(Space(Fit.Straight, new(0, 0, 0), new(0, 10, 0)) with { At = At(new Vec3(1, 2, 3), turn: 90) });
        Assert.Equal(new Vec3(-9, 2, 3), curve.End.Point);
    }

    [Property(MaxTest = 60)]
    public Property Measuring_in_another_place_changes_neither_length_nor_curvature() =>
        Prop.ForAll(Gen.Choose(-3600, 3600).Select(a => a / 10.0).Four().ToArbitrary(), angles =>
        {
            (double roll, double lean, double turn, double offset) = angles;
            Placement at = At(new Vec3(offset, -2 * offset, offset / 3), roll, lean, turn);
            CurveSpec[] specs =
            [
                Hook, new ChordSpec(200, 60, default), Run(Line(20), Arc(50, 90)),
                new PlanSideSpec(Hook, [new(0, 0), new(40, 30), new(90, 10)], Fit.Straight, default),
            ];
            return specs.All(spec => IsCongruent(Curve(spec), Curve(spec with { At = at })));
        });

    // Rounding grows with the distance from the origin, at most 1 m here: a few 1e-13 of that.
    private static bool IsCongruent(SpaceCurve a, SpaceCurve b)
    {
        ImmutableArray<CurveSample> x = a.Samples(), y = b.Samples();
        return Math.Abs(a.Length - b.Length) < 1e-9
            && x.Zip(y).All(p => Math.Abs(p.First.CurvatureVector.Length - p.Second.CurvatureVector.Length) < 1e-12)
            && x.Zip(y).All(p => Math.Abs((p.First.Point - x[0].Point).Length - (p.Second.Point - y[0].Point).Length) < 1e-9);
    }
}

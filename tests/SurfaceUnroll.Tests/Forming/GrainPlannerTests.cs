using SurfaceUnroll.Forming;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using static SurfaceUnroll.Tests.Plates.PlateJobs;

namespace SurfaceUnroll.Tests.Forming;

/// <summary>Grain, mass and the reach of bends.</summary>
public class GrainPlannerTests
{
    [Theory]
    [InlineData(100.0, false)]
    [InlineData(2.9, true)]
    public void Grain_of_a_rolled_half_pipe_runs_round_it_and_counts_only_where_it_is_tight(double radius, bool matters)
    {
        GrainAdvice grain = Half(radius).Panels[0].Plan!.Grain;
        // Square to lines that run fore and aft: across the blank.
        Assert.Equal(1, Math.Abs(grain.Along.X), 1e-6);
        // It counts below three times the least radius, which is half a thickness of 1.5 mm for mild steel.
        Assert.Equal(matters, grain.Matters);
        Assert.Equal(0.75, grain.MinimumRadius, 1e-12);
    }

    [Fact]
    public void A_full_roll_outweighs_a_lip_along_its_end()
    {
        // Rolled through 180 degrees over 300 mm of line, against a lip through 90 degrees over the 63 mm of an end.
        PanelDevelopment panel = Half(20).Panels[0];
        BendLine lip = new(1, "front", 0.5 * Math.PI, 0.5 * Math.PI, 0.5 * Math.PI, 1.5, true, new BendLength(0.4, 3, 2, 1, "test"), [new Vec2(-31, 0), new Vec2(31, 0)], []);
        GrainAdvice grain = GrainPlanner.Of(panel with { Bends = [lip] }, new SheetStock("mild steel", 1.5));
        Assert.Equal(1, Math.Abs(grain.Along.X), 1e-6);
    }

    [Fact]
    public void Mass_is_area_times_thickness_times_density()
    {
        BlankNeed blank = Half(100).Panels[0].Plan!.Blank;
        // Half a pipe of radius 100 at mid-thickness, 300 long, 1.5 thick, 7850 kg/m³.
        Assert.Equal(Math.PI * 100 * 300 * 1.5 * 7850e-9, blank.Mass, 1e-4 * blank.Mass);
    }

    [Theory]
    [InlineData(99, true)]
    [InlineData(101, false)]
    public void A_bend_in_two_runs_is_measured_against_the_brake_from_end_to_end(double brake, bool tooLong)
    {
        BendLine left = new(1, null, 0.5, 0.5, 0.5, 2, true, new BendLength(0.4, 3, 2, 1, "test"), [new Vec2(0, 0), new Vec2(30, 0)], []), right = left with { Centre = [new Vec2(60, 0), new Vec2(100, 0)] };
        Assert.Equal(tooLong, BendPlanner.Of(left, [left, right], Steel, ShopSpec.Unknown with { BrakeLength = brake }).IsTooLong);
    }

    private static Development Half(double radius)
    {
        RunSpec Arc(double aft) => new([new ArcStep(radius, Math.PI)], 0, null, new Placement(new Vec3(aft, 0, 0), 0, 0, 0));
        return Run(Job(new SheetStock("mild steel", 1.5), [("front", Arc(0)), ("rear", Arc(300))], new PanelSpec("cover", ["front", "rear"], ElementMatching.BendOnly)) with { Measured = MeasuredFace.Middle });
    }
}

using SurfaceUnroll.Forming;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using static SurfaceUnroll.Tests.Plates.PlateJobs;

namespace SurfaceUnroll.Tests.Forming;

public class TackPlannerTests
{
    [Fact]
    public void Ends_come_first_then_the_middle_and_within_a_round_neighbours_never_follow_each_other()
    {
        for (int gaps = 1; gaps <= 300; gaps++)
        {
            (int Place, int Round)[] order = [.. TackPlanner.Order(gaps, closed: false)];
            Assert.Equal(Enumerable.Range(0, gaps + 1), order.Select(o => o.Place).Order());
            Assert.Equal([0, gaps], order.Take(2).Select(o => o.Place));
            if (gaps > 1) Assert.Equal(gaps / 2, order[2].Place);
            foreach (((int place, int round), (int next, int nextRound)) in order.Skip(2).Zip(order.Skip(3)))
            {
                Assert.True(nextRound >= round);
                if (nextRound == round) Assert.True(Math.Abs(next - place) >= 2, $"{place}, {next} of {gaps}");
            }
            // Each but the first lies between two that are tacked already.
            for (int i = 2; i < order.Length; i++)
            {
                int[] before = [.. order.Take(i).Select(o => o.Place)];
                Assert.Contains(before, b => b < order[i].Place);
                Assert.Contains(before, b => b > order[i].Place);
            }
        }
    }

    [Fact]
    public void A_closed_joint_has_no_second_end()
    {
        for (int gaps = 1; gaps <= 100; gaps++)
        {
            (int Place, int Round)[] order = [.. TackPlanner.Order(gaps, closed: true)];
            Assert.Equal(Enumerable.Range(0, gaps), order.Select(o => o.Place).Order());
            Assert.Equal(0, order[0].Place);
        }
    }

    [Fact]
    public void Stitches_are_skipped_and_each_is_laid_once()
    {
        for (int gaps = 4; gaps <= 100; gaps++)
        {
            int[] order = [.. TackPlanner.Skipped(gaps)];
            Assert.Equal(Enumerable.Range(0, gaps), order.Order());
            // 1, 4, 7 … then 2, 5, 8 … (welding order of thin sheet, reference page).
            Assert.All(order.Zip(order.Skip(1)), p => Assert.True(Math.Abs(p.Second - p.First) > 1, $"{p.First}, {p.Second} of {gaps}"));
        }
    }

    [Fact]
    public void Of_several_runs_every_round_goes_over_all_before_the_next()
    {
        TackPlan plan = TackPlanner.Of("A", [(100, false, s => new Vec3(s, 0, 0)), (60, true, s => new Vec3(0, s, 0))], 20);
        // Five gaps and three: six places, and three more round the closed one.
        Assert.Equal(9, plan.Tacks.Length);
        Assert.Equal(Enumerable.Range(1, 9), plan.Tacks.Select(t => t.Number));
        Assert.Equal(plan.Tacks.Select(t => t.Round).Order(), plan.Tacks.Select(t => t.Round));
        Assert.Equal([0, 5, 2, 6, 7], plan.Tacks.Where(t => t.Round == 0).Select(t => t.Place));
        Assert.Equal(Enumerable.Range(0, 9), plan.Tacks.Select(t => t.Place).Order());
        Assert.Equal(160, plan.Stitches.Sum(s => s.From - s.To), 1e-9);
    }

    [Theory]
    [InlineData(0.9, null, 31.5)]
    [InlineData(3, null, 100)]
    [InlineData(0.5, null, 20)]
    [InlineData(0.9, 47.0, 47)]
    public void No_gap_is_wider_than_the_pitch_and_tacks_lie_on_the_joint(double thickness, double? asked, double pitch)
    {
        var arch = new RunSpec([new LineStep(55), new ArcStep(120, Math.PI), new LineStep(55)], 0, null, Placement.None);
        JointSpec butt = new(null, [new EdgeName("a", "arch"), new EdgeName("b", "arch")], JointKind.Butt, 0, 0, null, null, null);
        Development done = Run(Job(new SheetStock("mild steel", thickness), [("arch", arch)], Flat2("a", "arch"), Flat2("b", "arch")).Joined(butt) with { Shop = ShopSpec.Unknown with { TackPitch = asked } });
        TackPlan plan = Assert.Single(done.Tacks);
        Assert.Equal(pitch, plan.Pitch, 1e-9);
        double[] at = [.. plan.Tacks.OrderBy(t => t.Place).Select(t => t.At)];
        Assert.Equal((0.0, done.Joints[0].Mates[0].Length), (at[0], at[^1]), (p, q) => Math.Abs(p.Item1 - q.Item1) + Math.Abs(p.Item2 - q.Item2) < 1e-6);
        Assert.All(at.Zip(at.Skip(1)), p => Assert.InRange(p.Second - p.First, 0, pitch + 1e-9));
        Assert.Equal(Enumerable.Range(1, at.Length), plan.Tacks.Select(t => t.Number));
        // On the arch: 120 about (0, 55), or on the legs at ±120.
        Assert.All(plan.Tacks, t => Assert.Equal(120, t.Formed.Z <= 55 ? Math.Abs(t.Formed.Y) : new Vec2(t.Formed.Y, t.Formed.Z - 55).Length, 0.02));
        // Each stitch runs back, and all together cover the joint.
        Assert.All(plan.Stitches, s => Assert.True(s.To < s.From));
        Assert.Equal(at[^1], plan.Stitches.Sum(s => s.From - s.To), 1e-6);
    }
}

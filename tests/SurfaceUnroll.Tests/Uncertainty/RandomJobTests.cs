using System.Collections.Immutable;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Uncertainty;

namespace SurfaceUnroll.Tests.Uncertainty;

/// <summary>The fast band against random jobs. The whole comparison, 20 jobs of 2,000 each, is the benchmark <c>-- error</c>.</summary>
public class RandomJobTests
{
    private const int Count = 500;

    // The standard error of a normal sample of n is known to 1/√(2n) (JCGM 101:2008): four of those.
    private static readonly double Sampling = 4 / Math.Sqrt(2.0 * Count);

    [Fact]
    public void Fast_band_is_that_of_random_jobs()
    {
        (double[] fast, double[] chance, double covered) = Compared(ErrorJobs.Arch(ErrorJobs.Own(0.4, ("points[3]", 1.0))), "plate");
        foreach ((double f, double c) in fast.Zip(chance)) Assert.Equal(f, c, Sampling * f + 0.005);
        // 95 of 100, each place on its own; places go together, so that their mean is off by as much as one: √(0.95·0.05/500) = 1 %, times four.
        Assert.Equal(0.95, covered, 0.04);
    }

    [Fact]
    public void Slopes_as_a_control_take_chance_out_of_random_jobs()
    {
        // Of an edge that follows its readings in proportion 40 jobs alone tell a standard error to 11 %, and with the control all but what is not in proportion.
        MovedJobs jobs = Moved(ErrorJobs.Arch(ErrorJobs.All(0.3)));
        EdgeSlopes slopes = LinearErrors.Of(jobs, default)["plate"];
        ImmutableArray<double[]?> moves = RandomErrors.Moves(jobs, "plate", 40, 5, default);
        foreach ((double known, double found) in slopes.InProportion.Zip(RandomErrors.Standard(moves, slopes, 5))) Assert.Equal(known, found, 0.02 * known + 0.003);
        // A square that the slopes know nothing of is left as it is: x + b·x² has the mean square 1 + 3b².
        var bent = new EdgeSlopes([0], [[1.0]], [0], true);
        ImmutableArray<double[]?> squares = [.. Enumerable.Range(0, 4000).Select(k => Chance.Normal(9, k, 0)).Select(x => new[] { x + 0.5 * x * x })];
        // The standard error of the mean of x³ + x⁴/4 over 4,000 is √(15 + 105/16 − 9/16)/√4000 = 0.072; four of that, halved by the root of 1.75.
        Assert.Equal(Math.Sqrt(1.75), Assert.Single(RandomErrors.Standard(squares, bent, 9)), 0.11);
    }

    [Fact]
    public void Same_jobs_come_on_one_core_and_on_many()
    {
        Job job = ErrorJobs.Arch(ErrorJobs.All(0.5));
        BlankError first = ErrorJobs.Develop(job), second = ErrorJobs.Develop(job);
        Assert.Equal(first.Edges.SelectMany(e => e.Places), second.Edges.SelectMany(e => e.Places));
        MovedJobs jobs = Moved(job);
        // Backwards and one after the other, against side by side.
        double[]?[] alone = [.. Enumerable.Range(0, 6).Reverse().Select(k => jobs.Moves(jobs.Of("plate").Select(r => (r, jobs.Readings[r].Error * Chance.Normal(7, k, r))), ["plate"]).GetValueOrDefault("plate")).Reverse()];
        Assert.Equal(alone, RandomErrors.Moves(jobs, "plate", 6, 7, default));
    }

    [Fact]
    public void Chance_is_standard_normal()
    {
        double[] draws = [.. Enumerable.Range(0, 40_000).Select(i => Chance.Normal(3, i / 200, i % 200))];
        // Standard errors at n = 40,000: of the mean 1/√n = 0.005, of the variance √(2/n) = 0.007; the share past 1.96 is 5 % ± 0.11 %. Four of each.
        Assert.Equal(0, draws.Average(), 0.02);
        Assert.Equal(1, draws.Average(d => d * d), 0.03);
        Assert.Equal(0.05, draws.Count(d => Math.Abs(d) > BlankError.Coverage) / 40_000.0, 0.0045);
        // Neighbours have nothing to do with each other.
        Assert.Equal(0, draws.Zip(draws.Skip(1), (a, b) => a * b).Average(), 0.02);
    }

    [Theory]
    [InlineData(0.1, true)]
    [InlineData(0.5, false)]
    public void Edges_out_of_proportion_are_told_from_those_in_it(double bend, bool holds)
    {
        // x + b·x² of a standard normal x has the mean square 1 + 3b²: its root is past 1.05 from b = 0.19 on.
        var slopes = new EdgeSlopes([0], [[1.0, 1.0]], [3 * bend * bend, 0], true);
        Assert.Equal(holds, LinearErrors.Hold(slopes));
        Assert.False(LinearErrors.Hold(slopes with { IsWhole = false }));
    }

    [Fact]
    public void Errors_with_which_there_is_no_piece_are_said_not_to_tell()
    {
        // A straight of 3 mm, read to 3.5 mm, comes out below nothing in 20 of 100 jobs.
        var rim = new RunSpec([new LineStep(3), new ArcStep(40, Math.PI), new LineStep(30)], 0, null, Placement.None) { Errors = ErrorJobs.Own(0.2, ("run[0]", 3.5)) };
        Development development = Developer.Develop(ErrorJobs.Job([("rim", rim)], ErrorJobs.Plate("rim")));
        Assert.Null(development.Panels[0].Error);
        Assert.Contains(development.Notices, n => n.Code == "error-not-told");
    }

    [Fact]
    public void Ends_that_meet_on_the_part_meet_with_other_readings_too()
    {
        // A plate round which two curves go: with ends that come apart it would get a slit or cross itself.
        RunSpec arch = ErrorJobs.Arc(100, Math.PI, ErrorJobs.All(0.5));
        var sill = new PointsSpec([new(new(-100, 0), false), new(new(100, 0), false)], false, Fit.Straight, Placement.None) { Errors = ErrorJobs.All(0.5) };
        MovedJobs jobs = Moved(ErrorJobs.Job([("arch", arch), ("sill", sill)], ErrorJobs.Plate("arch", "sill")));
        ImmutableArray<double[]?> moves = RandomErrors.Moves(jobs, "plate", 40, 1, default);
        Assert.DoesNotContain(null, moves);
    }

    private static MovedJobs Moved(Job job) => new(job, Developer.Net(job, (_, curves) => curves, default), default);

    private static (double[] Fast, double[] Chance, double Covered) Compared(Job job, string panel)
    {
        MovedJobs jobs = Moved(job);
        int places = jobs.Places(panel).Count;
        double[] fast = LinearErrors.Of(jobs, default)[panel].Standard;
        double[][] moves = [.. RandomErrors.Moves(jobs, panel, Count, 11, default).OfType<double[]>()];
        Assert.Equal(Count, moves.Length);
        return (fast, RandomErrors.Standard(moves, places), moves.Average(m => m.Zip(fast, (d, s) => Math.Abs(d) <= BlankError.Coverage * s ? 1.0 : 0).Average()));
    }
}

using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Uncertainty;

namespace SurfaceUnroll.Tests.Uncertainty;

/// <summary>Bands that can be written down: the law of propagation of uncertainty (JCGM 100:2008, 5.1.2) on shapes whose blanks have formulas.</summary>
public class ClosedFormTests
{
    // Central differences over one standard error leave out third derivatives, which vanish here; the edges are drawn within 0.01 mm, and half the difference of two of them is off by less.
    private const double Drawn = 0.02;

    [Fact]
    public void Disc_is_off_by_the_error_of_its_radius_all_round()
    {
        // The radius alone: a turn read exactly, the place of a blank on the table taken out.
        Job job = ErrorJobs.Job([("rim", ErrorJobs.Arc(100, Math.Tau, ErrorJobs.Own(0.5, ("run[0].turn", 0.0))))], ErrorJobs.Plate("rim"));
        Assert.All(ErrorJobs.Bands(ErrorJobs.Develop(job), "rim"), band => Assert.Equal(BlankError.Coverage * 0.5, band, Drawn));
    }

    [Fact]
    public void Rolled_plate_is_off_by_the_errors_of_radius_and_turn_in_length_and_of_width_in_width()
    {
        const double radius = 150, error = 0.8;
        double turn = 0.75 * Math.PI;
        BlankError found = ErrorJobs.Develop(ErrorJobs.Job([], ErrorJobs.Bent(new SideRun([new SideArc(radius, turn)], 0, Vec2.Zero), 300, error)));
        // L = R·φ, so u²(L) = (φ·u)² + (R·u/R)²; either end of the blank has half of it, once it lies as well as it can.
        double length = 0.5 * BlankError.Coverage * error * Math.Sqrt(turn * turn + 1), width = 0.5 * BlankError.Coverage * error;
        Assert.All(new[] { "front", "rear" }.SelectMany(e => ErrorJobs.Bands(found, e)), band => Assert.Equal(length, band, Drawn));
        Assert.All(new[] { "left", "right" }.SelectMany(e => ErrorJobs.Bands(found, e)), band => Assert.Equal(width, band, Drawn));
        Assert.Equal(ErrorMethod.Linear, found.Method);
    }

    [Fact]
    public void Only_readings_with_an_error_count()
    {
        // A straight-sided plate, 400 by 200, of which one corner alone was read badly.
        ProfilePoint[] points = [.. new[] { (-200.0, 0.0), (-200, 200), (200, 200), (200, 0), (-200, 0) }.Select(p => new ProfilePoint(new Vec2(p.Item1, p.Item2), false))];
        var rim = new PointsSpec([.. points], false, Fit.Straight, Placement.None) { Errors = ErrorJobs.Own(0, ("points[2]", 1.0)) };
        BlankError found = ErrorJobs.Develop(ErrorJobs.Job([("rim", rim)], ErrorJobs.Plate("rim")));
        Assert.Equal(["point 3 of “rim” (across)", "point 3 of “rim” (up)"], found.Readings.Select(r => r.Words).Order());
        Assert.Equal(1, found.Readings.Sum(r => r.Share), 1e-12);
        // No blank is worse off than its worst reading: part of it is a place on the table.
        Assert.InRange(found.Largest, 0.3 * BlankError.Coverage, BlankError.Coverage);
    }

    [Fact]
    public void Band_is_in_proportion_to_the_errors()
    {
        BlankError one = ErrorJobs.Develop(ErrorJobs.Arch(ErrorJobs.All(0.2))), two = ErrorJobs.Develop(ErrorJobs.Arch(ErrorJobs.All(0.4)));
        // What is left of second order of 0.4 mm on a part of 240 mm is far below a hundredth of the band.
        foreach ((double a, double b) in ErrorJobs.Bands(one, "arch").Zip(ErrorJobs.Bands(two, "arch"))) Assert.Equal(2 * a, b, 0.02 * b);
    }

    [Fact]
    public void Mirrored_points_move_both_halves_alike()
    {
        BlankError found = ErrorJobs.Develop(ErrorJobs.Arch(ErrorJobs.Own(0.3, ("points[2]", 1.0))));
        double[] bands = [.. ErrorJobs.Bands(found, "arch")];
        foreach ((double left, double right) in bands.Zip(bands.Reverse())) Assert.Equal(left, right, 0.01 * left + 1e-4);
        Assert.StartsWith("curves.arch.points[2]", found.Readings[0].Where, StringComparison.Ordinal);
        // The crown stands on the centreline, so that only its height was read.
        Assert.DoesNotContain(found.Readings, r => r.Where == "curves.arch.points[0][0]");
        Assert.Equal(9, found.Readings.Length);
    }

    [Theory]
    [InlineData(120, 55, 300, 120)]
    [InlineData(3, 80, 300, 80)]
    [InlineData(3, 80, 0, 3)]
    public void Turn_of_an_arc_is_read_at_its_end_or_between_the_straights_beside_it(double radius, double before, double after, double lever)
    {
        RunStep[] steps = [new LineStep(before), new ArcStep(radius, 1.5), .. after > 0 ? new RunStep[] { new LineStep(after) } : []];
        PartReading<CurveSpec> turn = CurveReadings.Of(new RunSpec([.. steps], 0, null, Placement.None) { Errors = ErrorJobs.All(0.5) }).Single(r => r.Part == "run[1].turn");
        Assert.Equal(0.5 / lever, turn.Error, 1e-12);
    }

    [Fact]
    public void Exact_readings_make_no_band() => Assert.Null(Developer.Develop(ErrorJobs.Arch(ReadingErrors.None)).Panels[0].Error);
}

using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;
using SurfaceUnroll.Uncertainty;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Tests.Uncertainty;

/// <summary>What is left on along an edge, in words and in the cut line.</summary>
public class LeaveTests
{
    private static ImmutableArray<BandPlace> Row(params double[] bands) => [.. bands.Select((b, i) => new BandPlace(20.0 * i, new Vec2(20.0 * i, 0), new Vec2(0, 1), b))];

    [Theory]
    [InlineData(LengthUnit.Millimetre, 1)]
    [InlineData(LengthUnit.Inch, 25.4 / 16)]
    public void Steps_are_whole_units_and_nowhere_narrower_than_the_band(LengthUnit units, double unit)
    {
        ImmutableArray<BandPlace> row = Row([.. Enumerable.Range(0, 31).Select(i => 1.2 + 1.1 * Math.Sin(0.3 * i))]);
        ImmutableArray<LeaveStep> steps = LeaveSteps.Of(row, units);
        Assert.Equal((0, 600.0), (steps[0].From, steps[^1].To));
        Assert.All(steps, s => Assert.Equal(Math.Round(s.Width / unit), s.Width / unit, 1e-9));
        // No stretch is too short to scribe.
        Assert.All(steps, s => Assert.True(s.To - s.From >= 60));
        foreach (BandPlace place in row) Assert.All(steps.Where(s => s.From <= place.At && place.At <= s.To), s => Assert.True(s.Width >= place.Band - 1e-9));
        Assert.All(steps.Zip(steps.Skip(1)), pair => Assert.Equal(pair.First.To, pair.Second.From));
    }

    // Between two narrower ones a short stretch widens the one that is nearest to it: less metal is left on for nothing.
    [Fact]
    public void Short_stretch_joins_the_neighbour_nearest_in_width()
    {
        double[] bands = [.. Enumerable.Repeat(0.9, 10), 4.9, 4.9, .. Enumerable.Repeat(3.9, 10)];
        ImmutableArray<LeaveStep> steps = LeaveSteps.Of(Row(bands), LengthUnit.Millimetre);
        Assert.Equal([1.0, 5.0], steps.Select(s => s.Width));
        Assert.InRange(steps[0].To, 160, 180);
    }

    [Fact]
    public void Band_within_a_scribed_line_asks_for_nothing() =>
        Assert.Equal(0, Assert.Single(LeaveSteps.Of(Row(0.05, 0.02, 0.09, 0.01, 0.03), LengthUnit.Millimetre)).Width);

    [Fact]
    public void Cut_line_leaves_what_the_band_asks_for_and_no_more()
    {
        Job job = ErrorJobs.Job([("front", Arch(0, ErrorJobs.All(0.3))), ("rear", Arch(300, ErrorJobs.Own(0.3, ("run[0]", 1.5))))], new PanelSpec("cover", ["front", "rear"], ElementMatching.BendOnly) { AutoTrim = true });
        PanelDevelopment panel = Developer.Develop(job).Panels[0];
        var cut = new CutOutline(panel.Cut);
        foreach (EdgeError edge in panel.Error!.Edges)
        {
            double most = edge.Leave.Max(s => s.Width);
            // Away from corners, where the allowances of two edges are mitred.
            foreach (BandPlace place in edge.Places[1..^1])
            {
                double left = cut.Depth(place.Flat);
                Assert.InRange(left, place.Band - 0.02, most + 0.02);
            }
        }
        EdgeAllowance rear = panel.Allowances.Single(a => a.Edge == "rear");
        Assert.Equal(panel.Error.Edges.Single(e => e.Name == "rear").Leave, rear.Steps);
        Assert.Contains("left on", string.Join(' ', PatternDrawing.Of(panel, job, []).Letterings.Select(t => t.Text)), StringComparison.Ordinal);
    }

    [Fact]
    public void Trim_that_should_follow_a_band_needs_one()
    {
        Job job = ErrorJobs.Arch(ReadingErrors.None);
        job = job with { Joints = [new JointSpec(null, [new EdgeName("plate", "arch")], JointKind.Trim, 0, 0, null, null, null) { Auto = true }] };
        Notice notice = Assert.Single(Developer.Develop(job).Notices, n => n.Severity == Severity.Error);
        Assert.Equal(("trim-auto-no-band", "joints[0].extra"), (notice.Code, notice.Where));
    }

    [Fact]
    public void Words_say_how_much_and_where()
    {
        PanelDevelopment cover = Samples.HalfCylinder().Panels[0];
        var edge = new EdgeError("front", Row(0.4, 0.4, 1.6, 1.6), [new LeaveStep(0, 140, 1), new LeaveStep(140, 300, 2)]);
        Assert.Equal("leave 1 mm (0–140 mm from the left), 2 mm (from 140 mm)", ErrorWords.Leave(edge, cover, LengthUnit.Millimetre));
        Assert.Equal("±0.4 to ±1.6 mm", ErrorWords.Band(edge, LengthUnit.Millimetre));
        Assert.Equal("cut to the line", ErrorWords.Leave(edge with { Leave = [new LeaveStep(0, 300, 0)] }, cover, LengthUnit.Millimetre));
    }

    private static RunSpec Arch(double x, ReadingErrors errors) => ErrorJobs.Arc(100, Math.PI, errors) with { At = Placement.None with { Origin = new Vec3(x, 0, 0) } };
}

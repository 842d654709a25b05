using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Tests.Uncertainty;

/// <summary>Lengths taken off finished pieces against what was wanted.</summary>
public class BuiltTests
{
    // A flat rectangle of 400 by 300, and a half pipe of radius 100, 300 long.
    private static readonly Job Sheet = ErrorJobs.Job([("front", Straight(0)), ("rear", Straight(300))], Loft), Pipe = ErrorJobs.Job([("front", Arch(0)), ("rear", Arch(300))], Loft);

    private static PanelSpec Loft => new("cover", ["front", "rear"], ElementMatching.BendOnly);

    [Theory]
    [InlineData("rear", 0, 3)]
    [InlineData("right", -2, 0)]
    [InlineData("front", 0, 4)]
    public void Edge_that_is_off_is_found_with_how_much(string edge, double first, double last)
    {
        BuiltCheck check = Check(Sheet, (panel, letters) => OnBlank(panel, letters, Moved(panel, edge, first, last)));
        Assert.Equal(BuiltFinding.Edges, check.Finding);
        EdgeCorrection found = Assert.Single(check.Corrections);
        Assert.Equal(edge, found.Edge);
        // The tape errs by nothing here; what keeps amounts at nothing that no reading tells takes off less than 1 %, and a long edge that turns lengthens by less.
        Assert.Equal(first, found.AtFirst, 0.05);
        Assert.Equal(last, found.AtLast, 0.05);
    }

    [Fact]
    public void Blank_that_is_too_long_is_so_at_one_end_or_the_other()
    {
        BuiltCheck check = Check(Sheet, (panel, letters) => OnBlank(panel, letters, Moved(panel, "rear", 2.5, 2.5)));
        Assert.True(check.Either);
        Assert.Equal(["front", "rear"], check.Corrections.Select(c => c.Edge).Order());
        Assert.All(check.Corrections, c => Assert.Equal((2.5, 2.5), (Math.Round(c.AtFirst, 1), Math.Round(c.AtLast, 1))));
        Assert.Contains("Take 2.5 mm off the edge rear all along.", Assert.Single(BuiltWords.Sentences(check, Developer.Develop(Sheet).Panels[0], LengthUnit.Millimetre)), StringComparison.Ordinal);
    }

    [Fact]
    public void Blank_as_drawn_is_within_and_one_wrong_reading_does_not_tell_an_edge()
    {
        Assert.Equal(BuiltFinding.Within, Check(Sheet, (panel, letters) => OnBlank(panel, letters, p => p)).Finding);
        BuiltCheck one = Check(Sheet, (panel, letters) => [.. OnBlank(panel, letters, p => p).Take(1).Select(r => r with { Length = r.Length + 5 })]);
        Assert.Equal(BuiltFinding.Untold, one.Finding);
        Assert.False(one.Differences[0].IsWithin);
    }

    [Fact]
    public void Decimal_point_out_of_place_is_taped_again_and_no_edge_blamed()
    {
        Development development = Developed(Sheet, (panel, letters) => [.. OnBlank(panel, letters, p => p).Select((r, i) => i == 0 ? r with { Length = 0.1 * r.Length } : r)]);
        Assert.Equal(BuiltFinding.Untold, Assert.Single(development.Built).Finding);
        BuiltReading wrong = development.Built[0].Differences[0].Reading;
        Assert.Contains($"Tape {wrong.From}–{wrong.To} again first", Assert.Single(development.Notices, n => n.Code == "built-beyond").Mend, StringComparison.Ordinal);
    }

    [Fact]
    public void Mouth_that_is_open_on_a_right_blank_is_the_forming()
    {
        BuiltCheck check = Check(Pipe, (panel, letters) =>
        [
            .. OnBlank(panel, letters, p => p),
            .. panel.Plan!.Tapes.Where(t => t.How == TapeRun.Taut).Take(1).Select(t => new BuiltReading("built.part", BuiltKind.Part, t.From, t.To, t.OnPart + 8)),
        ]);
        Assert.Equal(BuiltFinding.Forming, check.Finding);
        Assert.Contains("forming", Assert.Single(BuiltWords.Sentences(check, Developer.Develop(Pipe).Panels[0], LengthUnit.Millimetre)), StringComparison.Ordinal);
    }

    [Fact]
    public void Errors_of_the_readings_are_part_of_what_a_length_may_be_off()
    {
        // The front edge of a bent plate is as long as the plate is wide, and as badly known.
        Job job = ErrorJobs.Job([], ErrorJobs.Bent(new SidePoints([new(new(0, 0), false, null), new(new(300, 0), false, null)], Fit.Straight), 400, 0.8));
        job = job with { Built = [new BuiltSpec("plate", [new BuiltReading("built.edges.front", BuiltKind.Edge, "front", "", 401.5)], 0.5)] };
        BuiltDifference difference = Assert.Single(Assert.Single(Developer.Develop(job).Built).Differences);
        Assert.Equal((1.5, 0.8), (Math.Round(difference.Off, 6), Math.Round(difference.Design, 6)));
        // 1.96·√(0.5² + 0.8²) = 1.85; by the tape alone, ±0.98, it would be beyond.
        Assert.True(difference.IsWithin);
        Assert.False((difference with { Design = 0 }).IsWithin);
    }

    [Fact]
    public void Letters_and_lengths_that_are_not_known_are_said()
    {
        PanelDevelopment panel = Developer.Develop(Sheet).Panels[0];
        string letter = panel.Plan!.Marks[0].Letter;
        Job job = Sheet with { Built = [new BuiltSpec("cover", [new BuiltReading("built.blank.a-z", BuiltKind.Blank, letter, "z", 100), new BuiltReading("built.sheet.a-b", BuiltKind.Sheet, letter, panel.Plan.Marks[1].Letter, 100)], 0.5)] };
        Notice[] notices = [.. Developer.Develop(job).Notices.Where(n => n.Code == "built-unknown")];
        Assert.Equal(["built.blank.a-z", "built.sheet.a-b"], notices.Select(n => n.Where));
        Assert.Contains("letters on its pattern are", notices[0].Mend, StringComparison.Ordinal);
        // Of what was not compared it is not said that it is within.
        Assert.Empty(Developer.Develop(job).Built);
    }

    // A sheet whose curves meet at the left: that edge has no length to be measured, whatever else is beyond.
    [Fact]
    public void Edge_without_length_is_told_and_the_others_compared()
    {
        CurveSpec front = new PointsSpec([new(new Vec2(0, 0), false), new(new Vec2(400, 0), false)], false, Fit.Straight, Placement.None);
        CurveSpec rear = new SpaceSpec([new Vec3(0, 0, 0), new Vec3(300, 400, 0)], Fit.Straight, Placement.None);
        Job job = ErrorJobs.Job([("front", front), ("rear", rear)], Loft);
        PanelDevelopment panel = Developer.Develop(job).Panels[0];
        Assert.Equal(0, panel.FindEdge("left")!.FlatLength);
        BuiltReading Edge(string name, double length) => new($"built.edges.{name}", BuiltKind.Edge, name, "", length);
        Development done = Developer.Develop(job with { Built = [new BuiltSpec("cover", [Edge("left", 3), Edge("front", 405), Edge("rear", 500), Edge("right", 300)], 0.3)] });
        Assert.Equal("built.edges.left", Assert.Single(done.Notices, n => n.Code == "built-unknown").Where);
        Assert.Equal(3, Assert.Single(done.Built).Differences.Length);
    }

    [Fact]
    public void Words_say_what_to_take_off_where()
    {
        BuiltCheck check = Check(Sheet, (panel, letters) => OnBlank(panel, letters, Moved(panel, "rear", 0, 3)));
        string sentence = Assert.Single(BuiltWords.Sentences(check, Developer.Develop(Sheet).Panels[0], LengthUnit.Millimetre));
        Assert.StartsWith("Take 3 mm off the edge rear at its right end (", sentence, StringComparison.Ordinal);
        (string[] headings, ImmutableArray<string[]> rows) = BuiltWords.Table(check, LengthUnit.Millimetre);
        Assert.All(rows, row => Assert.Equal(headings.Length, row.Length));
        Assert.Contains(rows, row => row[^1] == "BEYOND");
    }

    // All lengths between the corners, by a tape that errs by 0.3 mm.
    private static BuiltCheck Check(Job job, Func<PanelDevelopment, TapeMark[], IEnumerable<BuiltReading>> readings) => Assert.Single(Developed(job, readings).Built);

    private static Development Developed(Job job, Func<PanelDevelopment, TapeMark[], IEnumerable<BuiltReading>> readings)
    {
        PanelDevelopment panel = Developer.Develop(job).Panels[0];
        Vec2[] corners = [.. panel.Edges.SelectMany(e => new[] { e.Flat[0], e.Flat[^1] })];
        TapeMark[] marks = [.. panel.Plan!.Marks.Where(m => corners.Any(c => (c - m.Flat).Length < 1e-6))];
        Assert.Equal(4, marks.Length);
        return Developer.Develop(job with { Built = [new BuiltSpec("cover", [.. readings(panel, marks)], 0.3)] });
    }

    private static IEnumerable<BuiltReading> OnBlank(PanelDevelopment panel, TapeMark[] marks, Func<Vec2, Vec2> moved) =>
        marks.SelectMany((a, i) => marks.Skip(i + 1).Select(b => new BuiltReading($"built.blank.{a.Letter}-{b.Letter}", BuiltKind.Blank, a.Letter, b.Letter, (moved(a.Flat) - moved(b.Flat)).Length)));

    // Where the corners of a rectangle stand if one edge stands out: its ends slide along the edges beside it.
    private static Func<Vec2, Vec2> Moved(PanelDevelopment panel, string edge, double first, double last)
    {
        BlankEdge own = panel.FindEdge(edge)!;
        (Vec2 start, Vec2 end) = (own.Flat[0], own.Flat[^1]);
        Vec2 middle = 0.25 * panel.Edges.Select(e => 0.5 * (e.Flat[0] + e.Flat[^1])).Aggregate((a, b) => a + b), left = (end - start).Unit.Left;
        Vec2 outward = left.Dot(start - middle) > 0 ? left : -left;
        return p => (p - start).Length < 1e-6 ? p + first * outward : (p - end).Length < 1e-6 ? p + last * outward : p;
    }

    private static PointsSpec Straight(double x) => new([new(new(-200, 0), false), new(new(200, 0), false)], false, Fit.Straight, Placement.None with { Origin = new Vec3(x, 0, 0) });

    private static RunSpec Arch(double x) => ErrorJobs.Arc(100, Math.PI, ReadingErrors.None) with { At = Placement.None with { Origin = new Vec3(x, 0, 0) } };
}

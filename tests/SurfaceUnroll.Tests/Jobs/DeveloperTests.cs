using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Tests.Jobs;

public class DeveloperTests
{
    private const double Degree = Math.PI / 180;

    private static Job JobOf(CurveSpec front, CurveSpec rear, MeasuredFace face = MeasuredFace.Middle, double thickness = 0, ElementMatching elements = ElementMatching.BendOnly) => new(
        "Test", LengthUnit.Millimetre, new SheetStock("mild steel", thickness), face,
        [new NamedCurve("front", front), new NamedCurve("rear", rear)],
        [new PanelSpec("cover", ["front", "rear"], elements)], PaperSpec.Default);

    private static RunSpec Arch(double leanDegrees = 25) => new(
        [new LineStep(55), new ArcStep(120, Math.PI), new LineStep(55)], 0, null, Placement.None with { Lean = leanDegrees * Degree });

    private static PointsSpec Hoop(bool reversed = false)
    {
        ProfilePoint[] right = [P(0, 295), P(62, 272), P(95, 210), P(120, 0)];
        Placement flat = Placement.None with { Lean = 90 * Degree };
        if (!reversed) return new PointsSpec([.. right], true, Fit.Smooth, flat);
        return new PointsSpec([.. right.Reverse(), .. right.Skip(1).Select(p => P(-p.Place.X, p.Place.Y))], false, Fit.Smooth, flat);

        static ProfilePoint P(double x, double y) => new(new Vec2(x, y), false);
    }

    [Fact]
    public void Tail_cover_of_the_job_file_example_only_bends()
    {
        Development result = Developer.Develop(JobOf(Arch(), Hoop(), MeasuredFace.Outside, 0.9));
        PanelDevelopment cover = Assert.Single(result.Panels);
        Assert.Equal(Verdict.BendsOnly, cover.Verdict);
        // The job asks for 0.01° wherever a torsal line exists.
        Assert.InRange(cover.Twist.Max, 0, 0.01 * Degree);
        Assert.True(cover.EvenTwist.Max > 10 * Degree);
        Assert.True(OutlineCheck.IsSimple(cover.Cut));
        Assert.DoesNotContain(result.Notices, n => n.Severity != Severity.Note);
    }

    [Fact]
    public void Cover_is_drawn_forward_up_outside_up_left_on_the_left()
    {
        PanelDevelopment cover = Developer.Develop(JobOf(Arch(), Hoop())).Panels[0];
        ElementLine left = cover.Elements[0], middle = cover.Elements[cover.Elements.Length / 2];
        Assert.True(left.FormedFront.Y < 0 && left.Front.X < 0);
        Assert.Equal(0, middle.Front.X, 1e-6);
        Assert.Equal(0, middle.Rear.X, 1e-6);
        Assert.True(middle.Front.Y > middle.Rear.Y);
        Assert.True(middle.Normal.Z > 0.5);
        double area = 0;
        for (int i = 0; i < cover.Cut.Length; i++) area += 0.5 * cover.Cut[i].Cross(cover.Cut[(i + 1) % cover.Cut.Length]);
        Assert.Equal(cover.FlatArea, area, 1e-4 * area);
    }

    [Fact]
    public void Numbered_lines_run_from_one_end_to_the_other_in_mirrored_pairs()
    {
        PanelDevelopment cover = Developer.Develop(JobOf(Arch(), Hoop())).Panels[0];
        ElementLine[] drawn = [.. cover.Elements.Where(e => e.Number > 0)];
        Assert.Equal(Enumerable.Range(1, drawn.Length), drawn.Select(e => e.Number));
        Assert.Equal(cover.Elements[0], drawn[0]);
        Assert.Equal(cover.Elements[^1], drawn[^1]);
        for (int i = 0; i < drawn.Length; i++) Assert.Equal(drawn[i].Front.X, -drawn[^(i + 1)].Front.X, 1e-6);
    }

    [Fact]
    public void Curves_measured_in_opposite_directions_are_turned_round_with_a_note()
    {
        Development forward = Developer.Develop(JobOf(Arch(), Hoop())), backward = Developer.Develop(JobOf(Arch(), Hoop(reversed: true)));
        Notice note = Assert.Single(backward.Notices);
        Assert.Equal(("curve-turned-round", Severity.Note, "curves.rear"), (note.Code, note.Severity, note.Where));
        Assert.Equal(forward.Panels[0].FlatArea, backward.Panels[0].FlatArea, 1e-6 * forward.Panels[0].FlatArea);
    }

    [Fact]
    public void A_sheet_that_turns_inside_out_is_refused_with_the_place()
    {
        // The rear chord stands on its head below the front one, so evenly spaced lines cross half way.
        var front = new ChordSpec(200, 60, Placement.None);
        var rear = new ChordSpec(200, 60, new Placement(new Vec3(0, 0, 30), 100 * Degree, 0, 0));
        Development result = Developer.Develop(JobOf(front, rear, elements: ElementMatching.Even));
        Notice error = Assert.Single(result.Notices, n => n.Severity == Severity.Error);
        Assert.Equal(("element-lines-cross", "panels[0]"), (error.Code, error.Where));
        Assert.Contains("from the left end of the front edge", error.Message, StringComparison.Ordinal);
        Assert.Empty(result.Panels);
    }

    [Fact]
    public void A_blank_that_would_lie_over_itself_is_refused_with_the_place_to_split()
    {
        // Two turns of a helix tangent surface: each turn takes 254.558° of a flat ring.
        Development result = Developer.Develop(JobOf(Helix(10), Helix(40)));
        Notice error = Assert.Single(result.Notices, n => n.Severity == Severity.Error);
        Assert.Equal("blank-overlaps-itself", error.Code);
        Assert.Contains("Split", error.Mend!, StringComparison.Ordinal);

        static SpaceSpec Helix(double along) => new(
            [.. Enumerable.Range(0, 161).Select(i =>
            {
                double t = i * Math.PI / 40, k = along / Math.Sqrt(2);
                return new Vec3(40 * Math.Cos(t) - k * Math.Sin(t), 40 * Math.Sin(t) + k * Math.Cos(t), 40 * t + k);
            })],
            Fit.Smooth, Placement.None);
    }

    // All but a corner is a bend too tight, and no tip of a fan.
    [Theory]
    [InlineData(1)]
    [InlineData(0.01)]
    public void A_bend_tighter_than_the_sheet_is_refused(double radius)
    {
        var tight = new RunSpec([new LineStep(50), new ArcStep(radius, Math.PI / 2), new LineStep(50)], 0, null, Placement.None);
        Development result = Developer.Develop(JobOf(tight, tight with { At = new Placement(new Vec3(100, 0, 0), 0, 0, 0) }, MeasuredFace.Outside, 3));
        Assert.Equal("bend-tighter-than-sheet", Assert.Single(result.Notices, n => n.Severity == Severity.Error).Code);
    }

    [Fact]
    public void A_bend_sharper_than_five_thicknesses_is_warned_of()
    {
        var sharp = new RunSpec([new LineStep(50), new ArcStep(6, Math.PI / 2), new LineStep(50)], 0, null, Placement.None);
        Development result = Developer.Develop(JobOf(sharp, sharp with { At = new Placement(new Vec3(100, 0, 0), 0, 0, 0) }, MeasuredFace.Outside, 2));
        Assert.Equal("sharp-bend", Assert.Single(result.Notices).Code);
    }

    [Fact]
    public void A_sheet_that_cannot_only_bend_says_so_in_plain_words()
    {
        var a = new SpaceSpec([new(0, -100, -50), new(0, 100, 50)], Fit.Straight, Placement.None);
        var b = new SpaceSpec([new(200, -100, 50), new(200, 100, -50)], Fit.Straight, Placement.None);
        Development result = Developer.Develop(JobOf(a, b));
        Assert.Equal(Verdict.NeedsStretching, result.Panels[0].Verdict);
        Notice warning = Assert.Single(result.Notices);
        Assert.Equal(Severity.Warning, warning.Severity);
        Assert.Contains("cannot be made by bending only", warning.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_curve_that_no_panel_uses_is_noted()
    {
        Job job = JobOf(Arch(), Hoop());
        Development result = Developer.Develop(job with { Curves = job.Curves.Add(new NamedCurve("spare", Arch())) });
        Assert.Equal("curve-unused", Assert.Single(result.Notices).Code);
    }

    [Fact]
    public void Every_fault_of_every_panel_is_found_at_once()
    {
        var tight = new RunSpec([new LineStep(50), new ArcStep(1, Math.PI / 2), new LineStep(50)], 0, null, Placement.None);
        Job job = JobOf(tight, tight with { At = new Placement(new Vec3(100, 0, 0), 0, 0, 0) }, MeasuredFace.Outside, 3);
        job = job with { Panels = [job.Panels[0], job.Panels[0] with { Name = "twin" }] };
        Assert.Equal(["panels[0]", "panels[1]"], Developer.Develop(job).Notices.Where(n => n.Severity == Severity.Error).Select(n => n.Where));
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns.CutPaths;
using SurfaceUnroll.Tests.Files.JobFiles;

namespace SurfaceUnroll.Tests.Patterns.CutPaths;

public class KerfTests
{
    // What an offset may miss by, mm.
    private const double Exact = 0.01;

    private static readonly ImmutableArray<Vec2> Plate = [new(0, 0), new(200, 0), new(200, 100), new(0, 100)];

    [Theory]
    [InlineData(0.2)]
    [InlineData(3)]
    [InlineData(10)]
    public void Round_outlines_grow_and_round_openings_shrink_by_half_the_kerf(double kerf)
    {
        Stroke[] cuts = Cut(kerf, Circle(new Vec2(0, 0), 80), Circle(new Vec2(10, 20), 15));
        Assert.Equal(2, cuts.Length);
        // The opening first: the piece comes free with its outline.
        Assert.All(PathRuler.Dense(cuts[0]), p => Assert.Equal(15 - kerf / 2, (p - new Vec2(10, 20)).Length, Exact));
        Assert.All(PathRuler.Dense(cuts[1]), p => Assert.Equal(80 + kerf / 2, p.Length, Exact));
        Assert.All(cuts, c => Assert.Equal(2, c.Points.Length));
    }

    [Theory]
    [InlineData(0.2)]
    [InlineData(5)]
    public void Corners_of_rectangles_stay_corners(double kerf)
    {
        Stroke[] cuts = Cut(kerf, Plate, [new(50, 30), new(50, 60), new(120, 60), new(120, 30)]);
        Assert.Equal((70 - kerf) * (30 - kerf), PathRuler.Area(cuts[0].Points), 1e-6);
        Assert.Equal((200 + kerf) * (100 + kerf), PathRuler.Area(cuts[1].Points), 1e-6);
        Assert.All(cuts, c => Assert.True(c.Points.Length == 4 && c.Bulges.IsEmpty));
    }

    [Fact]
    public void No_place_of_the_line_comes_nearer_to_the_piece_than_half_the_kerf()
    {
        // A tip of 10° and an inner corner of 40°.
        ImmutableArray<Vec2> piece = [new(0, 0), new(200, 0), new(60, 24.7), new(95, 120), new(40, 60), new(0, 120)];
        Vec2[] line = PathRuler.Dense(Assert.Single(Cut(4, piece)));
        // The tip is cut off at three half kerfs; the ends of that cut stand (2 − 6·sin(5°)) / cos(5°) beside its middle.
        double widest = Math.Sqrt(6 * 6 + Math.Pow((2 - 6 * Math.Sin(Math.PI / 36)) / Math.Cos(Math.PI / 36), 2));
        Assert.All(line, p => Assert.InRange(PathRuler.Distance(p, piece), 2 - Exact, widest + Exact));
    }

    [Fact]
    public void A_moved_demo_outline_lies_half_a_kerf_away_all_round()
    {
        Stroke finished = CutFittingTests.Demo("jobs/trike-tail-cover.json", CuttingSpec.Default)[0][^1];
        Stroke moved = CutFittingTests.Demo("jobs/trike-tail-cover.json", CuttingSpec.Default with { Kerf = 1.5 })[0][^1];
        Vec2[] line = PathRuler.Dense(finished);
        double[] breaks = PathRuler.Breaks(moved);
        // Both are fitted within 0.02 mm; at its two corners it runs on, farther out.
        foreach (Vec2 p in PathRuler.Dense(moved).Where(p => !moved.Points.Where((_, i) => breaks[i] > 0.1).Any(corner => (corner - p).Length < 3)))
            Assert.Equal(0.75, PathRuler.Distance(p, line), 2 * CutPathFit.Tolerance + Exact);
        Assert.InRange(moved.Points.Length, 4, 60);
    }

    [Fact]
    public void An_opening_narrower_than_the_kerf_is_left_out_and_a_notch_that_closes_is_cut_where_it_is_wide()
    {
        Assert.Single(Cut(3, Plate, Circle(new Vec2(50, 50), 1.4)));
        // A notch with a mouth of 2 mm that widens to 30.
        ImmutableArray<Vec2> notched = [new(0, 0), new(200, 0), new(200, 100), new(101, 100), new(101, 80), new(115, 80), new(115, 50), new(85, 50), new(85, 80), new(99, 80), new(99, 100), new(0, 100)];
        Stroke[] cuts = Cut(3, notched);
        Assert.Equal(2, cuts.Length);
        Assert.Equal(27 * 27, PathRuler.Area(cuts[0].Points), 1e-6);
        Assert.Equal(203 * 103, PathRuler.Area(cuts[1].Points), 1e-6);
    }

    [Theory]
    [InlineData(0.2, 0)]
    [InlineData(7, 5)]
    public void Openings_that_close_are_told_with_their_panel(double kerf, int holes)
    {
        Job job = Fixtures.Read("jobs/bench-hood.json").Job!;
        Notice[] notices = [.. Developer.Develop(job with { Cutting = CuttingSpec.Default with { Kerf = kerf } }).Notices.Where(n => n.Code == "kerf-closes-opening")];
        Notice[] closed = [.. notices.Where(n => n.Message.Contains("left out", StringComparison.Ordinal))];
        Assert.Equal(holes, closed.Length);
        Assert.All(notices, n => Assert.True(n.Where.StartsWith("panels[", StringComparison.Ordinal) && n.Mend is not null && n.Severity == Severity.Warning));
        Assert.Equal(kerf > 1, notices.Length > closed.Length);
    }

    [Fact]
    public void The_kerf_stands_in_the_drawing_only_where_there_is_one()
    {
        var drawing = new Drawing("", [new Stroke(Role.Cut, Plate, Closed: true)], []);
        Assert.Empty(CutFitting.Of(drawing, CuttingSpec.Default).Letterings);
        Lettering note = Assert.Single(CutFitting.Of(drawing, CuttingSpec.Default with { Kerf = 0.25 }).Letterings);
        Assert.Equal(Role.Note, note.Role);
        Assert.Contains("0.25 mm", note.Text, StringComparison.Ordinal);
    }

    private static ImmutableArray<Vec2> Circle(Vec2 centre, double radius) => [.. Enumerable.Range(0, 720).Select(i => centre + radius * Vec2.FromAngle(Math.Tau * i / 720))];

    private static Stroke[] Cut(double kerf, params ImmutableArray<Vec2>[] loops) =>
        [.. CutFitting.Of(new Drawing("", [.. loops.Select(loop => new Stroke(Role.Cut, loop, Closed: true))], []), CuttingSpec.Default with { Kerf = kerf }).Strokes];
}

using System.Collections.Immutable;
using FsCheck.Xunit;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Patterns;
using SurfaceUnroll.Patterns.CutPaths;
using SurfaceUnroll.Tests.Files.JobFiles;

namespace SurfaceUnroll.Tests.Patterns.CutPaths;

public class CutFittingTests
{
    private const double Tolerance = 0.02;

    // What is no corner, radians: over 20 mm it leads 0.02 mm astray. The rest is rounding.
    private const double Smooth = 1e-3 + 1e-9;

    public static TheoryData<string> Demos => [.. Fixtures.Good.Where(name => name.StartsWith("jobs/", StringComparison.Ordinal) && !name.Contains("inch", StringComparison.Ordinal))];

    [Theory]
    [MemberData(nameof(Demos))]
    public void Cut_lines_of_the_demos_are_followed_within_the_tolerance_both_ways(string name)
    {
        Development development = Developer.Develop(Fixtures.Read(name).Job!);
        foreach (PanelDevelopment panel in development.Panels)
        {
            Stroke[] exact = Cuts(PatternDrawing.Of(panel, development.Job, development.Joints)), cuts = Cuts(CutFitting.Of(PatternDrawing.Of(panel, development.Job, development.Joints), CuttingSpec.Default));
            Assert.Equal(exact.Length, cuts.Length);
            foreach ((Stroke loop, Stroke path) in exact.Skip(1).Append(exact[0]).Zip(cuts))
            {
                Assert.InRange(PathRuler.Apart(PathRuler.Dense(path), loop.Points), 0, Tolerance);
                Assert.InRange(path.Points.Length, 2, loop.Points.Length);
                CheckDirections(path, loop.Points);
            }
        }
    }

    [Fact]
    public void Outline_of_the_tail_cover_takes_at_most_sixty_segments()
    {
        Stroke outline = Assert.Single(Demo("jobs/trike-tail-cover.json", CuttingSpec.Default)[0]);
        Assert.InRange(outline.Points.Length, 4, 60);
        Assert.Equal(2, PathRuler.Breaks(outline).Count(b => b > Smooth));
    }

    [Fact]
    public void A_round_hole_is_two_half_circles()
    {
        Vec2 centre = new(40, -300);
        Stroke path = Fit([.. Enumerable.Range(0, 75).Select(i => centre + 3.25 * Vec2.FromAngle(-Math.Tau * i / 75))]);
        Assert.Equal([-1.0, -1.0], path.Bulges.AsEnumerable());
        Assert.All(path.Points, p => Assert.Equal(3.25, (p - centre).Length, 1e-9));
    }

    [Fact]
    public void A_slot_is_two_lines_and_two_arcs()
    {
        Vec2[] End(double x, double from) => [.. Enumerable.Range(0, 41).Select(i => new Vec2(x, 0) + 10 * Vec2.FromAngle(from + Math.PI * i / 40))];
        Stroke path = Fit([.. End(20, -Math.PI / 2), .. End(-20, Math.PI / 2)]);
        Assert.Equal([0, 0, 1, 1], path.Bulges.Select(b => Math.Round(b, 9)).Order());
        Assert.All(PathRuler.Breaks(path), b => Assert.InRange(b, 0, 1e-9));
    }

    [Fact]
    public void A_rectangle_with_round_corners_is_four_lines_and_four_arcs()
    {
        Vec2[] Corner(double x, double y, double from) => [.. Enumerable.Range(0, 21).Select(i => new Vec2(x, y) + 4 * Vec2.FromAngle(from + Math.PI / 2 * i / 20))];
        Stroke path = Fit([.. Corner(30, -20, -Math.PI / 2), .. Corner(30, 20, 0), .. Corner(-30, 20, Math.PI / 2), .. Corner(-30, -20, Math.PI)]);
        Assert.Equal(4, path.Bulges.Count(b => b == 0));
        Assert.Equal(4, path.Bulges.Count(b => Math.Abs(b - Math.Tan(Math.PI / 8)) < 1e-9));
    }

    [Fact]
    public void Straight_edges_are_one_line_each_however_many_places_they_have()
    {
        Vec2[] corners = [new(0, 0), new(200, 0), new(150, 90), new(-10, 70)];
        Stroke path = Fit([.. corners.SelectMany((c, i) => Enumerable.Range(0, 50).Select(k => Vec2.Lerp(c, corners[(i + 1) % 4], k / 50.0)))]);
        Assert.Empty(path.Bulges);
        Assert.Equal(corners.OrderBy(p => p.X), path.Points.OrderBy(p => p.X));
    }

    [Property(MaxTest = 60)]
    public void Random_smooth_loops_are_followed_smoothly(int a, int b, int c)
    {
        static double Unit(int n) => (Math.Abs((long)n) % 1000 - 500) / 500.0;
        double Radius(double t) => 150 + 25 * Unit(a) * Math.Cos(2 * t + Unit(b)) + 12 * Unit(b) * Math.Cos(3 * t + Unit(c)) + 4 * Unit(c) * Math.Cos(5 * t + Unit(a));
        ImmutableArray<Vec2> loop = [.. Enumerable.Range(0, 1200).Select(i => Math.Tau * i / 1200).Select(t => Radius(t) * Vec2.FromAngle(t))];
        Stroke path = Fit(loop);
        Assert.InRange(PathRuler.Apart(PathRuler.Dense(path), loop), 0, Tolerance);
        Assert.All(PathRuler.Breaks(path), angle => Assert.InRange(angle, 0, Smooth));
        // A biarc misses by about a change of curvature times the cube of its length over 324: far from as many as there are places.
        Assert.InRange(path.Points.Length, 2, 80);
    }

    [Fact]
    public void The_box_of_a_drawing_goes_round_its_arcs()
    {
        var circle = new Stroke(Role.Cut, [new Vec2(-3, 4), new Vec2(3, -4)], Closed: true) { Bulges = [1, 1] };
        Box box = new Drawing("", [circle], []).Bounds;
        Assert.All(new[] { box.Max.X, box.Max.Y, -box.Min.X, -box.Min.Y }, side => Assert.Equal(5, side, 1e-9));
    }

    internal static Stroke Fit(ImmutableArray<Vec2> loop) => CutFitting.Of(new Drawing("", [new Stroke(Role.Cut, loop, Closed: true)], []), CuttingSpec.Default).Strokes.Single();

    /// <summary>The cut lines of each panel of a demo job.</summary>
    internal static Stroke[][] Demo(string name, CuttingSpec cutting)
    {
        Development development = Developer.Develop(Fixtures.Read(name).Job!);
        return [.. development.Panels.Select(p => Cuts(CutFitting.Of(PatternDrawing.Of(p, development.Job, development.Joints), cutting)))];
    }

    private static Stroke[] Cuts(Drawing drawing) => [.. drawing.Strokes.Where(s => s is { Role: Role.Cut, Closed: true })];

    // A break of direction stands where the exact line has a corner, by as much; and a sharp corner of the line is one of the path.
    private static void CheckDirections(Stroke path, ImmutableArray<Vec2> loop)
    {
        const double like = 2 * Math.PI / 180, sharp = 20 * Math.PI / 180;
        int n = loop.Length;
        double Turn(int i) => PathRuler.Angle(loop[i] - loop[(i + n - 1) % n], loop[(i + 1) % n] - loop[i]);
        double[] breaks = PathRuler.Breaks(path);
        for (int k = 0; k < breaks.Length; k++)
        {
            if (breaks[k] <= Smooth) continue;
            int at = Enumerable.Range(0, n).MinBy(i => (loop[i] - path.Points[k]).Length);
            Assert.InRange((loop[at] - path.Points[k]).Length, 0, 1e-6);
            Assert.Equal(Turn(at), breaks[k], like);
        }
        foreach (int i in Enumerable.Range(0, n).Where(i => Turn(i) > sharp))
        {
            int at = Enumerable.Range(0, path.Points.Length).MinBy(k => (path.Points[k] - loop[i]).Length);
            Assert.InRange((loop[i] - path.Points[at]).Length, 0, 1e-6);
            Assert.Equal(Turn(i), breaks[at], like);
        }
    }
}

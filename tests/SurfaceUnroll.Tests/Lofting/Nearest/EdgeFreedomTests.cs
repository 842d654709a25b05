using System.Collections.Immutable;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Fitness;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Lofting;
using SurfaceUnroll.Lofting.Nearest;

namespace SurfaceUnroll.Tests.Lofting.Nearest;

public class EdgeFreedomTests
{
    // The limit set for this tool.
    private const double Torsal = 0.01 * Math.PI / 180;

    public static TheoryData<string> Disturbed =>
        ["cover, bump at the side", "cover, dent at the side", "cover, bump in the middle", "cover, bump on a leg", "cone, dent", "cone, dented edge stays"];

    [Theory]
    [MemberData(nameof(Disturbed))]
    public void Disturbed_edge_goes_back_to_where_the_sheet_only_bends_by_no_more_than_it_was_disturbed(string name)
    {
        (SpaceCurve still, SpaceCurve moved) = DisturbedEdges.Of(name);
        Assert.True(SheetFitness.Twist(Loft.Between(still, moved, ElementMatching.BendOnly)).Max > 50 * Torsal, "the bump twists the sheet");
        FreedomResult found = EdgeFreedom.Find(still, moved, EdgePlane.Of(moved)!.Value, 3.5);
        Assert.Equal(FreedomOutcome.Found, found.Outcome);
        Assert.InRange(SheetFitness.Twist(Loft.Along(still, found.Edge!, found.Lines)).Max, 0, Torsal);
        Assert.InRange(found.Moves.Max(m => Math.Abs(m.Move)), 0.05, 3);
    }

    // The lines that the search found are not told here: the sheet is matched as any other.
    [Theory]
    [InlineData("cone, dent")]
    [InlineData("cover, dent at the side")]
    public void Moved_edge_only_bends_when_its_lines_are_sought_anew(string name)
    {
        (SpaceCurve still, SpaceCurve moved) = DisturbedEdges.Of(name);
        FreedomResult found = EdgeFreedom.Find(still, moved, EdgePlane.Of(moved)!.Value, 3.5);
        Assert.InRange(SheetFitness.Twist(Loft.Between(still, found.Edge!, ElementMatching.BendOnly)).Max, 0, Torsal);
    }

    [Theory]
    [MemberData(nameof(Disturbed))]
    public void Edge_moves_along_its_normal_in_its_plane_and_keeps_its_ends(string name)
    {
        (SpaceCurve still, SpaceCurve moved) = DisturbedEdges.Of(name);
        EdgePlane plane = EdgePlane.Of(moved)!.Value;
        FreedomResult found = EdgeFreedom.Find(still, moved, plane, 3.5);
        SpaceCurve edge = found.Edge!;
        // Ends are held by a weight of 1e10 against a cost of square millimetres.
        Assert.Equal(0, (edge.Start.Point - moved.Start.Point).Length, 1e-6);
        Assert.Equal(0, (edge.End.Point - moved.End.Point).Length, 1e-6);
        Assert.True(plane.Holds(edge));
        foreach (EdgeMove move in found.Moves)
        {
            CurveSample there = moved.AtLength(move.Length);
            Vec3 shift = move.Is - move.Was;
            Assert.Equal(0, (there.Point - move.Was).Length, 1e-6);
            Assert.Equal(Math.Abs(move.Move), shift.Length, 1e-6);
            Assert.Equal(0, shift.Dot(there.Tangent), 1e-6);
        }
        // Between stations too: no place of the edge lies farther from the measured one than the freedom.
        ImmutableArray<Vec3> measured = [.. Enumerable.Range(0, 2001).Select(i => moved.AtLength(moved.Length * i / 2000).Point)];
        for (int i = 0; i <= 400; i++)
        {
            Vec3 place = edge.AtLength(edge.Length * i / 400).Point;
            // Half of the distance between measured places, squared over the freedom, is the most that this nearest distance errs.
            Assert.InRange(measured.Min(p => (p - place).Length), 0, 3.5 + 0.01);
        }
    }

    [Fact]
    public void Mirrored_edge_stays_mirrored()
    {
        (SpaceCurve still, SpaceCurve moved) = DisturbedEdges.Of("cover, bump in the middle");
        FreedomResult found = EdgeFreedom.Find(still, moved, EdgePlane.Of(moved)!.Value, 3.5);
        Assert.NotNull(MirrorPlane.Of(still, found.Edge!));
        for (int i = 0; i < found.Moves.Length; i++) Assert.Equal(found.Moves[i].Move, found.Moves[^(i + 1)].Move, 1e-12);
        Assert.True(Loft.Along(still, found.Edge!, found.Lines).IsMirrored);
    }

    [Fact]
    public void Edge_of_a_sheet_that_only_bends_hardly_moves()
    {
        (SpaceCurve still, SpaceCurve moved) = DisturbedEdges.Of("cover");
        FreedomResult found = EdgeFreedom.Find(still, moved, EdgePlane.Of(moved)!.Value, 3.5);
        // Arcs between stations 6 mm apart leave a curve of radius 120 mm with jumps of curvature by less than this.
        Assert.InRange(found.Moves.Max(m => Math.Abs(m.Move)), 0, 0.001);
    }

    [Theory]
    [InlineData("cover, bump at the side")]
    [InlineData("cone, dent")]
    public void Smallest_freedom_that_would_do_does_and_a_smaller_one_does_not(string name)
    {
        (SpaceCurve still, SpaceCurve moved) = DisturbedEdges.Of(name);
        EdgePlane plane = EdgePlane.Of(moved)!.Value;
        FreedomResult small = EdgeFreedom.Find(still, moved, plane, 0.01);
        Assert.Equal(FreedomOutcome.TooFar, small.Outcome);
        Assert.Null(small.Edge);
        FreedomResult enough = EdgeFreedom.Find(still, moved, plane, small.Least + 0.01);
        Assert.Equal(FreedomOutcome.Found, enough.Outcome);
        Assert.InRange(enough.Moves.Max(m => Math.Abs(m.Move)), 0, small.Least + 0.0101);
        Assert.Equal(FreedomOutcome.TooFar, EdgeFreedom.Find(still, moved, plane, 0.9 * small.Least).Outcome);
    }

    [Fact]
    public void Curve_that_leaves_its_plane_or_is_straight_has_none()
    {
        Assert.Null(EdgePlane.Of(AnalyticPiece.Polyline(Vec3.Zero, new(0, 300, 0))));
        Assert.Null(EdgePlane.Of(AnalyticPiece.Polyline(Vec3.Zero, new(0, 100, 20), new(0.1, 200, 0), new(0, 300, 90))));
        EdgePlane plane = EdgePlane.Of(Shapes.Arch())!.Value;
        Assert.Equal(1, Math.Abs(plane.Normal.Dot(Shapes.Rotation(Shapes.Y, 25 * Math.PI / 180)(Shapes.X))), 1e-12);
    }
}

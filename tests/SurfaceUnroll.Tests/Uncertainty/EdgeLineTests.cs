using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Uncertainty;

namespace SurfaceUnroll.Tests.Uncertainty;

public sealed class EdgeLineTests
{
    /// <summary>Two sides of 100 mm that meet at a corner of 40°, the second along x.</summary>
    private static EdgeLine Bent(double secondUp, double firstAside)
    {
        Vec2 first = Vec2.FromAngle(-2 * Math.PI / 9), shift = firstAside * first.Left;
        // Where the shifted first side meets the raised second one.
        Vec2 corner = shift + (secondUp - shift.Y) / first.Y * first;
        return new EdgeLine([corner - 100 * first, corner, new Vec2(corner.X + 100, corner.Y)]);
    }

    [Theory]
    [InlineData(0, 2)]
    [InlineData(0, -2)]
    [InlineData(1.5, 2)]
    [InlineData(1.5, -4)]
    [InlineData(-3, 5)]
    public void ASideMovesByItselfHoweverNearToACornerItIsAsked(double up, double aside)
    {
        EdgeLine drawn = Bent(0, 0), moved = Bent(up, aside);
        Assert.Equal(2, drawn.Sides);
        (Vec2 at, Vec2 direction, int side) = drawn.At(0.515);
        Assert.Equal(1, side);
        Assert.Equal(up, moved.Crossing(at, direction.Left, side), 1e-9);
        (at, direction, side) = drawn.At(0.485);
        Assert.Equal(0, side);
        Assert.Equal(aside, moved.Crossing(at, direction.Left, side), 1e-9);
    }

    [Fact]
    public void WhereTheSideIsNotKnownTheNearerCounts()
    {
        // The first side, pushed out by 2 mm, is run on past the corner under the second one, which stays.
        (Vec2 at, Vec2 direction, _) = Bent(0, 0).At(0.515);
        Assert.InRange(Bent(-4, 0).Crossing(at, direction.Left, -1), -3.999, -1);
    }

    [Fact]
    public void AClosedEdgeHasOneSideThroughASmoothSeamAndPlacesAcrossIt()
    {
        // Twice half way round, with two corners of half a turn less 60° between: an eye, its seam in the middle of one lid.
        Vec2[] lid = [.. Enumerable.Range(0, 31).Select(i => new Vec2(0, -50) + 100 * Vec2.FromAngle(Math.PI * (4 + 4.0 * i / 30) / 12))];
        Vec2[] other = [.. lid.Select(p => new Vec2(lid[0].X + lid[^1].X - p.X, 2 * lid[0].Y - p.Y))];
        ImmutableArray<Vec2> eye = [.. lid[15..], .. other[1..], .. lid[1..16]];
        var line = new EdgeLine(eye);
        Assert.Equal(2, line.Sides);
        Assert.Equal(0, line.At(0).Side);
        Assert.Equal(0, line.At(1).Side);
        Assert.Equal(1, line.At(0.5).Side);
        // A place a little before the seam is crossed by the other end of the line when all of it is shifted along.
        (Vec2 at, Vec2 along, int side) = line.At(0.999);
        Assert.True(Math.Abs(new EdgeLine([.. eye.Select(p => p + 3 * along)]).Crossing(at, along.Left, side)) < 0.2);
    }

    [Fact]
    public void APlaceIsOnTheArcThatItsChordsStandFor()
    {
        var arc = new EdgeLine([.. Enumerable.Range(0, 19).Select(i => 100 * Vec2.FromAngle(i * Math.PI / 36))]);
        Assert.Equal(1, arc.Sides);
        foreach (double share in new[] { 0.24, 0.333, 0.5, 0.71 })
        {
            (Vec2 at, Vec2 along, _) = arc.At(share);
            Assert.Equal(100, at.Length, 1e-3); // The chords leave 0.095 mm.
            Assert.Equal(0, along.Dot(at.Unit), 2e-3);
        }
    }
}

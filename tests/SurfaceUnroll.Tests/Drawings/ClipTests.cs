using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Tests.Drawings;

public class ClipTests
{
    private static readonly Box Window = new(Vec2.Zero, new Vec2(10, 10));

    [Fact]
    public void Line_across_is_cut_exactly_at_both_borders()
    {
        ImmutableArray<Vec2> part = Assert.Single(Clip.Line([new(-5, 5), new(15, 5)], false, Window));
        Assert.Equal<Vec2>([new Vec2(0, 5), new Vec2(10, 5)], part);
    }

    [Fact]
    public void Line_that_leaves_and_comes_back_falls_in_two_parts()
    {
        ImmutableArray<ImmutableArray<Vec2>> parts = Clip.Line([new(5, 5), new(15, 5), new(15, 8), new(5, 8)], false, Window);
        Assert.Equal(2, parts.Length);
        Assert.Equal<Vec2>([new Vec2(5, 5), new Vec2(10, 5)], parts[0]);
        Assert.Equal<Vec2>([new Vec2(10, 8), new Vec2(5, 8)], parts[1]);
    }

    [Fact]
    public void Contour_inside_is_whole_and_comes_back_to_its_first_point()
    {
        ImmutableArray<Vec2> part = Assert.Single(Clip.Line([new(1, 1), new(9, 1), new(5, 9)], true, Window));
        Assert.Equal<Vec2>([new Vec2(1, 1), new Vec2(9, 1), new Vec2(5, 9), new Vec2(1, 1)], part);
    }

    [Fact]
    public void Line_past_a_corner_gives_nothing() => Assert.Empty(Clip.Line([new(-6, 5), new(5, -6.001)], false, Window));

    [Fact]
    public void Line_along_the_border_belongs_to_the_window() =>
        Assert.Equal<Vec2>([new Vec2(10, 2), new Vec2(10, 10)], Assert.Single(Clip.Line([new(10, 2), new(10, 14)], false, Window)));
}

using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Photos;

namespace SurfaceUnroll.Tests.Photos;

/// <summary>Edges and lines on pictures made by a formula, seen square from above at a pixel a millimetre.</summary>
public class EdgeTests
{
    private static readonly PhotoScale Square = new(
        new PlaneCamera(new Homography(1, 0, 0, 0, -1, 0, 0, 0), 0, new Vec2(200, -150), 250, new Vec2(200, 150), 250), [.. Enumerable.Range(0, PlaneCamera.Count).Select(_ => ImmutableArray.Create(0.0))], 100, [], true, []);

    // Light by the distance from a shape, pixels, blurred as lenses do.
    private static GreyPhoto Photo(Func<Vec2, double> light) =>
        new(400, 300, [.. Enumerable.Range(0, 400 * 300).Select(i => (ushort)Math.Clamp(light(new Vec2(i % 400 + 0.5, i / 400 + 0.5)), 0, 65535))]);

    private static double Step(double distance) => 1 / (1 + Math.Exp(-2 * distance));

    private static PhotoEdge Edge(EdgeKind? kind, params (double X, double Y, bool Corner)[] taps) => new([.. taps.Select(t => new EdgeTap(new Vec2(t.X, t.Y), t.Corner))], kind);

    private static ImmutableArray<ProfilePoint> Traced(GreyPhoto photo, PhotoEdge edge)
    {
        (PickedEdge? picked, ImmutableArray<Notice> faults) = EdgePicking.Of(photo, edge);
        Assert.Empty(faults);
        return PhotoTracing.Curve(photo, Square, picked!, default).Points;
    }

    [Fact]
    public void A_circle_is_followed_from_three_taps()
    {
        GreyPhoto photo = Photo(p => 10000 + 40000 * Step(120 - (p - new Vec2(200, 200)).Length));
        ImmutableArray<ProfilePoint> points = Traced(photo, Edge(EdgeKind.Edge, (82, 181, false), (201, 83, false), (319, 179, false)));
        Assert.All(points, p => Assert.Equal(120, (p.Place - new Vec2(200, -200)).Length, 0.05));
        Assert.InRange(points[0].Place.X, 80, 84);
        Assert.InRange(points.Length, 5, 40);
    }

    [Theory]
    [InlineData(1.5)]
    [InlineData(3)]
    [InlineData(8)]
    public void A_drawn_line_is_followed_along_its_middle(double width)
    {
        double Middle(double x) => 150 - 40 * Math.Sin(x / 60);
        GreyPhoto photo = Photo(p =>
        {
            double slope = -40 / 60.0 * Math.Cos(p.X / 60), off = (p.Y - Middle(p.X)) / Math.Sqrt(1 + slope * slope);
            return 45000 - 35000 * (Step(off + width / 2) - Step(off - width / 2));
        });
        ImmutableArray<ProfilePoint> points = Traced(photo, Edge(EdgeKind.Line, (20, Middle(20) + 1, false), (94, Middle(94), false), (200, Middle(200) - 1, false), (283, Middle(283), false), (380, Middle(380), false)));
        // A wide line at a bend is a little wider on its outer side: a tenth of a pixel.
        Assert.All(points, p => Assert.Equal(Middle(p.Place.X), -p.Place.Y, 0.15));
    }

    [Fact]
    public void A_corner_is_struck_from_both_sides()
    {
        // Two sides at a right angle that meet at 200, 80; the tap misses the corner by 2 pixels.
        GreyPhoto photo = Photo(p => 10000 + 40000 * Step(Math.Min((p - new Vec2(200, 80)).Dot(new Vec2(-0.6, 0.8)), (p - new Vec2(200, 80)).Dot(new Vec2(0.8, 0.6)))));
        ImmutableArray<ProfilePoint> points = Traced(photo, Edge(EdgeKind.Edge, (80, 240, false), (202, 82, true), (320, 170, false)));
        Assert.Equal(3, points.Length);
        Assert.True(points[1].Corner);
        Assert.True((points[1].Place - new Vec2(200, -80)).Length < 0.2, $"{points[1].Place}");
    }

    [Fact]
    public void Taps_alone_are_the_curve_where_nothing_is_followed()
    {
        GreyPhoto photo = Photo(_ => 20000);
        ImmutableArray<ProfilePoint> points = Traced(photo, Edge(null, (300, 100, false), (200, 80, true), (100, 120, false)));
        // From left to right, whichever way they were tapped.
        Assert.Equal([new Vec2(100, -120), new(200, -80), new(300, -100)], points.Select(p => new Vec2(Math.Round(p.Place.X, 9), Math.Round(p.Place.Y, 9))));
        Assert.Equal([false, true, false], points.Select(p => p.Corner));
    }

    [Fact]
    public void The_frame_is_the_ends_where_it_is_asked_for()
    {
        GreyPhoto photo = Photo(_ => 20000);
        PickedEdge picked = EdgePicking.Of(photo, Edge(null, (100, 200, false), (200, 80, false), (340, 120, false))).Edge!;
        ImmutableArray<ProfilePoint> centred = PhotoTracing.Curve(photo, Square, picked, new TraceFrame(false, true)).Points, level = PhotoTracing.Curve(photo, Square, picked, new TraceFrame(true, true)).Points;
        Assert.Equal((-120, 0, 120, 80), (centred[0].Place.X, centred[0].Place.Y, centred[^1].Place.X, Math.Round(centred[^1].Place.Y, 9)));
        double half = 0.5 * Math.Sqrt(240 * 240 + 80 * 80);
        Assert.Equal(-half, level[0].Place.X, 1e-9);
        Assert.Equal(half, level[^1].Place.X, 1e-9);
        Assert.Equal(0, level[^1].Place.Y, 1e-9);
    }

    [Fact]
    public void An_even_ground_has_no_edge_and_every_such_stretch_is_named()
    {
        GreyPhoto photo = Photo(p => 10000 + Math.Clamp(2 - p.X / 100, 0, 1) * 40000 * Step(p.Y - 150));
        (PickedEdge? picked, ImmutableArray<Notice> faults) = EdgePicking.Of(photo, Edge(EdgeKind.Edge, (20, 150, false), (120, 150, false), (210, 150, false), (300, 150, false), (390, 150, false)));
        Assert.Null(picked);
        Assert.Equal(["photo-edge-faint", "photo-edge-faint"], faults.Select(f => f.Code));
        Assert.Contains("taps 3 and 4", faults[0].Message, StringComparison.Ordinal);
        Assert.Contains("taps 4 and 5", faults[1].Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("photo-edge-taps", new double[] { 20, 20 })]
    [InlineData("photo-tap-outside", new double[] { 20, 20, 401, 20 })]
    [InlineData("photo-taps-repeat", new double[] { 20, 20, 22, 21, 300, 200 })]
    public void Taps_that_are_no_edge_are_told(string code, double[] taps)
    {
        (PickedEdge? picked, ImmutableArray<Notice> faults) = EdgePicking.Of(Photo(_ => 20000), Edge(EdgeKind.Edge, [.. Enumerable.Range(0, taps.Length / 2).Select(i => (taps[2 * i], taps[2 * i + 1], false))]));
        Assert.Null(picked);
        Assert.Equal(code, Assert.Single(faults).Code);
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Photos;

namespace SurfaceUnroll.Tests.Photos;

public class HomographyTests
{
    private static readonly Vec2[] Square = [new(0, 0), new(1, 0), new(1, 1), new(0, 1)];

    // P. Heckbert, Fundamentals of Texture Mapping and Image Warping, UC Berkeley 1989, section 2.2.3: the unit square to a quadrilateral in closed form.
    private static Homography Heckbert(Vec2[] q)
    {
        Vec2 sum = q[0] - q[1] + q[2] - q[3], d1 = q[1] - q[2], d2 = q[3] - q[2];
        double det = d1.Cross(d2), g = sum.Cross(d2) / det, h = d1.Cross(sum) / det;
        return new Homography(q[1].X - q[0].X + g * q[1].X, q[3].X - q[0].X + h * q[3].X, q[0].X, q[1].Y - q[0].Y + g * q[1].Y, q[3].Y - q[0].Y + h * q[3].Y, q[0].Y, g, h);
    }

    public static TheoryData<double[]> Quadrilaterals =>
    [
        [0, 0, 2, 0, 2, 1, 0, 1],
        [0.31, 1.48, 1.62, 1.5, 1.57, 0.56, 0.35, 0.54],
        [-0.8, 0.7, 0.9, 0.9, 0.5, -0.6, -0.3, -0.4],
    ];

    [Theory]
    [MemberData(nameof(Quadrilaterals))]
    public void Four_places_give_the_closed_form(double[] quad)
    {
        Vec2[] q = [.. Enumerable.Range(0, 4).Select(i => new Vec2(quad[2 * i], quad[2 * i + 1]))];
        Homography expected = Heckbert(q), found = Homography.Linear([.. Square], [.. q])!.Value;
        // The normal equations of eight unknowns of size 1 lose half of sixteen digits at worst.
        for (int i = 0; i < 8; i++) Assert.Equal(expected.Numbers[i], found.Numbers[i], 1e-7);
        foreach (Vec2 p in (Vec2[])[.. Square, new(0.3, 0.8), new(-0.2, 0.4)])
        {
            Assert.True((expected.Map(p) - found.Map(p)).Length < 1e-7);
            Assert.True((found.Back(found.Map(p)) - p).Length < 1e-9);
        }
    }

    [Fact]
    public void Many_places_of_one_perspective_give_it_back()
    {
        Homography real = Heckbert([new(-0.8, 0.7), new(0.9, 0.9), new(0.5, -0.6), new(-0.3, -0.4)]);
        ImmutableArray<Vec2> places = [.. from x in Enumerable.Range(0, 4) from y in Enumerable.Range(0, 3) select new Vec2(0.3 * x, 0.4 * y)];
        Homography found = Homography.Linear(places, [.. places.Select(real.Map)])!.Value;
        for (int i = 0; i < 8; i++) Assert.Equal(real.Numbers[i], found.Numbers[i], 1e-7);
    }

    [Fact]
    public void Three_of_four_places_on_one_line_give_none() =>
        Assert.Null(Homography.Linear([new(0, 0), new(1, 0), new(2, 0), new(0, 1)], [new(0, 0), new(1, 0), new(2, 0), new(0, 1)]));

    [Theory]
    [InlineData(-0.12)]
    [InlineData(-0.02)]
    [InlineData(0)]
    [InlineData(0.06)]
    public void The_bow_of_a_lens_is_taken_out_exactly(double bow)
    {
        var camera = new PlaneCamera(Heckbert([new(-0.5, 0.5), new(0.6, 0.55), new(0.45, -0.4), new(-0.4, -0.45)]), bow, new Vec2(100, 50), 150, new Vec2(400, 300), 500);
        foreach (Vec2 p in (Vec2[])[new(100, 50), new(250, 200), new(110, 190)])
        {
            Vec2 q = camera.ToPhoto(p);
            Assert.True((camera.ToPlane(q) - p).Length < 1e-9);
            // Brown's first term, by hand: the share of the way from the middle by which it moved.
            Vec2 straight = (camera with { Bow = 0 }).ToPhoto(p) - camera.Middle;
            double r = straight.Length / 500;
            Assert.Equal((1 + bow * r * r) * straight.Length, (q - camera.Middle).Length, 1e-9);
        }
    }
}

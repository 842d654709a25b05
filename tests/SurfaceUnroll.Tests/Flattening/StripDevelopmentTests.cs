using SurfaceUnroll.Curves;
using SurfaceUnroll.Flattening;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Lofting;
using SurfaceUnroll.Patterns;

namespace SurfaceUnroll.Tests.Flattening;

public class StripDevelopmentTests
{
    private static Blank Develop(SpaceCurve front, SpaceCurve rear) => Blank.Of(Loft.Between(front, rear, ElementMatching.BendOnly));

    [Theory]
    [InlineData(10, 10)]
    [InlineData(150, 400)]
    [InlineData(5000, 10000)]
    public void Half_cylinder_lies_flat_as_a_rectangle(double radius, double length)
    {
        Blank blank = Develop(Shapes.HalfCircle(radius, 0), Shapes.HalfCircle(radius, length));
        FlatLine left = blank.FlatLines.First(), right = blank.FlatLines.Last();
        double half = Math.PI * radius / 2, tolerance = 1e-9 * radius;
        Assert.Equal(-half, left.Front.X, tolerance);
        Assert.Equal(half, right.Front.X, tolerance);
        Assert.Equal(0, right.Front.Y, tolerance);
        Assert.Equal(-length, right.Rear.Y, tolerance);
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(10)]
    public void Half_cone_lies_flat_as_a_sector(double scale)
    {
        double r1 = 100 * scale, r2 = 200 * scale, height = 400 * scale;
        Blank blank = Develop(Shapes.HalfCircle(r1, 0), Shapes.HalfCircle(r2, height));
        double slant = Math.Sqrt(height * height + (r2 - r1) * (r2 - r1)), sine = (r2 - r1) / slant;
        double inner = r1 / sine, half = Math.PI / 2 * sine;
        // The apex stands on the centre line, the inner radius above the front's middle; every line's ends lie on the two circles.
        var apex = new Vec2(0, inner);
        foreach (FlatLine line in blank.FlatRulings)
        {
            Assert.Equal(inner, (line.Front - apex).Length, 1e-8 * scale);
            Assert.Equal(inner + slant, (line.Rear - apex).Length, 1e-8 * scale);
        }
        Vec2 end = blank.FlatLines.Last().Rear - apex;
        Assert.Equal(half, Math.Atan2(end.X, -end.Y), 1e-10);
    }

    [Theory]
    [InlineData(10)]
    [InlineData(1000)]
    [InlineData(10000)]
    public void Flat_edges_are_as_long_as_formed_ones(double size)
    {
        foreach ((SpaceCurve front, SpaceCurve rear) in Pairs(size))
        {
            Blank blank = Develop(front, rear);
            AssertTrueLengths(BlankOutline.Edges(blank), front.Length, rear.Length);
        }
    }

    [Fact]
    public void A_mirrored_job_gives_a_mirrored_blank()
    {
        foreach ((SpaceCurve front, SpaceCurve rear) in Pairs(1000))
        {
            FlatLine[] lines = [.. Develop(front, rear).FlatRulings];
            for (int i = 0; i < lines.Length; i++)
            {
                FlatLine mate = lines[^(i + 1)];
                Assert.Equal(lines[i].Front.X, -mate.Front.X, 1e-6);
                Assert.Equal(lines[i].Front.Y, mate.Front.Y, 1e-6);
                Assert.Equal(lines[i].Rear.X, -mate.Rear.X, 1e-6);
                Assert.Equal(lines[i].Rear.Y, mate.Rear.Y, 1e-6);
            }
        }
    }

    [Fact]
    public void A_bend_only_blank_keeps_every_distance_of_the_mesh()
    {
        SheetMesh mesh = Triangles(Develop(Shapes.Arch(), Shapes.Hoop()));
        foreach ((int a, int b, int c) in mesh.Faces)
        {
            foreach ((int i, int j) in new[] { (a, b), (b, c), (c, a) })
            {
                double formed = (mesh.Formed[i] - mesh.Formed[j]).Length, flat = (mesh.Flat[i] - mesh.Flat[j]).Length;
                // A chord across half a strip cuts the bend short by turn²/24 of the part of it that runs square to the element lines.
                Assert.Equal(formed, flat, 2e-6 * flat + 1e-9);
            }
        }
    }

    [Fact]
    public void Faces_are_counter_clockwise_from_outside_in_space_and_on_the_blank()
    {
        SheetMesh mesh = Triangles(Develop(Shapes.Arch(), Shapes.Hoop()));
        foreach ((int a, int b, int c) in mesh.Faces)
        {
            Assert.True((mesh.Flat[b] - mesh.Flat[a]).Cross(mesh.Flat[c] - mesh.Flat[a]) > 0);
            Vec3 normal = (mesh.Formed[b] - mesh.Formed[a]).Cross(mesh.Formed[c] - mesh.Formed[a]);
            // The cover is convex around this place below its crown.
            Assert.True(normal.Dot(mesh.Formed[a] - new Vec3(80, 0, 20)) > 0);
        }
    }

    [Fact]
    public void Formed_and_flat_area_agree_on_a_bend_only_sheet()
    {
        Blank blank = Develop(Shapes.Arch(), Shapes.Hoop());
        Assert.Equal(blank.FormedArea, blank.FlatArea, 1e-8 * blank.FlatArea);
    }

    private static void AssertTrueLengths(IReadOnlyList<BlankEdge> edges, double front, double rear)
    {
        Assert.Equal(front, edges[0].FormedLength, 1e-9 * front);
        Assert.Equal(rear, edges[2].FormedLength, 1e-9 * rear);
        foreach (BlankEdge edge in edges)
        {
            Assert.Equal(edge.FormedLength, edge.FlatLength, 1e-6 * edge.FormedLength + 1e-12);
            double polyline = edge.Flat.Zip(edge.Flat.Skip(1), (a, b) => (b - a).Length).Sum();
            Assert.Equal(edge.FormedLength, polyline, 2e-6 * edge.FormedLength + 1e-12);
        }
    }

    private static IEnumerable<(SpaceCurve Front, SpaceCurve Rear)> Pairs(double size)
    {
        double k = size / 400;
        yield return (Shapes.Arch(120 * k, 55 * k), Shapes.Hoop(120 * k, 175 * k));
        yield return (Shapes.HalfCircle(100 * k, 0), Shapes.HalfCircle(180 * k, 300 * k, 40 * k));
        yield return (Shapes.Arch(120 * k, 55 * k), Shapes.Hoop(100 * k, 220 * k));
    }

    private static SheetMesh Triangles(Blank blank) => BlankOutline.Triangles(blank, blank.Sheet);
}

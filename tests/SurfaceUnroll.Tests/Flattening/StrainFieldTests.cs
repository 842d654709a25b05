using System.Collections.Immutable;
using SurfaceUnroll.Flattening;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Tests.Flattening;

public class StrainFieldTests
{
    // Blank → part: stretched by one factor along a direction and by another square to it.
    private static StrainMap Map(double along, double across, double degrees)
    {
        Vec2 u = Vec2.FromAngle(degrees * Math.PI / 180), w = u.Left;
        TriangleMesh sheet = TestMeshes.Sheet(4);
        ImmutableArray<Vec2> flat = [.. sheet.Places.Select(p => new Vec2(p.Y, p.Z))];
        // The part stands in a plane of its own, turned: that must change nothing.
        Func<Vec3, Vec3> turn = Shapes.Rotation(new Vec3(2, 1, -2) / 3, 0.8);
        TriangleMesh formed = sheet with { Places = [.. flat.Select(p => turn(Out(along * p.Dot(u) * u + across * p.Dot(w) * w)))] };
        return StrainField.Of(formed, flat);

        static Vec3 Out(Vec2 p) => new(0, p.X, p.Y);
    }

    [Theory]
    [InlineData(1.1, 0.95, 30)]
    [InlineData(1.02, 1.01, 100)]
    [InlineData(0.99, 0.8, 0)]
    [InlineData(1.3, 1, -60)]
    public void Even_strain_is_found_at_every_vertex_with_its_direction(double along, double across, double degrees) =>
        Assert.All(Map(along, across, degrees).Vertices, v =>
        {
            Assert.Equal(along - 1, v.Major, 1e-12);
            Assert.Equal(across - 1, v.Minor, 1e-12);
            Assert.Equal(1 / (along * across) - 1, v.Thickness, 1e-12);
            Assert.Equal(0, v.MajorDirection.Cross(Vec2.FromAngle(degrees * Math.PI / 180)), 1e-9);
            Assert.Equal(Math.Max(0, along - 1), v.Stretch, 1e-12);
            Assert.Equal(Math.Max(0, 1 - across), v.Shrink, 1e-12);
        });

    [Fact]
    public void A_sheet_as_flat_as_its_blank_has_no_strain() => Assert.All(Map(1, 1, 0).Vertices, v => Assert.Equal(0, v.Major - v.Minor, 1e-7));
}

using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Tests;

public class SamplesTests
{
    [Fact]
    public void Half_cylinder_faces_are_counter_clockwise_seen_from_outside_in_space_and_on_the_blank()
    {
        SheetMesh mesh = Samples.HalfCylinder().Panels[0].Mesh;
        foreach ((int a, int b, int c) in mesh.Faces)
        {
            Vec2 ab = mesh.Flat[b] - mesh.Flat[a], ac = mesh.Flat[c] - mesh.Flat[a];
            Assert.True(ab.Cross(ac) > 0);
            Vec3 normal = (mesh.Formed[b] - mesh.Formed[a]).Cross(mesh.Formed[c] - mesh.Formed[a]);
            Vec3 outward = mesh.Formed[a] with { X = 0 };
            Assert.True(normal.Dot(outward) > 0);
        }
    }
}

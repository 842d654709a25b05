using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Tests.Geometry;

public class VectorTests
{
    [Fact]
    public void Vectors_print_their_components()
    {
        Assert.Equal("(1.5, -2)", new Vec2(1.5, -2).ToString());
        Assert.Equal("(1.5, -2, 0.1)", new Vec3(1.5, -2, 0.1).ToString());
    }
}

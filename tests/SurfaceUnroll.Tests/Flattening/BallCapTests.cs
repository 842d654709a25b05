using SurfaceUnroll.Flattening;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Tests.Flattening;

/// <summary>Small caps of a ball against the series that docs/methods.md derives ("A small cap of a ball").</summary>
public class BallCapTests
{
    private const double Radius = 500;

    [Fact]
    public void Energy_comes_to_the_leading_term_of_the_series_as_the_cap_gets_small()
    {
        double[] excess = [.. new[] { 0.4, 0.2, 0.1 }.Select(angle => Energy(angle) / Series(angle) - 1)];
        // "A few percent" at 0.2: the next term is of the order of the angle squared, 4 %.
        Assert.Equal(0, excess[1], 0.04);
        // That term falls by four with the angle halved; the one after it is smaller by the angle squared again, and what is left of the triangles' size is about 1e-4 for all angles.
        Assert.Equal(4, excess[0] / excess[1], 0.2);
        Assert.Equal(4, excess[1] / excess[2], 0.8);
    }

    [Fact]
    public void Middle_is_stretched_and_rim_shrunk_as_in_the_series()
    {
        const double angle = 0.1;
        const int rings = 40;
        TriangleMesh mesh = FormedShapes.Disc(rings, (x, y) => FormedShapes.OnBall(Radius, angle, x, y));
        FlattenedMesh blank = BlankAsserts.Flatten(mesh);
        // On the rim α²/16 along the radius and −α²/8 along the rim; a ring further in the first is smaller by 1/rings of itself and the second by 5/2 of that.
        // The outermost triangles stand for a ring, and without neighbours outside they are off by as much again.
        Assert.Equal(1, blank.MaxStretch / (angle * angle / 16), 2.0 / rings);
        Assert.Equal(1, blank.MaxShrink / (angle * angle / 8), 5.0 / rings);
        // In the middle α²/32 every way.
        double radius = blank.Flat[1..7].Average(p => (p - blank.Flat[0]).Length), formed = (mesh.Places[1] - mesh.Places[0]).Length;
        Assert.Equal(1, (formed / radius - 1) / (angle * angle / 32), 0.02);
    }

    private static double Series(double angle) => Math.PI / 384 * Radius * Radius * Math.Pow(angle, 6);

    // Triangles inscribed in the ball are off by the square of their size: taken out by two sizes.
    private static double Energy(double angle)
    {
        (double coarse, double fine) = (Of(24), Of(48));
        return fine + (fine - coarse) / 3;

        double Of(int rings) => BlankAsserts.Flatten(FormedShapes.Disc(rings, (x, y) => FormedShapes.OnBall(Radius, angle, x, y))).Energy;
    }
}

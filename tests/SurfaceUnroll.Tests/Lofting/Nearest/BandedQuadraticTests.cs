using SurfaceUnroll.Lofting.Nearest;

namespace SurfaceUnroll.Tests.Lofting.Nearest;

public class BandedQuadraticTests
{
    [Fact]
    public void Free_least_place_solves_the_normal_equations()
    {
        // x0 = 1, x1 − x0 = 2 and x1 = 4 with weights 1, 1, 2: by hand 2x0 − x1 = −1 and −x0 + 3x1 = 10, so x = (1.4, 3.8).
        var problem = new BandedQuadratic(2, 1);
        problem.AddSquare(1, -1, (0, 1));
        problem.AddSquare(1, -2, (1, 1), (0, -1));
        problem.AddSquare(2, -4, (1, 1));
        double[] x = problem.Minimise();
        Assert.Equal(1.4, x[0], 1e-12);
        Assert.Equal(3.8, x[1], 1e-12);
    }

    // Least squares under x0 ≤ x1 ≤ … pools neighbours that are out of order to their mean (pool adjacent violators: Barlow, Bartholomew, Bremner and Brunk, Statistical Inference under Order
    // Restrictions, 1972).
    [Fact]
    public void Ordered_least_squares_pool_neighbours_that_are_out_of_order()
    {
        double[] wanted = [1, 5, 3, 2, 7, 6, 8], pooled = [1, 10 / 3.0, 10 / 3.0, 10 / 3.0, 6.5, 6.5, 8];
        var problem = new BandedQuadratic(7, 2);
        for (int i = 0; i < 7; i++)
        {
            problem.AddSquare(1, -wanted[i], (i, 1));
            if (i > 0) problem.AddBound(i, 1, i - 1, -1, 0);
        }
        double[] x = problem.Minimise();
        for (int i = 0; i < 7; i++) Assert.Equal(pooled[i], x[i], 1e-6);
    }

    [Fact]
    public void Bound_that_stands_in_the_way_is_met_and_no_more()
    {
        var problem = new BandedQuadratic(1, 0);
        problem.AddSquare(2, -3, (0, 1));
        problem.AddBound(0, -1, 0, 0, -1);
        Assert.Equal(1, problem.Minimise()[0], 1e-8);
    }
}

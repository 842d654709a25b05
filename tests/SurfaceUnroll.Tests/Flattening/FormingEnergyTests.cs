using SurfaceUnroll.Flattening;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Tests.Flattening;

/// <summary>Energy, gradient and Hessian against each other by central differences.</summary>
public class FormingEnergyTests
{
    private const double Band = 5e-4;

    [Theory]
    [InlineData(1, 1, 1)]
    [InlineData(3, 1.5, 1.5)]
    [InlineData(3, 0.8, 0.8)]
    [InlineData(3, 1.5, 0.6)]
    public void Gradient_agrees_with_differences_of_the_energy(double shrinkCost, double along, double across)
    {
        // Seen from above a crown is stretched by up to 34 %, and by nothing along its level lines; scaled it is stretched, shrunk or both, everywhere far from nothing.
        TriangleMesh mesh = FormedShapes.Scattered(8, 8, FormedShapes.Crown, seed: 3);
        (FlatteningProblem problem, FormingEnergy energy) = Of(mesh, shrinkCost);
        double[] x = problem.ToSolver([.. mesh.Places.Select(p => new Vec2(along * p.X, across * p.Y))]);
        if (shrinkCost > 1) Assert.All(Strains(problem.Rest, x), e => Assert.True(Math.Abs(e) > 10 * Band));
        // Edges are about 50 mm, so a step of 1e-4 strains by 2e-6: the third derivative adds 1e-11 and rounding 1e-9.
        Assert.InRange(WorstMiss(energy, x, 1e-4), 0, 1e-7);
    }

    [Fact]
    public void Gradient_agrees_with_differences_inside_the_band_where_the_cost_of_shrinking_changes()
    {
        (FlatteningProblem problem, FormingEnergy energy, double[] x) = NearlyFlat(3, 1, 1.5e-3);
        double[] strains = [.. Strains(problem.Rest, x)];
        Assert.Contains(strains, e => Math.Abs(e) < 0.5 * Band);
        Assert.Contains(strains, e => e is > -Band and < -0.5 * Band);
        Assert.Contains(strains, e => e < -Band);
        // A step of 1e-5 on edges of 10 mm is a five hundredth of the band, whose square is 4e-6.
        Assert.InRange(WorstMiss(energy, x, 1e-5), 0, 1e-4);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    public void Hessian_agrees_with_differences_of_the_gradient_where_nothing_is_projected_away(double shrinkCost)
    {
        // All shrunk, by about 2 %: the energy is convex there, also for turns.
        (FlatteningProblem problem, FormingEnergy energy, double[] x) = NearlyFlat(shrinkCost, 1.02, 2e-3);
        Assert.All(Strains(problem.Rest, x), e => Assert.InRange(e, -0.04, -0.003));
        var random = new Random(5);
        double[] direction = [.. x.Select(_ => random.NextDouble() - 0.5)], product = new double[x.Length], gradient = new double[x.Length];
        energy.Assemble(x, gradient);
        problem.Matrix.Multiply(direction, product);
        // 1e-4 over 10 mm strains by 1e-5.
        double[] ahead = GradientAt(1e-4), behind = GradientAt(-1e-4);
        double scale = product.Max(Math.Abs);
        for (int i = 0; i < x.Length; i++) Assert.Equal((ahead[i] - behind[i]) / 2e-4, product[i], 1e-6 * scale);

        double[] GradientAt(double step)
        {
            double[] there = new double[x.Length];
            energy.Assemble([.. x.Select((p, i) => p + step * direction[i])], there);
            return there;
        }
    }

    [Fact]
    public void Projected_Hessian_is_nowhere_negative()
    {
        TriangleMesh mesh = FormedShapes.Scattered(8, 8, FormedShapes.Crown, seed: 3);
        (FlatteningProblem problem, FormingEnergy energy) = Of(mesh, 3);
        double[] x = problem.ToSolver([.. mesh.Places.Select(p => new Vec2(0.6 * p.X, 1.2 * p.Y))]), product = new double[x.Length];
        energy.Assemble(x, new double[x.Length]);
        var random = new Random(6);
        for (int k = 0; k < 50; k++)
        {
            double[] d = [.. x.Select(_ => random.NextDouble() - 0.5)];
            problem.Matrix.Multiply(d, product);
            Assert.True(d.Zip(product, (a, b) => a * b).Sum() > 0);
        }
    }

    [Theory]
    [InlineData(1, 0.3, -0.2)]
    [InlineData(3, 0.3, -0.2)]
    [InlineData(3, -0.1, -0.3)]
    [InlineData(3, 1e-4, -2e-4)]
    [InlineData(3, -4e-4, 0.1)]
    [InlineData(20, 3e-4, -4.9e-4)]
    public void Derivatives_of_the_density_agree_with_differences(double shrinkCost, double e1, double e2)
    {
        (double s1, double s2) = (Math.Exp(-e1), Math.Exp(-e2));
        var w = new HenckyDensity(s1, s2, shrinkCost);
        // A hundredth of a thousandth of the band: its square, times what a cost of 20 adds, is 1e-8; of the value itself rounding leaves 1e-10 and more near zero strain.
        const double h = 1e-6;
        HenckyDensity left = new(s1 - h, s2, shrinkCost), right = new(s1 + h, s2, shrinkCost), below = new(s1, s2 - h, shrinkCost), above = new(s1, s2 + h, shrinkCost);
        double slope = Math.Abs(w.D1) + Math.Abs(w.D2), bend = Math.Abs(w.D11) + Math.Abs(w.D22);
        Assert.Equal(HenckyDensity.At(s1, s2, shrinkCost), w.Value);
        Assert.Equal((right.Value - left.Value) / (2 * h), w.D1, 1e-4 * slope);
        Assert.Equal((above.Value - below.Value) / (2 * h), w.D2, 1e-4 * slope);
        Assert.Equal((right.D1 - left.D1) / (2 * h), w.D11, 1e-4 * bend);
        Assert.Equal((above.D2 - below.D2) / (2 * h), w.D22, 1e-4 * bend);
        Assert.Equal((right.D2 - left.D2) / (2 * h), w.D12, 1e-4 * bend);
    }

    [Fact]
    public void Energy_is_the_formula_of_the_contract()
    {
        // One right triangle, 30 % longer on the part along x and 20 % shorter along y: E = A·(2/3)(a₁² + a₁a₂ + a₂²).
        var mesh = new TriangleMesh([Vec3.Zero, new(130, 0, 0), new(0, 80, 0)], [(0, 1, 2)]);
        foreach (double c in (double[])[1, 3])
        {
            (FlatteningProblem problem, FormingEnergy energy) = Of(mesh, c);
            double[] x = problem.ToSolver([Vec2.Zero, new(100, 0), new(0, 100)]);
            double a1 = Math.Log(1.3), a2 = c * Math.Log(0.8);
            Assert.Equal(5200 * 2.0 / 3 * (a1 * a1 + a1 * a2 + a2 * a2), energy.Evaluate(x), 1e-9);
        }
    }

    [Fact]
    public void A_turned_triangle_has_no_finite_energy()
    {
        var mesh = new TriangleMesh([Vec3.Zero, new(130, 0, 0), new(0, 80, 0)], [(0, 1, 2)]);
        (FlatteningProblem problem, FormingEnergy energy) = Of(mesh, 1);
        Assert.Equal(double.PositiveInfinity, energy.Evaluate(problem.ToSolver([Vec2.Zero, new(0, 100), new(100, 0)])));
        Assert.Equal(double.PositiveInfinity, energy.Evaluate(problem.ToSolver([Vec2.Zero, new(50, 0), new(100, 0)])));
    }

    [Fact]
    public void Gradient_of_held_edges_agrees_with_differences()
    {
        GridMesh grid = Assert.IsType<GridMesh>(GridRecognition.Of(FormedShapes.Grid(6, 7, FormedShapes.Crown)));
        var chains = GridFlattening.Held(grid, ["front", "left"]);
        FlatteningProblem problem = FlatteningProblem.Of(grid.Mesh, chains);
        var held = new HeldEdges(grid.Mesh, chains, problem.Rank, problem.Rest.TotalArea);
        double[] x = problem.ToSolver([.. grid.Mesh.Places.Select(p => new Vec2(p.X + 0.1 * p.Y + 1e-4 * p.X * p.X, p.Y))]), gradient = new double[x.Length];
        held.Tighten(x);
        held.AddTo(x, gradient, problem.Matrix);
        double scale = gradient.Max(Math.Abs);
        Assert.True(scale > 0);
        for (int i = 0; i < x.Length; i++) Assert.Equal(Difference(held.Evaluate, x, i, 1e-4), gradient[i], 1e-7 * scale);
    }

    private static (FlatteningProblem Problem, FormingEnergy Energy) Of(TriangleMesh mesh, double shrinkCost)
    {
        FlatteningProblem problem = FlatteningProblem.Of(mesh, []);
        return (problem, new FormingEnergy(problem.Rest, problem.Matrix, shrinkCost));
    }

    // A flat square of cells of 10 mm on a blank a little larger, each place shifted at random by a share of a cell.
    private static (FlatteningProblem Problem, FormingEnergy Energy, double[] X) NearlyFlat(double shrinkCost, double larger, double shift)
    {
        var random = new Random(4);
        TriangleMesh mesh = FormedShapes.Grid(9, 9, (u, v) => new Vec3(80 * u, -80 * v, 0));
        (FlatteningProblem problem, FormingEnergy energy) = Of(mesh, shrinkCost);
        Vec2[] places = [.. mesh.Places.Select(p => new Vec2(larger * p.X, larger * p.Y) + 10 * shift * new Vec2(random.NextDouble() - 0.5, random.NextDouble() - 0.5))];
        if (problem.Rest.At(problem.ToSolver(places), 0).Determinant < 0) places = [.. places.Select(p => new Vec2(p.X, -p.Y))];
        return (problem, energy, problem.ToSolver(places));
    }

    private static double WorstMiss(FormingEnergy energy, double[] x, double step)
    {
        double[] gradient = new double[x.Length];
        energy.Assemble(x, gradient);
        double scale = gradient.Max(Math.Abs);
        return Enumerable.Range(0, x.Length).Max(i => Math.Abs(Difference(energy.Evaluate, x, i, step) - gradient[i])) / scale;
    }

    private static double Difference(Func<double[], double> value, double[] x, int i, double step)
    {
        double[] moved = [.. x];
        moved[i] = x[i] + step;
        double ahead = value(moved);
        moved[i] = x[i] - step;
        return (ahead - value(moved)) / (2 * step);
    }

    private static IEnumerable<double> Strains(RestTriangles rest, double[] x)
    {
        for (int t = 0; t < rest.Count; t++)
        {
            Jacobian j = rest.At(x, t);
            double s1 = j.Mean + j.Half;
            yield return -Math.Log(s1);
            yield return -Math.Log(j.Determinant / s1);
        }
    }
}

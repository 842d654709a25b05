using SurfaceUnroll.Flattening;
using SurfaceUnroll.Flattening.Sparse;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Tests.Flattening;

/// <summary>The sparse factorisation against a plain dense one.</summary>
public class SparseCholeskyTests
{
    // From less than a leaf of the dissection to several levels of it.
    public static TheoryData<int> Rings => [1, 2, 3, 5, 8, 12];

    [Theory]
    [MemberData(nameof(Rings))]
    public void Solution_is_that_of_plain_dense_Cholesky(int rings)
    {
        FlatteningProblem problem = FlatteningProblem.Of(FormedShapes.Disc(rings, FormedShapes.Cap), []);
        Fill(problem.Matrix, rings);
        double[,] dense = Dense(problem.Matrix);
        double[] b = Random(2 * problem.Matrix.Count, 2), x = new double[b.Length];
        Assert.True(problem.Factor.Factor());
        problem.Factor.Solve(b, x);
        double[] expected = Solve(Cholesky(dense), b);
        // The diagonal outweighs its row by half, so the condition is below ten and rounding stays below 1e-14.
        for (int i = 0; i < b.Length; i++) Assert.Equal(expected[i], x[i], 1e-13);
        problem.Factor.Solve(b, b);
        Assert.Equal(x, b);
    }

    // A bundle of exceptions would pass for a bug with those who wait for the end of what they stopped.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Work_stopped_on_both_cores_ends_as_stopped(int levels)
    {
        var front = new Front { Index = 0, Start = 0, Own = 1, Later = [], Parts = [], Work = 1 };
        for (int i = 0; i < levels; i++) front = new Front { Index = 0, Start = 0, Own = 1, Later = [], Parts = [front, front], Work = 1 };
        void Step(Front part, int place)
        {
            if (part.Parts.Length == 0) throw new OperationCanceledException();
            part.ForParts(0, Step);
        }
        Assert.Throws<OperationCanceledException>(() => front.ForParts(0, Step));
        Assert.Throws<AggregateException>(() => front.ForParts(0, (_, _) => throw new InvalidOperationException()));
    }

    [Theory]
    [InlineData(2, 90)]
    [InlineData(90, 2)]
    [InlineData(25, 25)]
    public void Solution_leaves_no_residual(int rows, int columns)
    {
        FlatteningProblem problem = FlatteningProblem.Of(FormedShapes.Scattered(rows, columns, FormedShapes.Helicoid, seed: 2), []);
        Fill(problem.Matrix, rows);
        double[] b = Random(2 * problem.Matrix.Count, 3), x = new double[b.Length], back = new double[b.Length];
        Assert.True(problem.Factor.Factor());
        problem.Factor.Solve(b, x);
        problem.Matrix.Multiply(x, back);
        for (int i = 0; i < b.Length; i++) Assert.Equal(b[i], back[i], 1e-12);
    }

    [Fact]
    public void Product_is_that_of_the_dense_matrix()
    {
        FlatteningProblem problem = FlatteningProblem.Of(FormedShapes.Disc(4, FormedShapes.Cap), []);
        Fill(problem.Matrix, 1);
        double[,] dense = Dense(problem.Matrix);
        double[] x = Random(2 * problem.Matrix.Count, 4), y = new double[x.Length];
        problem.Matrix.Multiply(x, y);
        for (int i = 0; i < x.Length; i++) Assert.Equal(Enumerable.Range(0, x.Length).Sum(j => dense[i, j] * x[j]), y[i], 1e-12);
    }

    [Fact]
    public void Both_cores_give_the_same_bits_every_time()
    {
        FlatteningProblem problem = FlatteningProblem.Of(FormedShapes.Disc(60, FormedShapes.Cap), []);
        Fill(problem.Matrix, 1);
        double[] b = Random(2 * problem.Matrix.Count, 5), first = new double[b.Length], again = new double[b.Length], back = new double[b.Length];
        Assert.True(problem.Factor.Factor());
        problem.Factor.Solve(b, first);
        problem.Matrix.Multiply(first, back);
        for (int i = 0; i < b.Length; i++) Assert.Equal(b[i], back[i], 1e-12);
        Assert.True(problem.Factor.Factor());
        problem.Factor.Solve(b, again);
        Assert.Equal(first, again);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(100)]
    [InlineData(168)]
    public void A_matrix_that_is_not_positive_is_refused_and_the_next_one_taken(int vertex)
    {
        FlatteningProblem problem = FlatteningProblem.Of(FormedShapes.Disc(7, FormedShapes.Cap), []);
        Fill(problem.Matrix, 1);
        double whole = problem.Matrix.Diagonal[3 * vertex + 2];
        problem.Matrix.Diagonal[3 * vertex + 2] = -1;
        Assert.False(problem.Factor.Factor());
        problem.Matrix.Diagonal[3 * vertex + 2] = whole;
        Assert.True(problem.Factor.Factor());
    }

    [Theory]
    [InlineData(12, 90)]
    [InlineData(40, 40)]
    [InlineData(2, 300)]
    public void Dissection_is_a_permutation_and_its_separators_separate(int rows, int columns)
    {
        TriangleMesh mesh = FormedShapes.Scattered(rows, columns, FormedShapes.Crown, seed: 1);
        MeshGraph graph = MeshGraph.Of(mesh.Places.Length, [.. mesh.Faces.SelectMany(f => new[] { f.A, f.B, f.C })]);
        Dissection dissection = Dissection.Of(graph, mesh.Places.AsSpan());
        Assert.Equal(Enumerable.Range(0, mesh.Places.Length), dissection.Order.Order());
        int levels = 0;
        Assert.Equal(0, Walk(dissection.Root, 1));
        Assert.Equal(mesh.Places.Length, dissection.Root.End);
        Assert.True(levels > 3);
        // A cut across the shorter way meets about one vertex a row; a diagonal may add one.
        Assert.InRange(dissection.Root.End - dissection.Root.Start, 1, 2 * Math.Min(rows, columns));

        // Where the part starts; left, right and separator follow one another without gaps.
        int Walk(Separator part, int level)
        {
            levels = Math.Max(levels, level);
            if (part.Left is not { } left || part.Right is not { } right) return part.Start;
            int start = Walk(left, level + 1), middle = Walk(right, level + 1);
            Assert.Equal((left.End, right.End), (middle, part.Start));
            HashSet<int> beyond = [.. dissection.Order[middle..right.End]];
            for (int i = start; i < left.End; i++)
                foreach (int w in graph.Of(dissection.Order[i])) Assert.DoesNotContain(w, beyond);
            return start;
        }
    }

    [Theory]
    [InlineData(2, 2)]
    [InlineData(8, 6)]
    [InlineData(16, 16)]
    [InlineData(50, 18)]
    [InlineData(70, 70)]
    [InlineData(150, 34)]
    public unsafe void Panel_is_the_first_columns_of_the_dense_factor(int rows, int columns)
    {
        double[,] full = Positive(rows, rows + columns), expected = Cholesky(full);
        int stride = (columns + 3) & ~3, below = rows - columns;
        double[] panel = new double[rows * stride], update = new double[below * below];
        for (int i = 0; i < rows; i++)
            for (int j = 0; j < columns; j++)
                panel[i * stride + j] = full[i, j];
        fixed (double* p = panel, u = update)
        {
            Assert.True(DenseKernel.FactorPanel(p, stride, rows, columns));
            if (below > 0) DenseKernel.SubtractOuter(u, below, p + columns * stride, stride, stride);
        }
        for (int i = 0; i < rows; i++)
            for (int j = 0; j < Math.Min(i + 1, columns); j++)
                Assert.Equal(expected[i, j], panel[i * stride + j], 1e-12);
        for (int i = 0; i < below; i++)
            for (int j = 0; j <= i; j++)
                Assert.Equal(-Enumerable.Range(0, columns).Sum(k => expected[columns + i, k] * expected[columns + j, k]), update[i * below + j], 1e-12);
    }

    [Fact]
    public unsafe void A_pivot_below_zero_is_found_in_any_block_of_a_panel()
    {
        foreach (int at in (int[])[0, 15, 16, 39])
        {
            double[,] full = Positive(40, at);
            double[] panel = new double[40 * 40];
            for (int i = 0; i < 40; i++)
                for (int j = 0; j < 40; j++)
                    panel[i * 40 + j] = i == at && j == at ? -1 : full[i, j];
            fixed (double* p = panel) Assert.False(DenseKernel.FactorPanel(p, 40, 40, 40));
        }
    }

    [Theory]
    [InlineData(2, 2, 4)]
    [InlineData(6, 10, 8)]
    [InlineData(8, 12, 24)]
    public unsafe void Products_with_and_without_wide_registers_are_the_same(int rows, int columns, int depth)
    {
        double[] a = Random(rows * depth, 1), b = Random(columns * depth, 2), c = Random(rows * columns, 3), wide = [.. c], plain = [.. c];
        fixed (double* pa = a, pb = b, pw = wide, pp = plain)
        {
            DenseKernel.SubtractProduct(pw, columns, pa, depth, pb, depth, rows, columns, depth);
            DenseKernel.SubtractProductPlain(pp, columns, pa, depth, pb, depth, rows, columns, depth);
        }
        for (int i = 0; i < rows; i++)
        {
            for (int j = 0; j < columns; j++)
            {
                double expected = c[i * columns + j] - Enumerable.Range(0, depth).Sum(k => a[i * depth + k] * b[j * depth + k]);
                Assert.Equal(expected, wide[i * columns + j], 1e-14 * depth);
                Assert.Equal(expected, plain[i * columns + j], 1e-14 * depth);
            }
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(3)]
    [InlineData(8)]
    [InlineData(29)]
    public unsafe void Sums_and_scaled_differences_are_the_plain_ones(int count)
    {
        double[] a = Random(count + 1, 1), b = Random(count + 1, 2), y = [.. b];
        fixed (double* pa = a, pb = b, py = y)
        {
            Assert.Equal(Enumerable.Range(0, count).Sum(i => a[i] * b[i]), DenseKernel.Dot(pa, pb, count), 1e-14 * (count + 1));
            DenseKernel.SubtractScaled(py, pa, 0.3, count);
        }
        for (int i = 0; i < count; i++) Assert.Equal(b[i] - 0.3 * a[i], y[i], 1e-15);
        Assert.Equal(b[count], y[count]);
    }

    // Random blocks; each diagonal value outweighs the rest of its row by half.
    private static void Fill(BlockSystem matrix, int seed)
    {
        Random(matrix.Edges.Length, seed).CopyTo(matrix.Edges, 0);
        double[] sums = new double[2 * matrix.Count];
        for (int v = 0; v < matrix.Count; v++)
        {
            for (int e = matrix.First[v]; e < matrix.First[v + 1]; e++)
            {
                for (int r = 0; r < 2; r++)
                {
                    for (int c = 0; c < 2; c++)
                    {
                        sums[2 * matrix.Later[e] + r] += Math.Abs(matrix.Edges[4 * e + 2 * r + c]);
                        sums[2 * v + c] += Math.Abs(matrix.Edges[4 * e + 2 * r + c]);
                    }
                }
            }
        }
        for (int v = 0; v < matrix.Count; v++)
        {
            (matrix.Diagonal[3 * v], matrix.Diagonal[3 * v + 1], matrix.Diagonal[3 * v + 2]) = (1.5 * (sums[2 * v] + 0.3), 0.3, 1.5 * (sums[2 * v + 1] + 0.3));
        }
    }

    private static double[,] Dense(BlockSystem matrix)
    {
        double[,] dense = new double[2 * matrix.Count, 2 * matrix.Count];
        for (int v = 0; v < matrix.Count; v++)
        {
            (dense[2 * v, 2 * v], dense[2 * v + 1, 2 * v + 1]) = (matrix.Diagonal[3 * v], matrix.Diagonal[3 * v + 2]);
            dense[2 * v, 2 * v + 1] = dense[2 * v + 1, 2 * v] = matrix.Diagonal[3 * v + 1];
            for (int e = matrix.First[v]; e < matrix.First[v + 1]; e++)
                for (int r = 0; r < 2; r++)
                    for (int c = 0; c < 2; c++)
                        dense[2 * matrix.Later[e] + r, 2 * v + c] = dense[2 * v + c, 2 * matrix.Later[e] + r] = matrix.Edges[4 * e + 2 * r + c];
        }
        return dense;
    }

    private static double[,] Positive(int size, int seed)
    {
        double[] values = Random(size * size, seed);
        double[,] matrix = new double[size, size];
        for (int i = 0; i < size; i++)
            for (int j = 0; j <= i; j++)
                matrix[i, j] = matrix[j, i] = i == j ? size : values[i * size + j];
        return matrix;
    }

    private static double[,] Cholesky(double[,] a)
    {
        int n = a.GetLength(0);
        double[,] l = new double[n, n];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double sum = a[i, j];
                for (int k = 0; k < j; k++) sum -= l[i, k] * l[j, k];
                l[i, j] = i == j ? Math.Sqrt(sum) : sum / l[j, j];
            }
        }
        return l;
    }

    private static double[] Solve(double[,] l, double[] b)
    {
        int n = b.Length;
        double[] x = [.. b];
        for (int i = 0; i < n; i++)
        {
            for (int k = 0; k < i; k++) x[i] -= l[i, k] * x[k];
            x[i] /= l[i, i];
        }
        for (int i = n - 1; i >= 0; i--)
        {
            for (int k = i + 1; k < n; k++) x[i] -= l[k, i] * x[k];
            x[i] /= l[i, i];
        }
        return x;
    }

    private static double[] Random(int count, int seed)
    {
        var random = new Random(seed);
        return [.. Enumerable.Range(0, count).Select(_ => 2 * random.NextDouble() - 1)];
    }
}

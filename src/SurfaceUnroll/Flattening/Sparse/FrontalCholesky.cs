using System.Buffers;

namespace SurfaceUnroll.Flattening.Sparse;

/// <summary>Sparse Cholesky factorisation L·Lᵀ by dense fronts, separate parts of the mesh on separate cores.</summary>
/// <remarks>Duff and Reid, "The multifrontal solution of indefinite sparse symmetric linear systems", ACM TOMS 9(3), 1983. The order of every sum is fixed by the tree, so the result
/// does not depend on how many cores take part.</remarks>
internal sealed unsafe class FrontalCholesky
{
    // Multiplications below which a part is not worth a task of its own.
    private const double WorthATask = 400_000;

    private readonly BlockSystem _matrix;
    private readonly FrontTree _tree;
    private readonly double[][] _panels;

    /// <summary>Room for the factor of a matrix.</summary>
    public FrontalCholesky(BlockSystem matrix, FrontTree tree)
    {
        (_matrix, _tree, _panels) = (matrix, tree, new double[tree.Count][]);
        Allocate(tree.Root);
    }

    /// <summary>Doubles in the factor.</summary>
    public long FactorSize => _panels.Sum(p => (long)p.Length);

    /// <summary>Factors the matrix as it now stands.</summary>
    /// <returns>False if it is not positive definite.</returns>
    public bool Factor(CancellationToken cancellation = default)
    {
        double[]? update = Factor(_tree.Root, cancellation, out bool good);
        if (update is not null) ArrayPool<double>.Shared.Return(update);
        return good;
    }

    /// <summary>Solves L·Lᵀ·x = b.</summary>
    /// <param name="b">Two values a vertex.</param>
    /// <param name="x">May be the same array as <paramref name="b"/>.</param>
    public void Solve(double[] b, double[] x)
    {
        if (b != x) Array.Copy(b, x, b.Length);
        Forward(_tree.Root, x);
        Backward(_tree.Root, x);
    }

    private void Allocate(Front front)
    {
        foreach (Front part in front.Parts) Allocate(part);
        _panels[front.Index] = GC.AllocateUninitializedArray<double>(2 * front.Size * front.Stride);
    }

    // Returns the front's update to those above it, 2·later square, from the pool.
    private double[]? Factor(Front front, CancellationToken cancellation, out bool good)
    {
        cancellation.ThrowIfCancellationRequested();
        double[]?[] updates = new double[front.Parts.Length][];
        bool[] whole = new bool[front.Parts.Length];
        front.ForParts(WorthATask, (part, i) => updates[i] = Factor(part, cancellation, out whole[i]));
        int below = 2 * front.Later.Length;
        double[] panel = _panels[front.Index];
        double[]? update = below > 0 ? ArrayPool<double>.Shared.Rent(below * below) : null;
        fixed (double* p = panel, u = update)
        {
            new Span<double>(p, panel.Length).Clear();
            new Span<double>(u, below * below).Clear();
            Assemble(front, p);
            for (int i = 0; i < updates.Length; i++) Add(front, p, u, updates[i], front.Parts[i]);
            good = !whole.Contains(false) && DenseKernel.FactorPanel(p, front.Stride, 2 * front.Size, front.Columns);
            if (good && below > 0) DenseKernel.SubtractOuter(u, below, p + (long)front.Columns * front.Stride, front.Stride, front.Stride);
        }
        foreach (double[]? used in updates)
            if (used is not null) ArrayPool<double>.Shared.Return(used);
        return update;
    }

    private void Assemble(Front front, double* panel)
    {
        for (int v = front.Start; v < front.Start + front.Own; v++)
        {
            int column = 2 * (v - front.Start), stride = front.Stride;
            double* top = panel + (long)column * stride + column;
            top[0] = _matrix.Diagonal[3 * v];
            top[stride] = top[1] = _matrix.Diagonal[3 * v + 1];
            top[stride + 1] = _matrix.Diagonal[3 * v + 2];
            for (int e = _matrix.First[v]; e < _matrix.First[v + 1]; e++)
            {
                double* at = panel + (long)(2 * _tree.EdgeRows[e]) * stride + column;
                at[0] = _matrix.Edges[4 * e];
                at[1] = _matrix.Edges[4 * e + 1];
                at[stride] = _matrix.Edges[4 * e + 2];
                at[stride + 1] = _matrix.Edges[4 * e + 3];
            }
        }
    }

    // Adds the lower triangle of a part's update, block by block.
    private static void Add(Front front, double* panel, double* update, double[]? from, Front child)
    {
        if (from is null) return;
        int[] rows = child.RowsAbove;
        int count = child.Later.Length, width = 2 * count, below = 2 * front.Later.Length;
        int inPanel = 0;
        while (inPanel < count && rows[inPanel] < front.Own) inPanel++;
        fixed (double* source = from)
        {
            for (int i = 0; i < count; i++)
            {
                double* s0 = source + (long)(2 * i) * width, s1 = s0 + width;
                double* p0 = panel + (long)(2 * rows[i]) * front.Stride, p1 = p0 + front.Stride;
                int j = 0;
                for (; j <= i && j < inPanel; j++)
                {
                    int at = 2 * rows[j], of = 2 * j;
                    p0[at] += s0[of];
                    p0[at + 1] += s0[of + 1];
                    p1[at] += s1[of];
                    p1[at + 1] += s1[of + 1];
                }
                if (i < inPanel) continue;
                double* u0 = update + (long)(2 * (rows[i] - front.Own)) * below, u1 = u0 + below;
                for (; j <= i; j++)
                {
                    int at = 2 * (rows[j] - front.Own), of = 2 * j;
                    u0[at] += s0[of];
                    u0[at + 1] += s0[of + 1];
                    u1[at] += s1[of];
                    u1[at + 1] += s1[of + 1];
                }
            }
        }
    }

    // Solves with L; what the front takes from later vertices is handed up, so that parts on separate cores never write to the same place.
    private double[] Forward(Front front, double[] x)
    {
        double[][] handed = new double[front.Parts.Length][];
        front.ForParts(10 * WorthATask, (part, i) => handed[i] = Forward(part, x));
        double[] local = new double[2 * front.Size];
        for (int i = 0; i < handed.Length; i++) Gather(local, handed[i], front.Parts[i].RowsAbove);
        int columns = front.Columns, rows = 2 * front.Size, stride = front.Stride;
        double[] taken = new double[rows - columns];
        fixed (double* panel = _panels[front.Index], w = local)
        {
            for (int i = 0; i < columns; i++)
            {
                double* row = panel + (long)i * stride;
                w[i] = (x[2 * front.Start + i] + w[i] - DenseKernel.Dot(row, w, i)) / row[i];
            }
            for (int i = columns; i < rows; i++) taken[i - columns] = w[i] - DenseKernel.Dot(panel + (long)i * stride, w, columns);
            local.AsSpan(0, columns).CopyTo(x.AsSpan(2 * front.Start));
        }
        return taken;
    }

    private static void Gather(double[] local, double[] taken, int[] rows)
    {
        for (int i = 0; i < rows.Length; i++)
        {
            local[2 * rows[i]] += taken[2 * i];
            local[2 * rows[i] + 1] += taken[2 * i + 1];
        }
    }

    private void Backward(Front front, double[] x)
    {
        int columns = front.Columns, stride = front.Stride;
        fixed (double* panel = _panels[front.Index], all = x)
        {
            double* own = all + 2 * front.Start;
            for (int i = 0; i < front.Later.Length; i++)
            {
                double* row = panel + (long)(columns + 2 * i) * stride;
                double* later = all + 2 * front.Later[i];
                DenseKernel.SubtractScaled(own, row, later[0], columns);
                DenseKernel.SubtractScaled(own, row + stride, later[1], columns);
            }
            for (int i = columns - 1; i >= 0; i--)
            {
                double* row = panel + (long)i * stride;
                own[i] /= row[i];
                DenseKernel.SubtractScaled(own, row, own[i], i);
            }
        }
        front.ForParts(10 * WorthATask, (part, _) => Backward(part, x));
    }
}

namespace SurfaceUnroll.Flattening.Sparse;

/// <summary>A symmetric matrix with a 2 × 2 block for every vertex of a mesh and for every edge.</summary>
/// <param name="First">For each vertex where its edges to later vertices start; one more at the end.</param>
/// <param name="Later">Later vertex of each edge, increasing within each vertex.</param>
internal sealed record BlockSystem(int[] First, int[] Later)
{
    /// <summary>Number of vertices.</summary>
    public int Count => First.Length - 1;

    /// <summary>Diagonal blocks: xx, xy, yy of each vertex.</summary>
    public double[] Diagonal { get; } = new double[3 * (First.Length - 1)];

    /// <summary>Edge blocks, the later vertex giving the row: xx, xy, yx, yy of each edge.</summary>
    public double[] Edges { get; } = new double[4 * Later.Length];

    /// <summary>The zero matrix of a mesh.</summary>
    public static BlockSystem Of(MeshGraph graph)
    {
        int[] first = new int[graph.Count + 1];
        int[] later = new int[graph.Neighbours.Length / 2];
        int filled = 0;
        for (int v = 0; v < graph.Count; v++)
        {
            first[v] = filled;
            foreach (int w in graph.Of(v))
                if (w > v) later[filled++] = w;
        }
        first[graph.Count] = filled;
        return new BlockSystem(first, later);
    }

    /// <summary>Where the edge between two vertices stands in <see cref="Later"/>.</summary>
    public int EdgeOf(int earlier, int later) => Array.BinarySearch(Later, First[earlier], First[earlier + 1] - First[earlier], later);

    /// <summary>y = M·x.</summary>
    public void Multiply(double[] x, double[] y)
    {
        for (int v = 0; v < Count; v++)
        {
            y[2 * v] = Diagonal[3 * v] * x[2 * v] + Diagonal[3 * v + 1] * x[2 * v + 1];
            y[2 * v + 1] = Diagonal[3 * v + 1] * x[2 * v] + Diagonal[3 * v + 2] * x[2 * v + 1];
        }
        for (int v = 0; v < Count; v++)
        {
            (double vx, double vy, double sx, double sy) = (x[2 * v], x[2 * v + 1], 0.0, 0.0);
            for (int e = First[v]; e < First[v + 1]; e++)
            {
                ReadOnlySpan<double> block = Edges.AsSpan(4 * e, 4);
                int w = 2 * Later[e];
                (double wx, double wy) = (x[w], x[w + 1]);
                y[w] += block[0] * vx + block[1] * vy;
                y[w + 1] += block[2] * vx + block[3] * vy;
                sx += block[0] * wx + block[2] * wy;
                sy += block[1] * wx + block[3] * wy;
            }
            y[2 * v] += sx;
            y[2 * v + 1] += sy;
        }
    }
}

using SurfaceUnroll.Flattening.Sparse;

namespace SurfaceUnroll.Flattening;

/// <summary>A first blank that never turns a triangle over: the border on a circle, every inner vertex in the middle of its neighbours.</summary>
/// <remarks>W. T. Tutte, "How to draw a graph", Proc. London Mathematical Society 13, 1963.</remarks>
internal static class BarycentricStart
{
    /// <summary>Lays a mesh out.</summary>
    /// <param name="problem">The mesh.</param>
    /// <param name="border">Border vertices in order, the sheet on the left, in the order of elimination.</param>
    /// <param name="lengths">Formed length from each border vertex to the next.</param>
    /// <param name="cancellation">Stops the factorisation.</param>
    public static double[] Of(FlatteningProblem problem, int[] border, double[] lengths, CancellationToken cancellation)
    {
        BlockSystem matrix = problem.Matrix;
        bool[] onBorder = new bool[matrix.Count];
        double[] x = new double[2 * matrix.Count];
        double total = lengths.Sum(), walked = 0;
        for (int i = 0; i < border.Length; i++)
        {
            onBorder[border[i]] = true;
            (double sin, double cos) = Math.SinCos(2 * Math.PI * walked / total);
            (x[2 * border[i]], x[2 * border[i] + 1]) = (cos, sin);
            walked += lengths[i];
        }
        Array.Clear(matrix.Edges);
        Array.Clear(matrix.Diagonal);
        for (int v = 0; v < matrix.Count; v++)
        {
            double degree = onBorder[v] ? 1 : problem.Graph.Of(v).Length;
            matrix.Diagonal[3 * v] = matrix.Diagonal[3 * v + 2] = degree;
            for (int e = matrix.First[v]; e < matrix.First[v + 1]; e++)
            {
                int w = matrix.Later[e];
                if (!onBorder[v] && !onBorder[w]) matrix.Edges[4 * e] = matrix.Edges[4 * e + 3] = -1;
                else if (onBorder[v] != onBorder[w]) Load(onBorder[v] ? v : w, onBorder[v] ? w : v);
            }
        }
        problem.Factor.Factor(cancellation);
        problem.Factor.Solve(x, x);
        ConformalStart.BestScale(problem.Rest, x);
        return x;

        void Load(int from, int to)
        {
            x[2 * to] += x[2 * from];
            x[2 * to + 1] += x[2 * from + 1];
        }
    }
}

using SurfaceUnroll.Flattening.Sparse;

namespace SurfaceUnroll.Flattening;

/// <summary>A first blank for any disc: the least-squares conformal map between two fixed vertices.</summary>
internal static class ConformalStart
{
    /// <summary>Lays a mesh out.</summary>
    /// <param name="problem">The mesh.</param>
    /// <param name="energy">Fills the problem's matrix.</param>
    /// <param name="pins">Two vertices far apart, in the order of elimination.</param>
    /// <param name="cancellation">Stops the factorisation.</param>
    /// <returns>Two values a vertex; null if the map turns a triangle over.</returns>
    public static double[]? Of(FlatteningProblem problem, FormingEnergy energy, (int A, int B) pins, CancellationToken cancellation)
    {
        BlockSystem matrix = problem.Matrix;
        energy.AssembleConformal();
        double[] x = new double[2 * matrix.Count];
        Fix(matrix, pins.B, x);
        Fix(matrix, pins.A, null);
        if (!problem.Factor.Factor(cancellation)) return null;
        problem.Factor.Solve(x, x);
        return BestScale(problem.Rest, x) ? x : null;
    }

    // Takes a vertex out of the system; if there is a right-hand side, with the vertex at (1, 0), else at the origin.
    private static void Fix(BlockSystem matrix, int fixedVertex, double[]? right)
    {
        for (int v = 0; v < matrix.Count; v++)
        {
            for (int e = matrix.First[v]; e < matrix.First[v + 1]; e++)
            {
                int w = matrix.Later[e];
                if (v != fixedVertex && w != fixedVertex) continue;
                Span<double> block = matrix.Edges.AsSpan(4 * e, 4);
                if (right is not null)
                {
                    int other = v == fixedVertex ? w : v;
                    right[2 * other] -= block[0];
                    right[2 * other + 1] -= v == fixedVertex ? block[2] : block[1];
                }
                block.Clear();
            }
        }
        (matrix.Diagonal[3 * fixedVertex], matrix.Diagonal[3 * fixedVertex + 1], matrix.Diagonal[3 * fixedVertex + 2]) = (1, 0, 1);
        if (right is not null) (right[2 * fixedVertex], right[2 * fixedVertex + 1]) = (1, 0);
    }

    // Scales the map so that its logarithmic strains sum to zero, which is the scale of least energy where shrinking costs what stretching does. False if a triangle is turned over.
    internal static bool BestScale(RestTriangles rest, double[] x)
    {
        double sum = 0, area = 0;
        for (int t = 0; t < rest.Count; t++)
        {
            double determinant = rest.At(x, t).Determinant;
            if (!(determinant > 0)) return false;
            sum += rest.Area[t] * Math.Log(determinant);
            area += rest.Area[t];
        }
        double scale = Math.Exp(-0.5 * sum / area);
        for (int i = 0; i < x.Length; i++) x[i] *= scale;
        return true;
    }
}

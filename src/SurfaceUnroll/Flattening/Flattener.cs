using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Flattening;

/// <summary>Finds the blank of least forming energy for a mesh that cannot only bend.</summary>
/// <remarks>E = Σ A·(2/3)(a₁² + a₁a₂ + a₂²) over triangles; docs/methods.md has the derivation.</remarks>
public static class Flattener
{
    /// <summary>Flattens one disc of triangles.</summary>
    /// <param name="mesh">One disc without flat or turned triangles.</param>
    /// <param name="shrinkCost">What shrinking costs against stretching by as much, ≥ 1.</param>
    /// <param name="start">A first blank; used if it turns no triangle over.</param>
    /// <param name="progress">Told the number of steps taken and the energy reached.</param>
    /// <param name="cancellation">Stops between steps.</param>
    public static FlattenedMesh Flatten(
        TriangleMesh mesh, double shrinkCost = 1, ImmutableArray<Vec2>? start = null, Action<int, double>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        ArgumentOutOfRangeException.ThrowIfLessThan(shrinkCost, 1);
        FlatteningProblem problem = FlatteningProblem.Of(mesh);
        var energy = new FormingEnergy(problem.Rest, problem.Matrix, shrinkCost);
        (double[] x, FlatteningStart kind) = First(mesh, problem, energy, start, cancellation);
        (int steps, double reached) = new NewtonDescent(energy, problem.Matrix, problem.Factor, problem.Rest.TotalArea).Run(x, progress, cancellation);
        (double stretch, double shrink) = Worst(problem.Rest, x);
        return new FlattenedMesh(problem.FromSolver(x), kind, steps, reached, stretch, shrink);
    }

    private static (double[] X, FlatteningStart Kind) First(
        TriangleMesh mesh, FlatteningProblem problem, FormingEnergy energy, ImmutableArray<Vec2>? start, CancellationToken cancellation)
    {
        if (start is { } given)
        {
            double[] x = problem.ToSolver(given.AsSpan());
            if (double.IsFinite(energy.Evaluate(x))) return (x, FlatteningStart.Given);
        }
        int[] rank = problem.Ranks();
        (int a, int b) = FarApart(mesh);
        if (ConformalStart.Of(problem, energy, (rank[a], rank[b]), cancellation) is { } conformal) return (conformal, FlatteningStart.Conformal);
        ImmutableArray<int> border = MeshBorder.Of(mesh);
        double[] lengths = [.. border.Select((v, i) => (mesh.Places[border[(i + 1) % border.Length]] - mesh.Places[v]).Length)];
        return (BarycentricStart.Of(problem, [.. border.Select(v => rank[v])], lengths, cancellation), FlatteningStart.Barycentric);
    }

    // The vertex farthest from the first one, and the one farthest from that.
    private static (int A, int B) FarApart(TriangleMesh mesh)
    {
        int a = Farthest(0);
        return (a, Farthest(a));

        int Farthest(int from)
        {
            (int best, double length) = (from, -1);
            for (int i = 0; i < mesh.Places.Length; i++)
            {
                double d = (mesh.Places[i] - mesh.Places[from]).Length;
                if (d > length) (best, length) = (i, d);
            }
            return best;
        }
    }

    private static (double Stretch, double Shrink) Worst(RestTriangles rest, double[] x)
    {
        double largest = 1, smallest = 1;
        for (int t = 0; t < rest.Count; t++)
        {
            Jacobian j = rest.At(x, t);
            double s1 = j.Mean + j.Half;
            largest = Math.Max(largest, s1);
            smallest = Math.Min(smallest, j.Determinant / s1);
        }
        return (1 / smallest - 1, 1 - 1 / largest);
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Flattening;

/// <summary>Finds the blank of least forming energy for a mesh that cannot only bend.</summary>
/// <remarks>E = Σ A·(2/3)(a₁² + a₁a₂ + a₂²) over triangles; docs/methods.md has the derivation.</remarks>
public static class Flattener
{
    // Descents in which held edges must come to their length.
    private const int MostDescents = 12;

    /// <summary>Flattens one disc of triangles.</summary>
    /// <param name="mesh">One disc without flat or turned triangles: <see cref="DiscCheck"/> finds no fault with it.</param>
    /// <param name="options">How; the default if null.</param>
    /// <param name="cancellation">Stops between steps.</param>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public static FlattenedMesh Flatten(TriangleMesh mesh, FlatteningOptions? options = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        options ??= FlatteningOptions.Default;
        ArgumentOutOfRangeException.ThrowIfLessThan(options.ShrinkCost, 1);
        FlatteningProblem problem = FlatteningProblem.Of(mesh, options.Held);
        var energy = new FormingEnergy(problem.Rest, problem.Matrix, options.ShrinkCost);
        (double[] x, FlatteningStart kind) = First(mesh, problem, energy, options.Starts, cancellation);
        var held = new HeldEdges(mesh, options.Held, problem.Rank, problem.Rest.TotalArea);
        var descent = new NewtonDescent(energy, held, problem, options.ShrinkCost == 1 ? NewtonDescent.Smooth : NewtonDescent.Kinked);
        int steps = 0;
        for (int i = 0; i < MostDescents; i++)
        {
            steps += descent.Run(x, options.Progress, cancellation);
            if (held.Tighten(x)) break;
        }
        (double stretch, double shrink) = Worst(problem.Rest, x);
        return new FlattenedMesh(problem.FromSolver(x), kind, steps, energy.Evaluate(x), stretch, shrink);
    }

    private static (double[] X, FlatteningStart Kind) First(
        TriangleMesh mesh, FlatteningProblem problem, FormingEnergy energy, ImmutableArray<ImmutableArray<Vec2>> starts, CancellationToken cancellation)
    {
        foreach (ImmutableArray<Vec2> given in starts)
        {
            double[] x = problem.ToSolver(given.AsSpan());
            if (double.IsFinite(energy.Evaluate(x))) return (x, FlatteningStart.Given);
        }
        int[] rank = problem.Rank;
        (int a, int b) = FarApart(mesh);
        if (ConformalStart.Of(problem, energy, (rank[a], rank[b]), cancellation) is { } conformal) return (conformal, FlatteningStart.Conformal);
        ImmutableArray<int> border = DiscCheck.Border(mesh);
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

    /// <summary>Largest engineering stretch and shrink of the triangles of a mesh from its blank, both ≥ 0.</summary>
    internal static (double Stretch, double Shrink) Worst(TriangleMesh mesh, ImmutableArray<Vec2> flat) =>
        Worst(RestTriangles.Of(mesh), RestTriangles.ValuesOf(flat.AsSpan()));

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

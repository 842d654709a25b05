using System.Collections.Immutable;
using SurfaceUnroll.Flattening;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Tests.Flattening;

/// <summary>What must hold of every blank.</summary>
internal static class BlankAsserts
{
    /// <summary>Every triangle is counter-clockwise on the blank.</summary>
    public static void NoneTurned(TriangleMesh mesh, ImmutableArray<Vec2> flat) =>
        Assert.All(mesh.Faces, f => Assert.True((flat[f.B] - flat[f.A]).Cross(flat[f.C] - flat[f.A]) > 0));

    /// <summary>Flattens, and looks that no triangle was turned over.</summary>
    public static FlattenedMesh Flatten(TriangleMesh mesh, FlatteningOptions? options = null, CancellationToken cancellation = default)
    {
        FlattenedMesh blank = Flattener.Flatten(mesh, options, cancellation);
        NoneTurned(mesh, blank.Flat);
        return blank;
    }

    /// <summary>Largest difference between the distances of vertices on two blanks, relative to the larger blank's reach.</summary>
    public static double Difference(ImmutableArray<Vec2> a, ImmutableArray<Vec2> b)
    {
        double worst = 0, reach = 0;
        for (int i = 0; i < a.Length; i++)
        {
            for (int j = 0; j < i; j++)
            {
                double one = (a[i] - a[j]).Length, other = (b[i] - b[j]).Length;
                worst = Math.Max(worst, Math.Abs(one - other));
                reach = Math.Max(reach, Math.Max(one, other));
            }
        }
        return worst / reach;
    }

    /// <summary>The blank with the border on a circle, as the solver makes it where the conformal map turns triangles over.</summary>
    public static ImmutableArray<Vec2> Barycentric(TriangleMesh mesh)
    {
        FlatteningProblem problem = FlatteningProblem.Of(mesh, []);
        int[] rank = problem.Rank;
        ImmutableArray<int> border = DiscCheck.Border(mesh);
        double[] lengths = [.. border.Select((v, i) => (mesh.Places[border[(i + 1) % border.Length]] - mesh.Places[v]).Length)];
        return problem.FromSolver(BarycentricStart.Of(problem, [.. border.Select(v => rank[v])], lengths, CancellationToken.None));
    }
}

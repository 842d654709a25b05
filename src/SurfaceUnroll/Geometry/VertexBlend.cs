namespace SurfaceUnroll.Geometry;

/// <summary>A vertex as the mean of up to three vertices of a mesh before.</summary>
/// <param name="A">Number of the first.</param>
/// <param name="B">Number of the second.</param>
/// <param name="C">Number of the third.</param>
/// <param name="U">Weight of the second.</param>
/// <param name="V">Weight of the third; the first has the rest.</param>
internal readonly record struct VertexBlend(int A, int B, int C, double U, double V)
{
    /// <summary>The vertex as it was.</summary>
    public static VertexBlend Same(int vertex) => new(vertex, vertex, vertex, 0, 0);

    /// <summary>A place on the way from one vertex to another.</summary>
    public static VertexBlend Between(int a, int b, double share) => new(a, b, a, share, 0);

    /// <summary>Mean of values at the vertices.</summary>
    public Vec3 Of(IReadOnlyList<Vec3> values) => IsSame ? values[A] : (1 - U - V) * values[A] + U * values[B] + V * values[C];

    /// <summary>Mean of values at the vertices.</summary>
    public Vec2 Of(IReadOnlyList<Vec2> values) => IsSame ? values[A] : (1 - U - V) * values[A] + U * values[B] + V * values[C];

    /// <summary>Mean of values at the vertices.</summary>
    public double Of(Func<int, double> value) => IsSame ? value(A) : (1 - U - V) * value(A) + U * value(B) + V * value(C);

    /// <summary>The vertex of the three that weighs most.</summary>
    public int Main => U > 0.5 ? B : V > 0.5 ? C : A;

    private bool IsSame => U == 0 && V == 0;
}

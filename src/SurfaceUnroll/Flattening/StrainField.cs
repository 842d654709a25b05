using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Flattening;

/// <summary>Strain from blank to part at the vertices of a mesh: the mean of the triangles around each, weighed by their areas.</summary>
public static class StrainField
{
    /// <summary>The map of a mesh and its blank.</summary>
    /// <param name="mesh">Formed.</param>
    /// <param name="flat">Place of each vertex on the blank, no triangle turned over.</param>
    /// <remarks>What is averaged is the logarithmic strain tensor on the blank, ln(FᵀF)/2 with F = J⁻¹ the map from blank to part: from J = R(φ)·diag(s₁, s₂)·R(ψ)
    /// follows FᵀF = R(φ)·diag(s₁⁻², s₂⁻²)·R(−φ).</remarks>
    public static StrainMap Of(TriangleMesh mesh, ImmutableArray<Vec2> flat)
    {
        RestTriangles rest = RestTriangles.Of(mesh);
        double[] x = RestTriangles.ValuesOf(flat.AsSpan());
        var sums = new (double Area, double Xx, double Xy, double Yy)[flat.Length];
        for (int t = 0; t < rest.Count; t++)
        {
            Jacobian j = rest.At(x, t);
            double mean = j.Mean, half = j.Half, s1 = mean + half, area = rest.Area[t];
            double e1 = -Math.Log(s1), e2 = -Math.Log(j.Determinant / s1), middle = 0.5 * (e1 + e2), reach = 0.5 * (e1 - e2);
            (double c2, double z2) = j.Sum(mean);
            (double c1, double z1) = j.Difference(half);
            // cos 2φ and sin 2φ from φ + ψ and φ − ψ.
            double cos = c2 * c1 - z2 * z1, sin = z2 * c1 + c2 * z1;
            foreach (int v in rest.Corners.AsSpan(3 * t, 3))
            {
                ref (double Area, double Xx, double Xy, double Yy) sum = ref sums[v];
                sum = (sum.Area + area, sum.Xx + area * (middle + reach * cos), sum.Xy + area * reach * sin, sum.Yy + area * (middle - reach * cos));
            }
        }
        return new StrainMap([.. sums.Select(s => s.Area > 0 ? Principal(s.Xx / s.Area, s.Xy / s.Area, s.Yy / s.Area) : new VertexStrain(0, 0, new Vec2(1, 0), 0))]);
    }

    private static VertexStrain Principal(double xx, double xy, double yy)
    {
        double middle = 0.5 * (xx + yy), reach = Math.Sqrt(0.25 * (xx - yy) * (xx - yy) + xy * xy);
        Vec2 direction = Vec2.FromAngle(0.5 * Math.Atan2(2 * xy, xx - yy));
        return new VertexStrain(Math.Exp(middle + reach) - 1, Math.Exp(middle - reach) - 1, direction, Math.Exp(-2 * middle) - 1);
    }
}

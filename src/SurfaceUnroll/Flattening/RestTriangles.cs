using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Flattening;

/// <summary>The formed triangles of a mesh, each laid out alone in its own plane.</summary>
/// <remarks>Corner a of a triangle lies at (0, 0), b at (l, 0) and c at (p, h). The Jacobian from the formed triangle to its place on the blank is then
/// J = [ub − ua, uc − ua]·[l p; 0 h]⁻¹, linear in the blank's places u.</remarks>
internal sealed class RestTriangles
{
    private RestTriangles(int vertices, int[] corners)
    {
        (Vertices, Corners) = (vertices, corners);
        (Alpha, Beta, Gamma, Area) = (new double[Count], new double[Count], new double[Count], new double[Count]);
    }

    /// <summary>Number of vertices.</summary>
    public int Vertices { get; }

    /// <summary>Three vertices a triangle.</summary>
    public int[] Corners { get; }

    /// <summary>1/l.</summary>
    public double[] Alpha { get; }

    /// <summary>−p/(l·h).</summary>
    public double[] Beta { get; }

    /// <summary>1/h.</summary>
    public double[] Gamma { get; }

    /// <summary>Formed area, mm².</summary>
    public double[] Area { get; }

    /// <summary>Number of triangles.</summary>
    public int Count => Corners.Length / 3;

    /// <summary>Sum of the formed areas, mm².</summary>
    public double TotalArea => Area.Sum();

    /// <summary>Three vertices a face, in the mesh's own order.</summary>
    public static int[] CornersOf(TriangleMesh mesh)
    {
        int[] corners = new int[3 * mesh.Faces.Length];
        for (int t = 0; t < mesh.Faces.Length; t++) (corners[3 * t], corners[3 * t + 1], corners[3 * t + 2]) = mesh.Faces[t];
        return corners;
    }

    /// <summary>Two values a vertex.</summary>
    public static double[] ValuesOf(ReadOnlySpan<Vec2> flat)
    {
        double[] x = new double[2 * flat.Length];
        for (int i = 0; i < flat.Length; i++) (x[2 * i], x[2 * i + 1]) = flat[i];
        return x;
    }

    /// <summary>Lays out the triangles of a mesh, vertices in its own order.</summary>
    public static RestTriangles Of(TriangleMesh mesh) => Of(mesh.Places.AsSpan(), CornersOf(mesh));

    /// <summary>Lays out triangles.</summary>
    /// <param name="places">Formed place of each vertex, mm.</param>
    /// <param name="corners">Three vertices a triangle; no triangle without area.</param>
    public static RestTriangles Of(ReadOnlySpan<Vec3> places, int[] corners)
    {
        var rest = new RestTriangles(places.Length, corners);
        for (int t = 0; t < rest.Count; t++)
        {
            Vec3 a = places[corners[3 * t]];
            Vec3 ab = places[corners[3 * t + 1]] - a, ac = places[corners[3 * t + 2]] - a;
            double l = ab.Length, h = ab.Cross(ac).Length / l, p = ab.Dot(ac) / l;
            rest.Alpha[t] = 1 / l;
            rest.Beta[t] = -p / (l * h);
            rest.Gamma[t] = 1 / h;
            rest.Area[t] = 0.5 * l * h;
        }
        return rest;
    }

    /// <summary>The Jacobian of a triangle for places on the blank, two values a vertex.</summary>
    public Jacobian At(double[] x, int t)
    {
        int a = 2 * Corners[3 * t], b = 2 * Corners[3 * t + 1], c = 2 * Corners[3 * t + 2];
        double ux = x[b] - x[a], uy = x[b + 1] - x[a + 1], wx = x[c] - x[a], wy = x[c + 1] - x[a + 1];
        return new Jacobian(Alpha[t] * ux, Alpha[t] * uy, Beta[t] * ux + Gamma[t] * wx, Beta[t] * uy + Gamma[t] * wy);
    }
}

/// <summary>The map from a formed triangle to the blank, column by column, taken apart into rotations and stretches in closed form.</summary>
/// <remarks>J = R(φ)·diag(s₁, s₂)·R(ψ). With E = (Jxx + Jyy)/2, H = (Jyx − Jxy)/2, F = (Jxx − Jyy)/2, G = (Jyx + Jxy)/2: s₁ + s₂ = 2·|(E, H)| and
/// φ + ψ is the angle of (E, H); s₁ − s₂ = 2·|(F, G)| and φ − ψ is the angle of (F, G).</remarks>
internal readonly struct Jacobian(double xx, double yx, double xy, double yy)
{
    private readonly double _e = 0.5 * (xx + yy), _h = 0.5 * (yx - xy), _f = 0.5 * (xx - yy), _g = 0.5 * (yx + xy);

    /// <summary>(s₁ + s₂)/2.</summary>
    public double Mean => Math.Sqrt(_e * _e + _h * _h);

    /// <summary>(s₁ − s₂)/2.</summary>
    public double Half => Math.Sqrt(_f * _f + _g * _g);

    /// <summary>Determinant; not positive where the triangle is turned over.</summary>
    public double Determinant => xx * yy - xy * yx;

    /// <summary>Unit vector at the angle φ + ψ, with <paramref name="mean"/> = <see cref="Mean"/>.</summary>
    public (double Cos, double Sin) Sum(double mean) => (_e / mean, _h / mean);

    /// <summary>Unit vector at the angle φ − ψ; any where the stretches are equal.</summary>
    public (double Cos, double Sin) Difference(double half) => half > 1e-300 ? (_f / half, _g / half) : (1, 0);
}

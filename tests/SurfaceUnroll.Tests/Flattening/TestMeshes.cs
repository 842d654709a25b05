using System.Globalization;
using System.Text;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Tests.Flattening;

/// <summary>Meshes made in code, mm.</summary>
internal static class TestMeshes
{
    /// <summary>A rectangle of squares cut in two, bent by <paramref name="place"/>; the first index runs fastest.</summary>
    /// <param name="across">Squares across.</param>
    /// <param name="along">Squares along.</param>
    /// <param name="place">Place of a corner, counted across and along.</param>
    /// <param name="wrap">The corner that stands for another, where edges are joined.</param>
    public static TriangleMesh Grid(int across, int along, Func<int, int, Vec3> place, Func<int, int, (int, int)>? wrap = null)
    {
        var numbers = new Dictionary<(int, int), int>();
        var places = new List<Vec3>();
        int Vertex(int i, int j)
        {
            (int, int) key = wrap?.Invoke(i, j) ?? (i, j);
            if (!numbers.TryGetValue(key, out int number))
            {
                numbers[key] = number = places.Count;
                places.Add(place(key.Item1, key.Item2));
            }
            return number;
        }
        var faces = new List<(int, int, int)>();
        for (int j = 0; j < along; j++)
        {
            for (int i = 0; i < across; i++)
            {
                (int a, int b, int c, int d) = (Vertex(i, j), Vertex(i + 1, j), Vertex(i + 1, j + 1), Vertex(i, j + 1));
                faces.Add((a, b, c));
                faces.Add((a, c, d));
            }
        }
        return new TriangleMesh([.. places], [.. faces]);
    }

    /// <summary>Four triangles all round.</summary>
    public static TriangleMesh Ball { get; } = new([Vec3.Zero, new(1, 0, 0), new(0, 1, 0), new(0, 0, 1)], [(0, 2, 1), (0, 1, 3), (1, 2, 3), (0, 3, 2)]);

    /// <summary>Three triangles on one edge.</summary>
    public static TriangleMesh Leaves { get; } = new(
        [Vec3.Zero, new(10, 0, 0), new(0, 10, 0), new(0, -10, 0), new(0, 0, 10)], [(0, 1, 2), (1, 0, 3), (0, 1, 4)]);

    /// <summary>Two triangles with one vertex in common.</summary>
    public static TriangleMesh BowTie { get; } = new(
        [Vec3.Zero, new(10, 5, 0), new(10, -5, 0), new(-10, 5, 0), new(-10, -5, 0)], [(0, 2, 1), (0, 3, 4)]);

    /// <summary>Two triangles, the second without area.</summary>
    public static TriangleMesh WithThinFace { get; } = new([Vec3.Zero, new(10, 0, 0), new(10, 10, 0), new(5, 5, 0)], [(0, 1, 2), (0, 2, 3)]);

    /// <summary>A flat square of side 100.</summary>
    public static TriangleMesh Sheet(int n = 10) => Grid(n, n, (i, j) => new Vec3(0, 100.0 * i / n, 100.0 * j / n));

    /// <summary>A cylinder about x, not joined where it closes if <paramref name="cut"/>.</summary>
    public static TriangleMesh Tube(int round = 12, int along = 5, bool cut = false, double taper = 0) => Grid(
        round, along, (i, j) => new Vec3(50 * j, (100 - taper * j) * Math.Cos(Math.Tau * (i % round) / round), (100 - taper * j) * Math.Sin(Math.Tau * (i % round) / round)),
        cut ? null : (i, j) => (i % round, j));

    /// <summary>A strip joined after half a twist.</summary>
    public static TriangleMesh Moebius(int round = 24, int across = 2) => Grid(
        across, round,
        (i, j) =>
        {
            (double angle, double out_) = (Math.Tau * j / round, 40.0 * i / across - 20);
            double radius = 100 + out_ * Math.Cos(angle / 2);
            return new Vec3(out_ * Math.Sin(angle / 2), radius * Math.Cos(angle), radius * Math.Sin(angle));
        },
        (i, j) => j == round ? (across - i, 0) : (i, j));

    /// <summary>A ring with a round section, closed both ways.</summary>
    public static TriangleMesh Torus(int n = 12) => Grid(
        n, n,
        (i, j) =>
        {
            (double a, double b) = (Math.Tau * i / n, Math.Tau * j / n);
            return new Vec3(30 * Math.Sin(b), (100 + 30 * Math.Cos(b)) * Math.Cos(a), (100 + 30 * Math.Cos(b)) * Math.Sin(a));
        },
        (i, j) => (i % n, j % n));

    /// <summary>Without some faces.</summary>
    public static TriangleMesh Without(this TriangleMesh mesh, params int[] faces) => mesh with { Faces = [.. mesh.Faces.Where((_, f) => !faces.Contains(f))] };

    /// <summary>With some faces turned over.</summary>
    public static TriangleMesh Turned(this TriangleMesh mesh, Func<int, bool> which) => mesh with { Faces = [.. mesh.Faces.Select((t, f) => which(f) ? (t.A, t.C, t.B) : t)] };

    /// <summary>Two meshes as one, the other moved.</summary>
    public static TriangleMesh And(this TriangleMesh mesh, TriangleMesh other, Vec3 moved)
    {
        int n = mesh.Places.Length;
        return new TriangleMesh([.. mesh.Places, .. other.Places.Select(p => p + moved)], [.. mesh.Faces, .. other.Faces.Select(f => (f.A + n, f.B + n, f.C + n))]);
    }

    /// <summary>Every triangle with corners of its own.</summary>
    public static TriangleMesh Loose(this TriangleMesh mesh) => new(
        [.. mesh.Faces.SelectMany(f => new[] { mesh.Places[f.A], mesh.Places[f.B], mesh.Places[f.C] })],
        [.. mesh.Faces.Select((_, f) => (3 * f, 3 * f + 1, 3 * f + 2))]);

    /// <summary>As a Wavefront OBJ file.</summary>
    public static byte[] Obj(TriangleMesh mesh)
    {
        var text = new StringBuilder();
        foreach (Vec3 p in mesh.Places) text.Append(CultureInfo.InvariantCulture, $"v {p.X:R} {p.Y:R} {p.Z:R}\n");
        foreach ((int a, int b, int c) in mesh.Faces) text.Append(CultureInfo.InvariantCulture, $"f {a + 1} {b + 1} {c + 1}\n");
        return Encoding.Latin1.GetBytes(text.ToString());
    }
}

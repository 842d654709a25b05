using System.Globalization;
using System.Text;
using SurfaceUnroll.Flattening;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Tests.Flattening;

namespace SurfaceUnroll.Benchmarks.Flattening;

/// <summary>A mesh that flattening programs are compared on.</summary>
/// <param name="Shape">What it shows.</param>
/// <param name="Size">2k, 20k or 200k triangles, about.</param>
/// <param name="Mesh">The triangles.</param>
internal sealed record ComparedMesh(string Shape, string Size, TriangleMesh Mesh)
{
    /// <summary>File name without ending.</summary>
    public string Name => $"{Shape}-{Size}";

    /// <summary>Every shape in every size. The shapes on grids are numbered row by row; the others are not and may have any order.</summary>
    public static IEnumerable<ComparedMesh> All()
    {
        (string Size, int Side, int Rings)[] sizes = [("2k", 32, 18), ("20k", 101, 58), ("200k", 317, 183)];
        foreach ((string size, int side, int rings) in sizes)
        {
            yield return new ComparedMesh("crown", size, FormedShapes.Grid(side, side, FormedShapes.Crown));
            yield return new ComparedMesh("hypar", size, FormedShapes.Grid(side, side, FormedShapes.Hypar));
            yield return new ComparedMesh("helicoid", size, FormedShapes.Grid(side, side, FormedShapes.Helicoid));
            yield return new ComparedMesh("ball-square", size, FormedShapes.Grid(side, side, FormedShapes.BallSquare));
            yield return new ComparedMesh("cap", size, FormedShapes.Disc(rings, FormedShapes.Cap));
            yield return new ComparedMesh("scan", size, FormedShapes.Scattered(side, side, FormedShapes.Crown, seed: 1));
        }
    }

    /// <summary>As Wavefront OBJ; numbers read back to the same doubles.</summary>
    public string ToObj()
    {
        var text = new StringBuilder();
        foreach (Vec3 p in Mesh.Places) text.Append(CultureInfo.InvariantCulture, $"v {p.X:R} {p.Y:R} {p.Z:R}\n");
        foreach ((int a, int b, int c) in Mesh.Faces) text.Append(CultureInfo.InvariantCulture, $"f {a + 1} {b + 1} {c + 1}\n");
        return text.ToString();
    }

    /// <summary>Forming energy (mm²) of a blank of this mesh that another program wrote, computed here; +∞ if it has a triangle turned over.</summary>
    /// <param name="path">Wavefront OBJ with a <c>vt</c> for each corner of each face, the vertices in this mesh's order.</param>
    public double EnergyOf(string path)
    {
        double[] x = new double[2 * Mesh.Places.Length];
        var flat = new List<(double X, double Y)>();
        foreach (string line in File.ReadLines(path))
        {
            string[] words = line.Split(' ', StringSplitOptions.RemoveEmptyEntries);
            if (words is ["vt", string across, string up, ..])
                flat.Add((double.Parse(across, CultureInfo.InvariantCulture), double.Parse(up, CultureInfo.InvariantCulture)));
            if (words is not ["f", ..]) continue;
            foreach (string corner in words[1..])
            {
                string[] indices = corner.Split('/');
                int v = int.Parse(indices[0], CultureInfo.InvariantCulture) - 1;
                (x[2 * v], x[2 * v + 1]) = flat[int.Parse(indices[1], CultureInfo.InvariantCulture) - 1];
            }
        }
        int[] corners = [.. Mesh.Faces.SelectMany(f => new[] { f.A, f.B, f.C })];
        RestTriangles rest = RestTriangles.Of(Mesh.Places.AsSpan(), corners);
        // A blank may have been laid out face down.
        if (rest.At(x, 0).Determinant < 0)
        {
            for (int v = 0; v < x.Length; v += 2) x[v] = -x[v];
        }
        double sum = 0;
        for (int t = 0; t < rest.Count; t++)
        {
            Jacobian j = rest.At(x, t);
            if (!(j.Determinant > 0)) return double.PositiveInfinity;
            double s = j.Mean + j.Half;
            sum += rest.Area[t] * HenckyDensity.At(s, j.Determinant / s, 1);
        }
        return sum;
    }
}

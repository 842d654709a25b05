using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Tests.Patterns.Strain;

/// <summary>Sheets with strain known in closed form.</summary>
internal static class StrainSamples
{
    /// <summary>A rectangle of the blank, its middle at the origin, divided evenly; formed by a function of the blank.</summary>
    public static SheetMesh Grid(double width, double height, int columns, int rows, Func<Vec2, Vec3>? formed = null)
    {
        ImmutableArray<Vec2> flat =
        [
            .. from j in Enumerable.Range(0, rows + 1)
               from i in Enumerable.Range(0, columns + 1)
               select new Vec2(width * ((double)i / columns - 0.5), height * ((double)j / rows - 0.5)),
        ];
        var faces = ImmutableArray.CreateBuilder<(int, int, int)>();
        for (int j = 0; j < rows; j++)
        {
            for (int i = 0; i < columns; i++)
            {
                int a = j * (columns + 1) + i, b = a + 1, c = a + columns + 1, d = c + 1;
                // The diagonals turn about, so that no direction is favoured.
                faces.AddRange((i + j) % 2 == 0 ? [(a, b, d), (a, d, c)] : new[] { (a, b, c), (b, d, c) });
            }
        }
        return new SheetMesh([.. flat.Select(formed ?? (p => new Vec3(-p.Y, p.X, 0)))], flat, faces.ToImmutable());
    }

    /// <summary>The strain at every vertex as a function of its place on the blank.</summary>
    public static StrainMap Map(SheetMesh mesh, Func<Vec2, (double Major, double Minor, Vec2 Direction)> strain) => new(
        [.. mesh.Flat.Select(strain).Select(s => new VertexStrain(s.Major, s.Minor, s.Direction, 1 / ((1 + s.Major) * (1 + s.Minor)) - 1))]);

    /// <summary>Stretch of a given size crosswise where it is positive, shrink where it is negative.</summary>
    public static StrainMap Signed(SheetMesh mesh, Func<Vec2, double> strain) => Map(mesh, p => strain(p) switch
    {
        >= 0 and double e => (e, 0, new Vec2(1, 0)),
        double e => (0, e, new Vec2(0, 1)),
    });

    /// <summary>A dome: a disc pressed to a part of a sphere, stretched every way in the middle and shrunk along the rim.</summary>
    /// <param name="radius">Of the blank, mm.</param>
    /// <param name="sphere">Radius of the sphere, mm.</param>
    /// <param name="stretch">In the middle, as a fraction.</param>
    /// <param name="rings">Rings of vertices round the middle.</param>
    public static (SheetMesh Mesh, StrainMap Map) Dome(double radius = 200, double sphere = 320, double stretch = 0.03, int rings = 16)
    {
        List<Vec2> flat = [Vec2.Zero];
        List<(int, int, int)> faces = [];
        int Index(int ring, int k) => ring == 0 ? 0 : 1 + 3 * ring * (ring - 1) + (k + 6 * ring) % (6 * ring);
        for (int r = 1; r <= rings; r++)
        {
            for (int k = 0; k < 6 * r; k++) flat.Add(radius * r / rings * Vec2.FromAngle(Math.PI * k / (3 * r)));
            for (int side = 0; side < 6; side++)
            {
                for (int k = 0; k < r; k++)
                {
                    faces.Add((Index(r - 1, side * (r - 1) + k), Index(r, side * r + k), Index(r, side * r + k + 1)));
                    if (k < r - 1) faces.Add((Index(r - 1, side * (r - 1) + k), Index(r, side * r + k + 1), Index(r - 1, side * (r - 1) + k + 1)));
                }
            }
        }
        double Arc(double rho) => rho * (1 + stretch * (1 - rho * rho / (radius * radius)));
        Vec3 Formed(Vec2 p)
        {
            double angle = Arc(p.Length) / sphere;
            Vec2 out_ = sphere * Math.Sin(angle) * p.Unit;
            return new Vec3(-out_.Y, out_.X, sphere * (Math.Cos(angle) - 1));
        }
        var mesh = new SheetMesh([.. flat.Select(Formed)], [.. flat], [.. faces]);
        StrainMap map = Map(mesh, p =>
        {
            double rho = p.Length, radial = stretch * (1 - 3 * rho * rho / (radius * radius));
            double hoop = rho > 0 ? sphere * Math.Sin(Arc(rho) / sphere) / rho - 1 : stretch;
            Vec2 along = rho > 0 ? p.Unit : new Vec2(1, 0);
            return radial >= hoop ? (radial, hoop, along) : (hoop, radial, along.Left);
        });
        return (mesh, map);
    }

    /// <summary>Distinct undirected pieces of lines, for telling whether one is drawn twice.</summary>
    public static IEnumerable<(Vec2, Vec2)> Pieces(ImmutableArray<Vec2> points, bool closed)
    {
        for (int i = closed ? 0 : 1; i < points.Length; i++)
        {
            Vec2 a = points[i == 0 ? points.Length - 1 : i - 1], b = points[i];
            yield return a.X < b.X || (a.X == b.X && a.Y < b.Y) ? (a, b) : (b, a);
        }
    }
}

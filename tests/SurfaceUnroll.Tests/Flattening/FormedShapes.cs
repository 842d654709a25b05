using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Tests.Flattening;

/// <summary>Sheets that cannot only bend, as meshes of any fineness, mm. The benchmarks use them too.</summary>
internal static class FormedShapes
{
    /// <summary>A cover 600 × 400 that is crowned both ways.</summary>
    public static Vec3 Crown(double u, double v) =>
        new(600 * (u - 0.5), 400 * (v - 0.5), 60 * (1 - Square(2 * u - 1)) + 80 * (1 - Square(2 * v - 1)));

    /// <summary>Hyperbolic paraboloid z = xy/400 over a square of side 400.</summary>
    public static Vec3 Hypar(double u, double v) => new(400 * (u - 0.5), 400 * (v - 0.5), 400 * (u - 0.5) * (v - 0.5));

    /// <summary>Part of a turn of an auger flight, radii 50 and 200.</summary>
    public static Vec3 Helicoid(double u, double v) =>
        new((50 + 150 * v) * Math.Cos(2.5 * u), (50 + 150 * v) * Math.Sin(2.5 * u), 60 * 2.5 * u);

    /// <summary>Part of a ball of radius 200 whose four corners lie 60° from its middle; straight lines through the middle of the square go to great circles at their true length.</summary>
    public static Vec3 BallSquare(double u, double v)
    {
        (double x, double y) = ((2 * u - 1) / Math.Sqrt(2), (2 * v - 1) / Math.Sqrt(2));
        return OnBall(200, Math.PI / 3, x, y);
    }

    /// <summary>Round cap of a ball of radius 200 to 60° from its middle.</summary>
    public static Vec3 Cap(double x, double y) => OnBall(200, Math.PI / 3, x, y);

    /// <summary>A grid numbered row by row, cells cut from corner to corner the same way.</summary>
    public static TriangleMesh Grid(int rows, int columns, Func<double, double, Vec3> shape)
    {
        var places = new Vec3[rows * columns];
        var faces = new List<(int, int, int)>(2 * rows * columns);
        for (int r = 0; r < rows; r++)
        {
            for (int c = 0; c < columns; c++)
            {
                int a = r * columns + c, b = a + 1, d = a + columns, e = d + 1;
                places[a] = shape(r / (rows - 1.0), c / (columns - 1.0));
                if (r + 1 < rows && c + 1 < columns) faces.AddRange([(a, d, e), (a, e, b)]);
            }
        }
        return new TriangleMesh([.. places], [.. faces]);
    }

    /// <summary>A mesh like one from a scan: inner places shifted at random, cells cut either way, vertices and faces in no order.</summary>
    public static TriangleMesh Scattered(int rows, int columns, Func<double, double, Vec3> shape, int seed)
    {
        var random = new Random(seed);
        int[] number = [.. Enumerable.Range(0, rows * columns)];
        random.Shuffle(number);
        var places = new Vec3[rows * columns];
        var faces = new List<(int, int, int)>(2 * rows * columns);
        for (int r = 0; r < rows; r++)
        {
            for (int c = 0; c < columns; c++)
            {
                double shift = r > 0 && r < rows - 1 && c > 0 && c < columns - 1 ? 0.6 : 0;
                double u = (r + shift * (random.NextDouble() - 0.5)) / (rows - 1), v = (c + shift * (random.NextDouble() - 0.5)) / (columns - 1);
                int at = r * columns + c;
                places[number[at]] = shape(u, v);
                if (r + 1 == rows || c + 1 == columns) continue;
                (int a, int b, int d, int e) = (number[at], number[at + 1], number[at + columns], number[at + columns + 1]);
                faces.AddRange(random.Next(2) == 0 ? [(a, d, e), (a, e, b)] : [(a, d, b), (b, d, e)]);
            }
        }
        (int, int, int)[] shuffled = [.. faces];
        random.Shuffle(shuffled);
        return new TriangleMesh([.. places], [.. shuffled]);
    }

    /// <summary>A round piece in rings of 6, 12, 18 … vertices about the middle one; 6·rings² faces.</summary>
    /// <param name="rings">Number of rings.</param>
    /// <param name="shape">Place of a point of the unit disc.</param>
    public static TriangleMesh Disc(int rings, Func<double, double, Vec3> shape)
    {
        var places = new List<Vec3> { shape(0, 0) };
        var faces = new List<(int, int, int)>();
        for (int ring = 1; ring <= rings; ring++)
        {
            for (int i = 0; i < 6 * ring; i++)
            {
                (double sin, double cos) = Math.SinCos(Math.Tau * i / (6 * ring));
                places.Add(shape(cos * ring / rings, sin * ring / rings));
            }
            for (int sector = 0; sector < 6; sector++)
            {
                for (int i = 0; i < ring; i++)
                {
                    int k = sector * ring + i, inner = sector * (ring - 1) + i;
                    faces.Add((At(ring, k), At(ring, k + 1), At(ring - 1, inner)));
                    if (i + 1 < ring) faces.Add((At(ring - 1, inner), At(ring, k + 1), At(ring - 1, inner + 1)));
                }
            }
        }
        return new TriangleMesh([.. places], [.. faces]);

        static int At(int ring, int i) => ring == 0 ? 0 : 1 + 3 * ring * (ring - 1) + i % (6 * ring);
    }

    /// <summary>Place on a ball: the point (x, y) of the unit disc at the polar angle reach·|(x, y)|.</summary>
    public static Vec3 OnBall(double radius, double reach, double x, double y)
    {
        double r = Math.Sqrt(x * x + y * y), angle = reach * r, k = r > 0 ? Math.Sin(angle) / r : 0;
        return new Vec3(radius * k * x, radius * k * y, radius * Math.Cos(angle));
    }

    private static double Square(double x) => x * x;
}

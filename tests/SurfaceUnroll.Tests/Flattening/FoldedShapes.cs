using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Tests.Flattening;

/// <summary>Flat sheets that were bent or folded along creases, with the flat places they came from, mm.</summary>
internal sealed record FoldedShapes(TriangleMesh Mesh, ImmutableArray<Vec2> Flat)
{
    /// <summary>Half a cylinder about x, of flat strips between lines along it.</summary>
    public static FoldedShapes Cylinder(int round, int along)
    {
        double side = 2 * 100 * Math.Sin(Math.PI / (2 * round));
        return Of(round + 1, along + 1, (r, c) => new Vec3(25 * c, -100 * Math.Cos(Math.PI * r / round), 100 * Math.Sin(Math.PI * r / round)), (r, c) => new Vec2(25 * c, side * r));
    }

    /// <summary>Sheet between two circles about the tip of a cone of flat strips, or of a fan of creases at random that go up and down: a tip and unit vectors to places that
    /// stand as far apart on the sphere as they do on the blank.</summary>
    public static FoldedShapes Fan(int strips, int rows, Func<int, Vec3> direction)
    {
        double[] heading = new double[strips + 1];
        for (int c = 1; c <= strips; c++) heading[c] = heading[c - 1] + direction(c - 1).AngleTo(direction(c));
        return Of(rows + 1, strips + 1, (r, c) => Radius(r) * direction(c), (r, c) => Radius(r) * Vec2.FromAngle(heading[c]));

        double Radius(int r) => 100 + 150.0 * r / rows;
    }

    /// <summary>A sheet folded into parallelograms along straight and zigzag creases (Miura's map fold), each divided further.</summary>
    /// <param name="fold">How far: 0 flat, π/2 shut.</param>
    /// <param name="cells">Parallelograms either way.</param>
    /// <param name="parts">Divisions of each parallelogram either way.</param>
    /// <remarks>K. Miura, "Method of packaging and deployment of large membranes in space", 1985. With sides a, b, angle γ and fold θ: H = a sin θ sin γ, L = √(a² − H²),
    /// S = b cos θ tan γ/w, V = b/w with w = √(1 + cos²θ tan²γ): H² + L² = a², S² + V² = b², L·V = ab cos γ, so every parallelogram keeps sides and angles.</remarks>
    public static FoldedShapes Miura(double fold, int cells, int parts)
    {
        const double a = 40, b = 50, gamma = 1.1;
        return Of(cells * parts + 1, cells * parts + 1, (r, c) => Place(fold, r, c), (r, c) =>
        {
            Vec3 p = Place(0, r, c);
            return new Vec2(p.X, p.Y);
        });

        Vec3 Place(double theta, int r, int c)
        {
            double cos = Math.Cos(theta), tan = Math.Tan(gamma), w = Math.Sqrt(1 + cos * cos * tan * tan);
            double h = a * Math.Sin(theta) * Math.Sin(gamma), l = Math.Sqrt(a * a - h * h), s = b * cos * tan / w, v = b / w;
            return new Vec3(s * r / parts, l * c / parts + v * Zigzag(r), h * Zigzag(c));
        }

        // 0, 1, 0, 1 … at every `parts`, straight between.
        double Zigzag(int i)
        {
            (int cell, int rest) = Math.DivRem(i, parts);
            double share = (double)rest / parts;
            return cell % 2 == 0 ? share : 1 - share;
        }
    }

    private static FoldedShapes Of(int rows, int columns, Func<int, int, Vec3> formed, Func<int, int, Vec2> flat)
    {
        TriangleMesh mesh = FormedShapes.Grid(rows, columns, (u, v) => formed((int)Math.Round(u * (rows - 1)), (int)Math.Round(v * (columns - 1))));
        return new FoldedShapes(mesh, [.. Enumerable.Range(0, rows * columns).Select(i => flat(i / columns, i % columns))]);
    }
}

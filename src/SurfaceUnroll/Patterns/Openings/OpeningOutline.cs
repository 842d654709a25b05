using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Patterns.Openings;

/// <summary>One opening before it goes through a sheet.</summary>
/// <param name="Name">Numbered where it is one of a pattern.</param>
/// <param name="Size">In words and numbers.</param>
/// <param name="Centre">Centre, in job space.</param>
/// <param name="Outline">Closed, the first place not repeated, in job space, mm.</param>
/// <param name="Along">Direction of projection.</param>
internal sealed record OpeningOutline(string Name, string Size, Vec3 Centre, ImmutableArray<Vec3> Outline, Vec3 Along);

/// <summary>Draws the shapes of openings in their planes.</summary>
internal static class OpeningShapes
{
    // Largest gap between a round edge and its chords, and longest step along a straight one that may come to lie on a curved sheet, mm.
    private const double Sagitta = 0.003, LongestStep = 3;

    /// <summary>Every opening of a specification, with its pattern laid out.</summary>
    /// <param name="spec">What is asked for.</param>
    /// <param name="plane">Takes (0, across, up) to job space.</param>
    /// <param name="curves">The curves of the job by name.</param>
    /// <param name="units">For sizes.</param>
    public static IEnumerable<OpeningOutline> Of(OpeningSpec spec, Frame plane, IReadOnlyDictionary<string, SpaceCurve> curves, LengthUnit units)
    {
        if (spec.Shape is CurveShape named)
        {
            ImmutableArray<Vec3> around = Round(curves[named.Curve]);
            Vec3 centre = 1.0 / around.Length * around.Aggregate(Vec3.Zero, (sum, p) => sum + p);
            yield return new OpeningOutline(spec.Name, named.Curve, centre, around, (spec.Along ?? Square(around, centre)).Unit);
            yield break;
        }
        ImmutableArray<Vec2> shape = Outline(spec.Shape);
        string size = Size(spec.Shape, units);
        Vec2[] centres = [.. Centres(spec.Pattern)];
        for (int i = 0; i < centres.Length; i++)
        {
            Vec3 Place(Vec2 p)
            {
                Vec2 at = spec.Centre + (centres[i] + p).Rotate(spec.Turn);
                return plane.Point(new Vec3(0, at.X, at.Y));
            }
            string name = centres.Length == 1 ? spec.Name : $"{spec.Name} {(i + 1).ToString(CultureInfo.InvariantCulture)}";
            yield return new OpeningOutline(name, size, Place(Vec2.Zero), [.. shape.Select(Place)], (spec.Along ?? plane.X).Unit);
        }
    }

    /// <summary>A shape about its centre, counter-clockwise.</summary>
    public static ImmutableArray<Vec2> Outline(OpeningShape shape) => shape switch
    {
        RoundShape round => [.. Arc(Vec2.Zero, 0.5 * round.Diameter, 0, Math.Tau)],
        SlotShape slot => Rounded(0.5 * slot.Length, 0.5 * slot.Width, 0.5 * slot.Width),
        RectangleShape box => Rounded(0.5 * box.Width, 0.5 * box.Height, box.CornerRadius),
        _ => throw new ArgumentOutOfRangeException(nameof(shape), shape, "A curve has no shape of its own."),
    };

    /// <summary>A shape in words and numbers.</summary>
    private static string Size(OpeningShape shape, LengthUnit units)
    {
        string Show(double mm) => ShopLength.PrintNumber(mm, units, 1);
        return shape switch
        {
            RoundShape round => $"Ø {Show(round.Diameter)}",
            SlotShape slot => $"slot {Show(slot.Length)} × {Show(slot.Width)}",
            RectangleShape { CornerRadius: > 0 } box => $"{Show(box.Width)} × {Show(box.Height)}, R {Show(box.CornerRadius)}",
            RectangleShape box => $"{Show(box.Width)} × {Show(box.Height)}",
            _ => "",
        };
    }

    private static IEnumerable<Vec2> Centres(OpeningPattern? pattern)
    {
        switch (pattern)
        {
            case GridPattern grid:
                for (int row = 0; row < grid.Up; row++)
                    for (int column = 0; column < grid.Across; column++)
                        yield return new Vec2((column - 0.5 * (grid.Across - 1)) * grid.PitchAcross, (0.5 * (grid.Up - 1) - row) * grid.PitchUp);
                break;
            case RingPattern ring:
                for (int k = 0; k < ring.Count; k++) yield return 0.5 * ring.Diameter * Vec2.FromAngle(0.5 * Math.PI - Math.Tau * k / ring.Count);
                break;
            default:
                yield return Vec2.Zero;
                break;
        }
    }

    private static ImmutableArray<Vec2> Rounded(double halfWidth, double halfHeight, double radius)
    {
        var path = ImmutableArray.CreateBuilder<Vec2>();
        (double x, double y) = (halfWidth - radius, halfHeight - radius);
        Vec2[] centres = [new(x, y), new(-x, y), new(-x, -y), new(x, -y)];
        for (int k = 0; k < 4; k++)
        {
            double start = 0.5 * Math.PI * k;
            if (radius > 0) path.AddRange(Arc(centres[k], radius, start, 0.5 * Math.PI));
            Vec2 from = centres[k] + radius * Vec2.FromAngle(start + 0.5 * Math.PI), to = centres[(k + 1) % 4] + radius * Vec2.FromAngle(start + 0.5 * Math.PI);
            int steps = Math.Max(1, (int)Math.Ceiling((to - from).Length / LongestStep));
            if ((to - from).Length > 1e-9) path.AddRange(Enumerable.Range(0, steps).Select(i => Vec2.Lerp(from, to, (double)i / steps)));
        }
        return path.ToImmutable();
    }

    // Without its last place.
    private static IEnumerable<Vec2> Arc(Vec2 centre, double radius, double start, double sweep)
    {
        double step = 2 * Math.Acos(Math.Max(0.9, 1 - Sagitta / radius));
        int count = Math.Max(3, (int)Math.Ceiling(sweep / step));
        return Enumerable.Range(0, count).Select(i => centre + radius * Vec2.FromAngle(start + sweep * i / count));
    }

    // Places round a curve, close enough together for any sheet that it may be projected on; an open one is closed straight.
    private static ImmutableArray<Vec3> Round(SpaceCurve curve)
    {
        var path = ImmutableArray.CreateBuilder<Vec3>();
        for (int i = 0; i < curve.Pieces.Length; i++)
        {
            CurvePiece piece = curve.Pieces[i];
            double turn = Enumerable.Range(0, 16).Sum(k => piece.At(k / 16.0).Tangent.AngleTo(piece.At((k + 1) / 16.0).Tangent));
            // A chord over the turn θ of an arc of length s leaves it by sθ/8.
            int steps = Math.Max(1, (int)Math.Ceiling(Math.Max(curve.PieceLengths[i] / LongestStep, Math.Sqrt(curve.PieceLengths[i] * turn / (8 * Sagitta)))));
            path.AddRange(Enumerable.Range(0, steps).Select(k => piece.At((double)k / steps).Point));
        }
        Vec3 end = curve.End.Point, start = curve.Start.Point;
        int closing = (int)Math.Ceiling((end - start).Length / LongestStep);
        if ((end - start).Length > 1e-6) path.AddRange(Enumerable.Range(0, closing).Select(k => Vec3.Lerp(end, start, (double)k / closing)));
        return path.ToImmutable();
    }

    // Square to the plane that a closed path bounds the most area in (Newell).
    private static Vec3 Square(ImmutableArray<Vec3> around, Vec3 centre)
    {
        Vec3 sum = Vec3.Zero;
        for (int i = 0; i < around.Length; i++) sum += (around[i] - centre).Cross(around[(i + 1) % around.Length] - centre);
        return sum.Unit;
    }
}

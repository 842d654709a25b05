using System.Collections.Immutable;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Curves.Drawn;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Files.CurveFiles;

/// <summary>Makes exact pieces of the entities of a DXF file.</summary>
internal static class DxfShapes
{
    // A line of which one place stands higher than another by more than this part of its size does not lie in the plane of the drawing.
    private const double Flat = 1e-6;

    /// <summary>The pieces of an entity; null for kinds that are not lines. Empty with a fault where it cannot be used, and where it has no length.</summary>
    public static ImmutableArray<CurvePiece>? Pieces(DxfEntity entity, DrawingMap map)
    {
        ImmutableArray<CurvePiece>? pieces = entity.Kind switch
        {
            "LINE" => Line(entity, map),
            "ARC" or "CIRCLE" => Round(entity, map),
            "ELLIPSE" => Ellipse(entity, map),
            "LWPOLYLINE" => Light(entity, map),
            "POLYLINE" => Old(entity, map),
            "SPLINE" => Spline(entity, map),
            _ => null,
        };
        // A number that could not be read has its fault.
        return pieces is { } found && found.Any(p => !double.IsFinite(p.At(0).Point.Length + p.At(1).Point.Length)) ? [] : pieces;
    }

    /// <summary>Its own plane is that of the drawing, seen from above.</summary>
    public static bool IsUpright(DxfEntity entity) => Normal(entity) is { X: 0, Y: 0, Z: > 0 };

    private static Vec3 Normal(DxfEntity entity)
    {
        var normal = new Vec3(entity.Number(210), entity.Number(220), entity.Number(230, 1));
        // Rounding of a plane that was turned and turned back.
        return Math.Abs(normal.X) + Math.Abs(normal.Y) < 1e-9 ? new Vec3(0, 0, normal.Z) : normal;
    }

    // Flat entities are given in axes of their own: seen from below, x runs the other way (the arbitrary axis rule). Null where the plane is tilted.
    private static DrawingMap? Own(DxfEntity entity, DrawingMap map)
    {
        Vec3 normal = Normal(entity);
        if (normal is { X: 0, Y: 0, Z: not 0 }) return normal.Z > 0 ? map : map.After(DrawingMap.Scale(-1, 1));
        Tilted(entity);
        return null;
    }

    private static void Tilted(DxfEntity entity) => entity.Faults.Add(
        "drawing-not-flat", entity.Line, $"This {entity.Kind} does not lie in the plane of the drawing.", "Lay the curve flat into x and y before you save it, or give it as \"xyz\" points.");

    private static bool IsLevel(DxfEntity entity, IEnumerable<double> heights, double size)
    {
        if (!heights.Any() || !(heights.Max() - heights.Min() > Flat * size)) return true;
        Tilted(entity);
        return false;
    }

    private static ImmutableArray<CurvePiece> Line(DxfEntity e, DrawingMap map)
    {
        (Vec2 from, Vec2 to) = (new(e.Number(10), e.Number(20)), new(e.Number(11), e.Number(21)));
        if (from == to || !IsLevel(e, [e.Number(30), e.Number(31)], (to - from).Length)) return [];
        return [new LinePiece(map.Point(from.X, from.Y), map.Point(to.X, to.Y))];
    }

    private static ImmutableArray<CurvePiece> Round(DxfEntity e, DrawingMap map)
    {
        if (Own(e, map) is not { } own) return [];
        double radius = e.Number(40);
        if (!(radius > 0)) return Broken(e, "has no radius");
        if (e.Kind == "CIRCLE") return [DrawnRounds.Whole(own.Point(e.Number(10), e.Number(20)), own.Direction(radius, 0), own.Direction(0, radius))];
        double start = e.Number(50) * Math.PI / 180, sweep = Turn(e.Number(51) * Math.PI / 180 - start);
        return [DrawnRounds.Arc(own, e.Number(10), e.Number(20), radius, start, sweep)];
    }

    // From more than 0 to a whole turn.
    private static double Turn(double angle)
    {
        double turn = angle - Math.Floor(angle / Math.Tau) * Math.Tau;
        return turn > 1e-12 ? turn : Math.Tau;
    }

    private static ImmutableArray<CurvePiece> Ellipse(DxfEntity e, DrawingMap map)
    {
        Vec3 normal = Normal(e);
        (double x, double y, double ratio) = (e.Number(11), e.Number(21), e.Number(40));
        if (normal is not { X: 0, Y: 0, Z: not 0 } || e.Number(31) != 0)
        {
            Tilted(e);
            return [];
        }
        if (!(ratio > 0) || (x == 0 && y == 0)) return Broken(e, "has no width");
        double side = Math.Sign(normal.Z) * ratio, start = e.Number(41), end = e.Number(42, Math.Tau), sweep = Turn(end - start);
        (Vec3 centre, Vec3 a, Vec3 b) = (map.Point(e.Number(10), e.Number(20)), map.Direction(x, y), map.Direction(-side * y, side * x));
        return [Math.Tau - sweep < 1e-9 ? DrawnRounds.Whole(centre, a, b) : EllipsePiece.Of(centre, a, b, start, sweep)];
    }

    private static ImmutableArray<CurvePiece> Light(DxfEntity e, DrawingMap map)
    {
        if (Own(e, map) is not { } own) return [];
        var corners = new List<(Vec2 At, double Bulge)>();
        foreach (DxfTag tag in e.Tags)
        {
            if (tag.Code == 10) corners.Add((new Vec2(e.Number(tag), 0), 0));
            else if (corners.Count == 0) continue;
            else if (tag.Code == 20) corners[^1] = (corners[^1].At with { Y = e.Number(tag) }, corners[^1].Bulge);
            else if (tag.Code == 42) corners[^1] = corners[^1] with { Bulge = e.Number(tag) };
        }
        return Polyline(corners, (e.Whole(70) & 1) != 0, own);
    }

    private static ImmutableArray<CurvePiece>? Old(DxfEntity e, DrawingMap map)
    {
        const int closed = 1, inSpace = 8, mesh = 16, faces = 64, frame = 16;
        int flags = e.Whole(70);
        if ((flags & (mesh | faces)) != 0) return null;
        // A polyline in space stands in the axes of the drawing. Corners of the frame of a spline are not on the curve.
        if (((flags & inSpace) != 0 ? map : Own(e, map)) is not { } own) return [];
        DxfEntity[] corners = [.. e.Parts.Where(v => (v.Whole(70) & frame) == 0)];
        double size = corners.Length == 0 ? 0 : corners.Max(v => Math.Abs(v.Number(10) - corners[0].Number(10)) + Math.Abs(v.Number(20) - corners[0].Number(20)));
        if (!IsLevel(e, corners.Select(v => v.Number(30)), size)) return [];
        return Polyline([.. corners.Select(v => (new Vec2(v.Number(10), v.Number(20)), v.Number(42)))], (flags & closed) != 0, own);
    }

    private static ImmutableArray<CurvePiece> Polyline(List<(Vec2 At, double Bulge)> corners, bool closed, DrawingMap map)
    {
        int count = closed ? corners.Count : corners.Count - 1;
        return [.. Enumerable.Range(0, Math.Max(0, count)).Select(i => DrawnRounds.Bulged(map, corners[i].At, corners[(i + 1) % corners.Count].At, corners[i].Bulge)).OfType<CurvePiece>()];
    }

    private static ImmutableArray<CurvePiece> Spline(DxfEntity e, DrawingMap map)
    {
        (double[] xs, double[] ys, double[] zs) = Places(e, 10);
        if (xs.Length == 0) return ThroughPoints(e, map);
        int degree = e.Whole(71, 3);
        ImmutableArray<double> knots = e.Numbers(40), weights = e.Numbers(41);
        if (weights.IsEmpty) weights = [.. xs.Select(_ => 1.0)];
        if (degree is < 1 or >= RationalPiece.MostPoints) return Broken(e, "has a degree that cannot be used");
        if (xs.Length <= degree || ys.Length != xs.Length) return Broken(e, "has too few control points");
        if (knots.Length != xs.Length + degree + 1) return Broken(e, "has not as many knots as its control points and degree ask for");
        if (knots.Zip(knots.Skip(1), (a, b) => !(b >= a)).Any(falls => falls) || !(knots[degree] < knots[xs.Length])) return Broken(e, "has knots out of order");
        if (weights.Length != xs.Length || weights.Any(w => !(w > 0))) return Broken(e, "has weights that cannot be used");
        if (!IsLevel(e, zs, xs.Max() - xs.Min() + ys.Max() - ys.Min())) return [];
        return NurbsPieces.Of(degree, knots, [.. xs.Select((x, i) => map.Point(x, ys[i]))], weights);
    }

    // Fit points alone: a smooth curve through them, as through measured ones.
    private static ImmutableArray<CurvePiece> ThroughPoints(DxfEntity e, DrawingMap map)
    {
        (double[] xs, double[] ys, double[] zs) = Places(e, 11);
        if (xs.Length < 2 || ys.Length != xs.Length) return Broken(e, "has no points");
        if (!IsLevel(e, zs, xs.Max() - xs.Min() + ys.Max() - ys.Min())) return [];
        ImmutableArray<Vec3> places = [.. xs.Select((x, i) => map.Point(x, ys[i]))];
        places = [.. places.Where((p, i) => i == 0 || p != places[i - 1])];
        bool closed = (e.Whole(70) & 1) != 0 && places[0] != places[^1];
        if (closed) places = places.Add(places[0]);
        return places.Length < 2 ? [] : SmoothRow.Through(places);
    }

    private static (double[] X, double[] Y, double[] Z) Places(DxfEntity e, int code) => ([.. e.Numbers(code)], [.. e.Numbers(code + 10)], [.. e.Numbers(code + 20)]);

    private static ImmutableArray<CurvePiece> Broken(DxfEntity e, string what)
    {
        e.Faults.Add("dxf-broken", e.Line, $"This {e.Kind} {what}.", "Draw it again, or write the file anew from the program that made it.");
        return [];
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Curves.Fairing;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Photos;

/// <summary>Makes a clean curve of the places that were picked.</summary>
/// <param name="Points">For a smooth curve through them, mm, in the axes of the reference and in the order of the taps.</param>
/// <param name="Line">The same curve by many places, mm.</param>
/// <param name="Noise">Standard error of the curve from picking alone, square to it, mm.</param>
internal sealed record PhotoCurve(ImmutableArray<ProfilePoint> Points, ImmutableArray<Vec2> Line, double Noise)
{
    // Groups of picks: so many keep every bend that a part has, and the fairing quick.
    private const int MostGroups = 120;

    // The points stand for the fair curve within this, mm: a tenth of what a photo can be read to.
    private const double Within = 0.02;

    private const int MostPoints = 400;

    // Pixels: what the raster of pixels and the blocks of JPEG leave of a pick, the same for neighbours, so that no scatter shows it. Seen on drawn photos without grain.
    private const double Raster = 0.025;

    // Cosine of the least turn, ten degrees, that makes a corner worth striking from both sides; and how far from its tap it may come to lie, mm.
    private const double LeastTurn = 0.985, FarthestCorner = 5;

    // Third differences of independent errors have 20 times their variance; the middle one of normal errors is 0.6745 of their spread.
    private static readonly double ThirdDifference = Math.Sqrt(20) * 0.6745;

    /// <summary>The curve as a camera sees it.</summary>
    /// <param name="edge">Picks.</param>
    /// <param name="camera">Camera.</param>
    /// <param name="tap">Standard error of a tap, pixels.</param>
    public static PhotoCurve Of(PickedEdge edge, PlaneCamera camera, double tap)
    {
        if (!edge.Followed)
        {
            ImmutableArray<ProfilePoint> taps = [.. edge.Stretches.SelectMany((s, k) => s.Skip(k == 0 ? 0 : 1).Select((q, i) => new ProfilePoint(camera.ToPlane(q), k > 0 && i < 0)))];
            taps = [.. taps.Select(p => p with { Corner = edge.Corners.Any(c => (camera.ToPlane(c) - p.Place).Length < 1e-9) })];
            return new PhotoCurve(taps, [.. taps.Select(p => p.Place)], tap / camera.PixelsPerMillimetre(edge.Stretches[0][0]).Least);
        }
        (ImmutableArray<Vec2> Line, double Noise)[] fair = [.. edge.Stretches.Select(s => Fair([.. s.Select(camera.ToPlane)]))];
        for (int k = 0; k + 1 < fair.Length; k++)
        {
            Vec2 corner = Corner(fair[k].Line, fair[k + 1].Line, camera.ToPlane(edge.Corners[k]));
            fair[k].Line = fair[k].Line.Add(corner);
            fair[k + 1].Line = fair[k + 1].Line.Insert(0, corner);
        }
        var points = ImmutableArray.CreateBuilder<ProfilePoint>();
        foreach ((ImmutableArray<Vec2> line, _) in fair)
        {
            ImmutableArray<Vec2> few = Fewest(line);
            if (points.Count > 0) points[^1] = points[^1] with { Corner = true };
            points.AddRange(few.Skip(points.Count > 0 ? 1 : 0).Select(p => new ProfilePoint(p, false)));
        }
        Vec2 middle = edge.Picks.ElementAt(edge.Picks.Count() / 2);
        double noise = fair.Max(f => f.Noise), raster = Raster / camera.PixelsPerMillimetre(middle).Least, thinned = Within / 3;
        return new PhotoCurve(points.ToImmutable(), [.. fair.SelectMany(f => f.Line)], Math.Sqrt(noise * noise + raster * raster + thinned * thinned));
    }

    private static (ImmutableArray<Vec2> Line, double Noise) Fair(ImmutableArray<Vec2> picks)
    {
        ImmutableArray<Vec2> groups = Groups(picks);
        if (groups.Length < 6) return (groups, 0.05);
        double noise = Math.Max(Spread(groups), 1e-3);
        double[] along = new double[groups.Length];
        for (int i = 1; i < along.Length; i++) along[i] = along[i - 1] + (groups[i] - groups[i - 1]).Length;
        var spline = new FairSpline([.. groups.Select(p => new Vec3(0, p.X, p.Y))], along, closed: false);
        if (FairFit.Scattered(spline, [.. groups.Select(_ => 1.0)], 1.25 * noise, robust: true) is not { } curve) return (groups, noise);
        const int parts = 3;
        ImmutableArray<Vec2> line = [.. curve.Cubics.SelectMany((c, k) => Enumerable.Range(k == 0 ? 0 : 1, k == 0 ? parts + 1 : parts).Select(i =>
        {
            Vec3 p = c.At((double)i / parts);
            return new Vec2(p.Y, p.Z);
        }))];
        // What fairing leaves of it: a curve that takes up a quarter of its points keeps half of their error.
        return (line, 0.5 * noise);
    }

    // Means of neighbours; first and last pick keep their places, for the curve ends there.
    private static ImmutableArray<Vec2> Groups(ImmutableArray<Vec2> picks)
    {
        int size = (picks.Length + MostGroups - 1) / MostGroups;
        if (size <= 1) return picks;
        var groups = ImmutableArray.CreateBuilder<Vec2>();
        for (int i = 0; i < picks.Length; i += size)
        {
            ImmutableArray<Vec2> some = picks[i..Math.Min(picks.Length, i + size)];
            groups.Add((1.0 / some.Length) * some.Aggregate((a, b) => a + b));
        }
        return [picks[0], .. groups.Where(g => (g - picks[0]).Length > 1e-3 && (g - picks[^1]).Length > 1e-3), picks[^1]];
    }

    private static double Spread(ImmutableArray<Vec2> row)
    {
        double[] third = [.. Enumerable.Range(0, row.Length - 3).Select(i => Math.Abs((row[i + 3] - 3 * row[i + 2] + 3 * row[i + 1] - row[i]).Cross((row[i + 3] - row[i]).Unit))).Order()];
        return third[third.Length / 2] / ThirdDifference;
    }

    // Where the two sides of a corner meet; the tap where they hardly turn.
    private static Vec2 Corner(ImmutableArray<Vec2> before, ImmutableArray<Vec2> after, Vec2 tap)
    {
        Vec2 a = before[^1], u = (a - before[Math.Max(0, before.Length - 4)]).Unit, b = after[0], v = (after[Math.Min(after.Length - 1, 3)] - b).Unit;
        if (u.Dot(v) > LeastTurn) return tap;
        Vec2 struck = a + ((b - a).Cross(v) / u.Cross(v)) * u;
        return (struck - tap).Length < FarthestCorner ? struck : tap;
    }

    // As few places as a smooth curve needs to follow a line.
    private static ImmutableArray<Vec2> Fewest(ImmutableArray<Vec2> line)
    {
        double[] along = new double[line.Length];
        for (int i = 1; i < along.Length; i++) along[i] = along[i - 1] + (line[i] - line[i - 1]).Length;
        for (int count = 1; ; count = Math.Max(count + 1, count * 4 / 3))
        {
            ImmutableArray<Vec2> places = [.. Enumerable.Range(0, count + 1).Select(k => At(line, along, along[^1] * k / count))];
            if (count >= MostPoints || Follows(places, line, along)) return places;
        }
    }

    private static bool Follows(ImmutableArray<Vec2> places, ImmutableArray<Vec2> line, double[] along)
    {
        const int checks = 6;
        ImmutableArray<CurvePiece> pieces = places.Length == 2
            ? [new LinePiece(new Vec3(0, places[0].X, places[0].Y), new Vec3(0, places[1].X, places[1].Y))]
            : CubicSpline.Open([.. places.Select(p => new Vec3(0, p.X, p.Y))], CurveEnd.Free, CurveEnd.Free);
        for (int k = 0; k < pieces.Length; k++)
            for (int i = 1; i < (pieces.Length == 1 ? 4 * checks : checks); i++)
            {
                double t = (double)i / (pieces.Length == 1 ? 4 * checks : checks);
                Vec3 p = pieces[k].At(t).Point;
                // A spline through places at equal lengths keeps about to them; near its place on the line is the nearest.
                int at = Array.BinarySearch(along, along[^1] * (k + t) / pieces.Length);
                at = Math.Clamp(at < 0 ? ~at : at, 1, line.Length - 1);
                double near = double.PositiveInfinity;
                for (int j = Math.Max(1, at - 6); j <= Math.Min(line.Length - 1, at + 6); j++) near = Math.Min(near, Segment.Distance(new Vec2(p.Y, p.Z), line[j - 1], line[j]));
                if (near > Within) return false;
            }
        return true;
    }

    private static Vec2 At(ImmutableArray<Vec2> line, double[] along, double s)
    {
        int at = Array.BinarySearch(along, s);
        at = Math.Clamp(at < 0 ? ~at : at, 1, line.Length - 1);
        double part = along[at] - along[at - 1];
        return part > 0 ? Vec2.Lerp(line[at - 1], line[at], (s - along[at - 1]) / part) : line[at];
    }
}

using System.Collections.Immutable;
using NetTopologySuite.Geometries;
using NetTopologySuite.Index.Strtree;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Files.Proof;

/// <summary>Lines that were read back from a file, mm.</summary>
/// <param name="paths">Open polylines; a closed one repeats its first place. Arcs are followed within <see cref="ArcGap"/>.</param>
internal sealed class LineSet(ImmutableArray<ImmutableArray<Vec2>> paths)
{
    /// <summary>How far a chord may lie off its arc, mm.</summary>
    public const double ArcGap = 0.001;

    // What turns by more is a corner, radians.
    private const double Corner = 0.3;

    // From one place that is compared to the next, mm.
    private const double Step = 0.5;

    private readonly STRtree<(Vec2 A, Vec2 B)> _tree = Indexed(paths);

    /// <summary>The lines.</summary>
    public ImmutableArray<ImmutableArray<Vec2>> Paths => paths;

    /// <summary>There are none.</summary>
    public bool IsEmpty => paths.IsEmpty;

    /// <summary>Moved and turned lines.</summary>
    public LineSet Placed(Func<Vec2, Vec2> place) => new([.. paths.Select(p => ImmutableArray.CreateRange(p.Select(place)))]);

    /// <summary>Smallest box around all.</summary>
    public Box Bounds => Box.Around(paths.SelectMany(p => p));

    /// <summary>True of places within a distance of a corner of these lines, mm.</summary>
    public Func<Vec2, bool> Corners(double within)
    {
        Vec2[] corners = [.. paths.SelectMany(CornersOf)];
        return p => corners.Any(c => (c - p).Length <= within);
    }

    private static IEnumerable<Vec2> CornersOf(ImmutableArray<Vec2> path)
    {
        bool closed = (path[0] - path[^1]).Length < ArcGap;
        if (!closed)
        {
            // Printed lines end at the rim of a sheet, and where the whole line begins, which may be a corner: taken for one.
            yield return path[0];
            yield return path[^1];
        }
        for (int i = closed ? 0 : 1; i + 1 < path.Length; i++)
        {
            Vec2 before = path[i] - path[i > 0 ? i - 1 : path.Length - 2], after = path[i + 1] - path[i];
            if (Math.Abs(Math.Atan2(before.Cross(after), before.Dot(after))) > Corner) yield return path[i];
        }
    }

    /// <summary>The least and the greatest distance of places along these lines to the nearest place of others, mm.</summary>
    /// <param name="others">The others.</param>
    /// <param name="except">Places that are passed over.</param>
    public (double Least, double Greatest) DistancesTo(LineSet others, Func<Vec2, bool> except)
    {
        (double least, double greatest) = (double.PositiveInfinity, 0);
        foreach (Vec2 p in Places().Where(p => !except(p)))
        {
            double d = others.Distance(p);
            (least, greatest) = (Math.Min(least, d), Math.Max(greatest, d));
        }
        return (least, greatest);
    }

    /// <summary>Distance of a place to the nearest line, mm.</summary>
    public double Distance(Vec2 p)
    {
        for (double reach = 1; reach < 1e5; reach *= 8)
        {
            double best = double.PositiveInfinity;
            foreach ((Vec2 a, Vec2 b) in _tree.Query(new Envelope(p.X - reach, p.X + reach, p.Y - reach, p.Y + reach))) best = Math.Min(best, Segment.Distance(p, a, b));
            // What lies farther than the search reached may have a nearer one outside of it.
            if (best <= reach) return best;
        }
        return double.PositiveInfinity;
    }

    /// <summary>An arc from a place to another as a polyline without its first place.</summary>
    /// <param name="from">Begin, mm.</param>
    /// <param name="to">End, mm.</param>
    /// <param name="bulge">Tangent of a quarter of the angle, positive to the left; 0 is straight.</param>
    public static IEnumerable<Vec2> Arc(Vec2 from, Vec2 to, double bulge)
    {
        Vec2 chord = to - from;
        if (bulge == 0 || chord.Length == 0) return [to];
        double angle = 4 * Math.Atan(bulge), radius = chord.Length / (2 * Math.Sin(0.5 * Math.Abs(angle)));
        Vec2 centre = Vec2.Lerp(from, to, 0.5) + (0.5 * chord.Length / Math.Tan(0.5 * angle)) * chord.Unit.Left;
        int parts = Math.Clamp((int)Math.Ceiling(Math.Abs(angle) / Math.Sqrt(8 * ArcGap / radius)), 1, 100_000);
        return Enumerable.Range(1, parts).Select(i => i == parts ? to : centre + (from - centre).Rotate(angle * i / parts));
    }

    private IEnumerable<Vec2> Places()
    {
        foreach (ImmutableArray<Vec2> path in paths)
            for (int i = 0; i + 1 < path.Length; i++)
            {
                int parts = 1 + (int)((path[i + 1] - path[i]).Length / Step);
                for (int k = 0; k <= parts; k++) yield return Vec2.Lerp(path[i], path[i + 1], (double)k / parts);
            }
    }

    private static STRtree<(Vec2 A, Vec2 B)> Indexed(ImmutableArray<ImmutableArray<Vec2>> paths)
    {
        var tree = new STRtree<(Vec2, Vec2)>();
        foreach (ImmutableArray<Vec2> path in paths)
            for (int i = 0; i + 1 < path.Length; i++) tree.Insert(new Envelope(path[i].X, path[i + 1].X, path[i].Y, path[i + 1].Y), (path[i], path[i + 1]));
        return tree;
    }
}

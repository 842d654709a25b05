using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Strain;

/// <summary>A short line along which the metal is stretched or shrunk.</summary>
/// <param name="From">One end on the blank, mm.</param>
/// <param name="To">The other end.</param>
/// <param name="Kind">Stretch or shrink.</param>
/// <param name="Size">Strain along it, ≥ 0, as a fraction.</param>
public readonly record struct StrainTick(Vec2 From, Vec2 To, StrainKind Kind, double Size);

/// <summary>Ticks on an even grid over the blank that show which way the metal goes, and how much by their length.</summary>
public static class StrainTicks
{
    // Spaces of the grid across the longer side, and the longest tick as a part of one.
    private const int Across = 16;
    private const double LongestPart = 0.9;

    // Half the spread of the marks at a tick's ends, as a part of their length.
    private const double Spread = 0.55;

    /// <summary>The ticks of a sheet. At a place that is stretched one way and shrunk the other two of them cross.</summary>
    /// <param name="mesh">Its flat places are used.</param>
    /// <param name="map">Strain at its vertices.</param>
    /// <param name="cut">Closed cut line, mm.</param>
    public static ImmutableArray<StrainTick> Of(SheetMesh mesh, StrainMap map, ImmutableArray<Vec2> cut)
    {
        (double stretch, double shrink) = StrainLevels.Largest(map);
        double worst = Math.Max(stretch, shrink);
        if (worst < StrainLevels.Least) return [];
        Box box = Box.Around(mesh.Flat);
        double pitch = Math.Max(box.Width, box.Height) / Across;
        var outline = new CutOutline(cut);
        var ticks = ImmutableArray.CreateBuilder<StrainTick>();
        foreach ((Vec2 at, VertexStrain strain) in OnGrid(mesh, map, box, pitch))
        {
            foreach (StrainKind kind in new[] { StrainKind.Stretch, StrainKind.Shrink })
            {
                double size = strain.Size(kind);
                Vec2 half = 0.5 * LongestPart * pitch * size / worst * strain.Direction(kind);
                bool clear = new[] { at - half, at, at + half }.All(p => outline.Depth(p) > 0.1 * pitch);
                if (size >= StrainLevels.Least && clear) ticks.Add(new StrainTick(at - half, at + half, kind, size));
            }
        }
        return ticks.ToImmutable();
    }

    /// <summary>How a tick is drawn: arrows that point outwards at the ends of a stretch, inwards at those of a shrink.</summary>
    /// <param name="tick">The tick, where it is to be drawn.</param>
    /// <param name="mark">Length of the arrows, mm; on a short tick they are shorter.</param>
    public static IEnumerable<ImmutableArray<Vec2>> Lines(StrainTick tick, double mark)
    {
        Vec2 along = (tick.To - tick.From).Unit;
        double head = Math.Min(mark, 0.35 * (tick.To - tick.From).Length);
        yield return [tick.From, tick.To];
        foreach ((Vec2 end, Vec2 outward) in new[] { (tick.From, -along), (tick.To, along) })
        {
            Vec2 inner = end - head * outward, side = Spread * head * outward.Left;
            yield return tick.Kind == StrainKind.Stretch ? [inner + side, end, inner - side] : [end + side, inner, end - side];
        }
    }

    // The grid's places that some face holds, row by row, each with the strain there.
    private static IEnumerable<(Vec2 At, VertexStrain Strain)> OnGrid(SheetMesh mesh, StrainMap map, Box box, double pitch)
    {
        int columns = (int)(box.Width / pitch), rows = (int)(box.Height / pitch);
        Vec2 first = box.Centre - 0.5 * pitch * new Vec2(columns, rows);
        var found = new SortedDictionary<(int Row, int Column), VertexStrain>();
        foreach ((int a, int b, int c) in mesh.Faces)
        {
            (Vec2 p, Vec2 q, Vec2 r) = (mesh.Flat[a], mesh.Flat[b], mesh.Flat[c]);
            Box around = Box.Around([p, q, r]);
            double area = (q - p).Cross(r - p);
            for (int row = Math.Max(0, Above(around.Min.Y - first.Y)); row <= Math.Min(rows, Below(around.Max.Y - first.Y)); row++)
            {
                for (int column = Math.Max(0, Above(around.Min.X - first.X)); column <= Math.Min(columns, Below(around.Max.X - first.X)); column++)
                {
                    Vec2 at = first + pitch * new Vec2(column, row);
                    double wa = (q - at).Cross(r - at) / area, wb = (r - at).Cross(p - at) / area, wc = 1 - wa - wb;
                    if (wa >= -1e-9 && wb >= -1e-9 && wc >= -1e-9) found.TryAdd((row, column), Mix((map.Vertices[a], wa), (map.Vertices[b], wb), (map.Vertices[c], wc)));
                }
            }
        }
        return found.Select(f => (first + pitch * new Vec2(f.Key.Column, f.Key.Row), f.Value));

        int Above(double length) => (int)Math.Ceiling(length / pitch - 1e-9);
        int Below(double length) => (int)Math.Floor(length / pitch + 1e-9);
    }

    // Directions cannot be averaged, for they may turn or change places between two vertices; the components of the strain can.
    private static VertexStrain Mix(params ReadOnlySpan<(VertexStrain Strain, double Weight)> parts)
    {
        double xx = 0, xy = 0, yy = 0;
        foreach ((VertexStrain strain, double weight) in parts)
        {
            Vec2 d = strain.MajorDirection;
            xx += weight * (strain.Major * d.X * d.X + strain.Minor * d.Y * d.Y);
            yy += weight * (strain.Major * d.Y * d.Y + strain.Minor * d.X * d.X);
            xy += weight * (strain.Major - strain.Minor) * d.X * d.Y;
        }
        double mean = 0.5 * (xx + yy), half = Math.Sqrt(0.25 * (xx - yy) * (xx - yy) + xy * xy);
        (double major, double minor) = (mean + half, mean - half);
        return new VertexStrain(major, minor, Vec2.FromAngle(0.5 * Math.Atan2(2 * xy, xx - yy)), 1 / ((1 + major) * (1 + minor)) - 1);
    }
}

using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Files.Proof;

/// <summary>Reads the lines of one layer out of an ASCII DXF file of any version: LINE, LWPOLYLINE, POLYLINE, ARC and CIRCLE.</summary>
internal static class DxfCut
{
    // Of a whole turn as two arcs.
    private const double HalfTurn = 1;

    /// <summary>The lines.</summary>
    /// <param name="text">The file.</param>
    /// <param name="layer">Name of the layer.</param>
    /// <returns>With the unit that the file names, or null where it names none.</returns>
    /// <exception cref="FormatException">This is no DXF.</exception>
    public static (LineSet Lines, int? Unit) Read(string text, string layer)
    {
        (int Code, string Value)[] tags = [.. Tags(text)];
        if (tags.Length == 0 || tags[^1] is not (0, "EOF")) throw new FormatException("does not end as a DXF file does");
        int unit = Array.FindIndex(tags, t => t is (9, "$INSUNITS")), begin = Array.FindIndex(tags, t => t is (2, "ENTITIES"));
        if (begin < 0) throw new FormatException("has no section of entities");
        var paths = ImmutableArray.CreateBuilder<ImmutableArray<Vec2>>();
        for (int i = begin + 1; i < tags.Length && tags[i] is not (0, "ENDSEC");)
        {
            (string kind, int next) = (tags[i].Value, NextEntity(tags, i));
            ArraySegment<(int Code, string Value)> entity = new(tags, i, next - i);
            bool wanted = entity.Any(t => t.Code == 8 && t.Value == layer);
            if (kind == "POLYLINE")
            {
                // Its corners are entities of their own.
                int end = i;
                while (tags[end] is not (0, "SEQEND")) end = NextEntity(tags, end);
                if (wanted) paths.Add(Bulged([.. Corners(tags, i, end)], (Flags(entity) & 1) != 0));
                next = NextEntity(tags, end);
            }
            else if (wanted && Path(kind, entity) is { } path) paths.Add(path);
            i = next;
        }
        return (new LineSet(paths.ToImmutable()), unit < 0 ? null : int.Parse(tags[unit + 1].Value, CultureInfo.InvariantCulture));
    }

    private static ImmutableArray<Vec2>? Path(string kind, ArraySegment<(int Code, string Value)> entity)
    {
        switch (kind)
        {
            case "LINE":
                return [At(entity, 10), At(entity, 11)];
            case "LWPOLYLINE":
                return Bulged([.. LightCorners(entity)], (Flags(entity) & 1) != 0);
            case "CIRCLE":
                Vec2 side = new(Number(entity, 40), 0);
                return Bulged([(At(entity, 10) + side, HalfTurn), (At(entity, 10) - side, HalfTurn)], closed: true);
            case "ARC":
                (double from, double to) = (Number(entity, 50), Number(entity, 51));
                double turn = (to - from + 360) % 360 * Math.PI / 180;
                Vec2 Rim(double degrees) => At(entity, 10) + Number(entity, 40) * Vec2.FromAngle(degrees * Math.PI / 180);
                return [Rim(from), .. LineSet.Arc(Rim(from), Rim(to), Math.Tan(0.25 * turn))];
            default:
                return null;
        }
    }

    private static ImmutableArray<Vec2> Bulged((Vec2 At, double Bulge)[] corners, bool closed)
    {
        var path = ImmutableArray.CreateBuilder<Vec2>();
        path.Add(corners[0].At);
        for (int i = 0; i < (closed ? corners.Length : corners.Length - 1); i++) path.AddRange(LineSet.Arc(corners[i].At, corners[(i + 1) % corners.Length].At, corners[i].Bulge));
        return path.ToImmutable();
    }

    private static IEnumerable<(Vec2 At, double Bulge)> LightCorners(ArraySegment<(int Code, string Value)> entity)
    {
        (double x, double y, double bulge, bool any) = (0, 0, 0, false);
        foreach ((int code, string value) in entity)
        {
            if (code == 10)
            {
                if (any) yield return (new Vec2(x, y), bulge);
                (x, bulge, any) = (Parse(value), 0, true);
            }
            else if (code == 20 && any) y = Parse(value);
            else if (code == 42 && any) bulge = Parse(value);
        }
        if (any) yield return (new Vec2(x, y), bulge);
    }

    private static IEnumerable<(Vec2 At, double Bulge)> Corners((int Code, string Value)[] tags, int from, int end)
    {
        for (int i = NextEntity(tags, from); i < end; i = NextEntity(tags, i))
        {
            ArraySegment<(int Code, string Value)> vertex = new(tags, i, NextEntity(tags, i) - i);
            yield return (At(vertex, 10), vertex.Any(t => t.Code == 42) ? Number(vertex, 42) : 0);
        }
    }

    private static int NextEntity((int Code, string Value)[] tags, int from)
    {
        int i = from + 1;
        while (i < tags.Length && tags[i].Code != 0) i++;
        return i < tags.Length ? i : throw new FormatException("breaks off in the middle");
    }

    private static IEnumerable<(int Code, string Value)> Tags(string text)
    {
        string[] lines = text.Split('\n');
        for (int i = 0; i + 1 < lines.Length; i += 2)
        {
            if (!int.TryParse(lines[i].Trim(), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int code)) throw new FormatException($"has no group code in line {(i + 1).ToString(CultureInfo.InvariantCulture)}");
            yield return (code, lines[i + 1].Trim());
        }
    }

    private static int Flags(ArraySegment<(int Code, string Value)> entity) => entity.Any(t => t.Code == 70) ? (int)Number(entity, 70) : 0;

    private static Vec2 At(ArraySegment<(int Code, string Value)> entity, int code) => new(Number(entity, code), Number(entity, code + 10));

    private static double Number(ArraySegment<(int Code, string Value)> entity, int code) => Parse(entity.First(t => t.Code == code).Value);

    private static double Parse(string value) => double.Parse(value, CultureInfo.InvariantCulture);
}

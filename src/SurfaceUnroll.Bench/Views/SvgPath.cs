using System.Globalization;
using System.Text;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Bench.Views;

/// <summary>Polylines as the data of an SVG path; y is turned down.</summary>
public static class SvgPath
{
    /// <summary>One polyline.</summary>
    public static string Of(IReadOnlyList<Vec2> points, bool close)
    {
        var path = new StringBuilder();
        Append(path, points, close);
        return path.ToString();
    }

    /// <summary>Strokes, one after another.</summary>
    public static string Of(IEnumerable<Stroke> strokes)
    {
        var path = new StringBuilder();
        foreach (Stroke stroke in strokes) Append(path, stroke.Points, stroke.Closed);
        return path.ToString();
    }

    private static void Append(StringBuilder path, IReadOnlyList<Vec2> points, bool close)
    {
        for (int i = 0; i < points.Count; i++) path.Append(i == 0 ? 'M' : 'L').Append(CultureInfo.InvariantCulture, $"{points[i].X:0.##} {-points[i].Y:0.##}");
        if (close) path.Append('Z');
    }
}

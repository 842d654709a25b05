using System.Globalization;
using System.Text.RegularExpressions;

namespace SurfaceUnroll.Files.CurveFiles;

/// <summary>Reads the transforms of an SVG element (SVG 1.1, 7.6).</summary>
internal static partial class SvgTransforms
{
    /// <summary>All of them, the last done first; null where they cannot be read.</summary>
    public static DrawingMap? Of(string? text)
    {
        DrawingMap all = DrawingMap.Scale(1, 1);
        if (string.IsNullOrWhiteSpace(text)) return all;
        if (!Whole().IsMatch(text)) return null;
        foreach (Match match in Single().Matches(text))
        {
            double[] n = [.. Number().Matches(match.Groups[2].Value).Select(m => double.Parse(m.Value, CultureInfo.InvariantCulture))];
            if (One(match.Groups[1].Value, n) is not { } own) return null;
            all = all.After(own);
        }
        return all;
    }

    private static DrawingMap? One(string name, double[] n) => (name, n.Length) switch
    {
        ("matrix", 6) => new DrawingMap(n[0], n[1], n[2], n[3], n[4], n[5]),
        ("translate", 1) => DrawingMap.Move(n[0], 0),
        ("translate", 2) => DrawingMap.Move(n[0], n[1]),
        ("scale", 1) => DrawingMap.Scale(n[0], n[0]),
        ("scale", 2) => DrawingMap.Scale(n[0], n[1]),
        ("rotate", 1) => DrawingMap.Turn(n[0] * Math.PI / 180),
        ("rotate", 3) => DrawingMap.Move(n[1], n[2]).After(DrawingMap.Turn(n[0] * Math.PI / 180)).After(DrawingMap.Move(-n[1], -n[2])),
        ("skewX", 1) => new DrawingMap(1, 0, Math.Tan(n[0] * Math.PI / 180), 1, 0, 0),
        ("skewY", 1) => new DrawingMap(1, Math.Tan(n[0] * Math.PI / 180), 0, 1, 0, 0),
        _ => null,
    };

    [GeneratedRegex(@"^\s*(\w+\s*\([-+.\deE,\s]*\)[\s,]*)*$")]
    private static partial Regex Whole();

    [GeneratedRegex(@"(\w+)\s*\(([^)]*)\)")]
    private static partial Regex Single();

    [GeneratedRegex(@"[-+]?(\d+\.?\d*|\.\d+)([eE][-+]?\d+)?")]
    private static partial Regex Number();
}

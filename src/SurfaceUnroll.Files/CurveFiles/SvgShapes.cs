using System.Collections.Immutable;
using System.Globalization;
using System.Xml.Linq;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Files.CurveFiles;

/// <summary>Makes exact pieces of the shapes of an SVG file (SVG 1.1, chapters 8 and 9).</summary>
internal static class SvgShapes
{
    private static readonly char[] Between = [' ', ',', '\t', '\n', '\r'];

    /// <summary>The unbroken parts of an element; none of what is no shape, and with a fault where it cannot be read.</summary>
    public static ImmutableArray<ImmutableArray<CurvePiece>> Parts(XElement element, DrawingMap map, int line, FileFaults faults)
    {
        switch (element.Name.LocalName)
        {
            case "path":
                var path = new SvgPathReader((string?)element.Attribute("d") ?? "", map);
                ImmutableArray<ImmutableArray<CurvePiece>> parts = path.Read();
                if (path.Problem is { } problem) Fault($"This path cannot be read: {problem}.");
                return parts;
            case "line":
                return Row([new(Length("x1"), Length("y1")), new(Length("x2"), Length("y2"))], false);
            case "polyline" or "polygon":
                return Row(Points(), element.Name.LocalName == "polygon");
            case "rect":
                return Rectangle();
            case "circle":
                double radius = Length("r");
                return Round(radius, radius);
            case "ellipse":
                return Round(Length("rx"), Length("ry"));
            default:
                return [];
        }

        void Fault(string message) => faults.Add("svg-broken", line, message, "Mend it, or save the drawing anew from the program that made it.");

        double Length(string name, double fallback = 0)
        {
            string? text = (string?)element.Attribute(name);
            if (SvgLengths.User(text, fallback) is { } value) return value;
            Fault($"The {name} of this {element.Name.LocalName} is no length that can be used: {FileFaults.Show(text!)}.");
            return 0;
        }

        ImmutableArray<ImmutableArray<CurvePiece>> Row(List<Vec2> places, bool closed)
        {
            if (closed && places.Count > 0) places.Add(places[0]);
            ImmutableArray<CurvePiece> row = [.. places.Skip(1).Zip(places, (b, a) => DrawnRounds.Bulged(map, a, b, 0)).OfType<CurvePiece>()];
            return row.IsEmpty ? [] : [row];
        }

        List<Vec2> Points()
        {
            string[] words = ((string?)element.Attribute("points") ?? "").Split(Between, StringSplitOptions.RemoveEmptyEntries);
            double[] n = [.. words.Select(w => double.TryParse(w, NumberStyles.Float, CultureInfo.InvariantCulture, out double v) && Math.Abs(v) <= 1e9 ? v : double.NaN)];
            if (n.Any(double.IsNaN) || n.Length % 2 != 0)
            {
                Fault("The points of this line are not all pairs of numbers.");
                return [];
            }
            return [.. Enumerable.Range(0, n.Length / 2).Select(i => new Vec2(n[2 * i], n[2 * i + 1]))];
        }

        ImmutableArray<ImmutableArray<CurvePiece>> Round(double rx, double ry) => rx > 0 && ry > 0
            ? [[DrawnRounds.Whole(map.Point(Length("cx"), Length("cy")), map.Direction(rx, 0), map.Direction(0, ry))]]
            : [];

        // With its corners as arcs of ellipses, as the equivalent path of the specification has them.
        ImmutableArray<ImmutableArray<CurvePiece>> Rectangle()
        {
            (double x, double y, double w, double h) = (Length("x"), Length("y"), Length("width"), Length("height"));
            if (!(w > 0 && h > 0)) return [];
            (bool hasX, bool hasY) = (Has("rx"), Has("ry"));
            (double rx, double ry) = (Length(hasX ? "rx" : "ry"), Length(hasY ? "ry" : "rx"));
            (rx, ry) = (Math.Clamp(rx, 0, w / 2), Math.Clamp(ry, 0, h / 2));
            if (rx == 0 || ry == 0) return Row([new(x, y), new(x + w, y), new(x + w, y + h), new(x, y + h)], true);
            string arc = Text($"A{rx:R},{ry:R} 0 0 1 ");
            return new SvgPathReader(Text($"M{x + rx:R},{y:R} H{x + w - rx:R} {arc}{x + w:R},{y + ry:R} V{y + h - ry:R} {arc}{x + w - rx:R},{y + h:R} H{x + rx:R} {arc}{x:R},{y + h - ry:R} V{y + ry:R} {arc}{x + rx:R},{y:R} Z"), map).Read();
        }

        bool Has(string name) => (string?)element.Attribute(name) is { } text && text.Trim() is not ("" or "auto");
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

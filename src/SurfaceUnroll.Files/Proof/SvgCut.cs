using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Files.Proof;

/// <summary>Reads the paths of one group out of an SVG file, with y turned upward: lines and circular arcs, in absolute and relative places.</summary>
internal static partial class SvgCut
{
    /// <summary>The lines.</summary>
    /// <param name="text">The file.</param>
    /// <param name="group">Value of <c>id</c>.</param>
    /// <returns>With the length that a unit has in millimetres.</returns>
    /// <exception cref="FormatException">A path has something else in it, or the file names no size in millimetres.</exception>
    /// <exception cref="System.Xml.XmlException">This is no XML.</exception>
    public static (LineSet Lines, double Unit) Read(string text, string group)
    {
        XElement root = XDocument.Parse(text).Root!;
        string[] box = [.. ((string?)root.Attribute("viewBox") ?? "").Split((char[])[' ', ','], StringSplitOptions.RemoveEmptyEntries)];
        string width = (string?)root.Attribute("width") ?? "";
        if (box.Length != 4 || !width.EndsWith("mm", StringComparison.Ordinal)) throw new FormatException("does not say its size in millimetres");
        double unit = Parse(width[..^2]) / Parse(box[2]);
        XElement[] groups = [.. root.Descendants().Where(e => e.Name.LocalName == "g" && (string?)e.Attribute("id") == group)];
        return (new LineSet([.. groups.SelectMany(g => g.Descendants()).Where(e => e.Name.LocalName == "path").SelectMany(e => Path((string?)e.Attribute("d") ?? ""))]), unit);
    }

    private static IEnumerable<ImmutableArray<Vec2>> Path(string data)
    {
        string[] words = [.. Words().Matches(data).Select(m => m.Value)];
        var path = ImmutableArray.CreateBuilder<Vec2>();
        Vec2 at = default;
        char command = 'M';
        for (int i = 0; i < words.Length;)
        {
            if (char.IsLetter(words[i][0])) command = words[i++][0];
            bool relative = char.IsLower(command);
            double Next() => i < words.Length ? Parse(words[i++]) : throw new FormatException("has a path that breaks off");
            Vec2 Place() => (relative ? at : default) + new Vec2(Next(), Next());
            switch (char.ToUpperInvariant(command))
            {
                case 'M':
                    if (path.Count > 1) yield return Upward(path);
                    path.Clear();
                    at = Place();
                    path.Add(at);
                    command = relative ? 'l' : 'L';
                    break;
                case 'L':
                    path.Add(at = Place());
                    break;
                case 'H':
                    path.Add(at = at with { X = (relative ? at.X : 0) + Next() });
                    break;
                case 'V':
                    path.Add(at = at with { Y = (relative ? at.Y : 0) + Next() });
                    break;
                case 'A':
                    (double rx, double ry) = (Next(), Next());
                    _ = Next();
                    (bool large, bool sweep) = (Next() != 0, Next() != 0);
                    if (Math.Abs(rx - ry) > 1e-9) throw new FormatException("has an arc that is no part of a circle");
                    Vec2 to = Place();
                    path.AddRange(LineSet.Arc(at, to, Bulge((to - at).Length, rx, large, sweep)));
                    at = to;
                    break;
                case 'Z':
                    path.Add(at = path[0]);
                    break;
                default:
                    throw new FormatException($"has a path with “{command}” in it");
            }
        }
        if (path.Count > 1) yield return Upward(path);
    }

    // A sweep of 1 goes towards positive angles, which with y downward is to the left once y is turned upward and back: tan of a quarter of the angle, in the file's own frame.
    private static double Bulge(double chord, double radius, bool large, bool sweep)
    {
        double half = Math.Asin(Math.Min(1, 0.5 * chord / radius)), angle = large ? 2 * (Math.PI - half) : 2 * half;
        return (sweep ? 1 : -1) * Math.Tan(0.25 * angle);
    }

    private static ImmutableArray<Vec2> Upward(ImmutableArray<Vec2>.Builder path) => [.. path.Select(p => new Vec2(p.X, -p.Y))];

    private static double Parse(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"[A-Za-z]|[-+]?(\d+\.?\d*|\.\d+)([eE][-+]?\d+)?")]
    private static partial Regex Words();
}

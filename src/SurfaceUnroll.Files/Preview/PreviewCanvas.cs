using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using SurfaceUnroll.Files.Svg;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Files.Preview;

/// <summary>An SVG picture being written; y down, numbers to a tenth of a unit.</summary>
internal sealed class PreviewCanvas
{
    // Closer than this to the last point kept, a point of an outline would not be seen.
    private const double PointSpacing = 0.4;

    private readonly StringBuilder _svg = new();

    public PreviewCanvas(double width, double height, string title)
    {
        _svg.Append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n")
            .Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}\" height=\"{height}\" ")
            .Append(CultureInfo.InvariantCulture, $"viewBox=\"0 0 {width} {height}\" font-family=\"system-ui,sans-serif\">\n")
            .Append("<title>").Append(SvgText.Escape(title)).Append("</title>\n")
            .Append(CultureInfo.InvariantCulture, $"<rect width=\"{width}\" height=\"{height}\" rx=\"12\" fill=\"{Palette.Paper}\"/>\n");
    }

    /// <summary>Begins a group; what it holds is not filled and its strokes are narrow unless they say otherwise.</summary>
    public void Begin(string id) =>
        _svg.Append("<g id=\"").Append(id).Append("\" fill=\"none\" stroke-width=\".6\" stroke-linejoin=\"round\" stroke-linecap=\"round\">\n");

    public void End() => _svg.Append("</g>\n");

    /// <summary>A filled facet, stroked narrowly in its own colour so that no gap shows to its neighbours.</summary>
    public void Facet(ImmutableArray<Vec2> points, string colour) =>
        _svg.Append("<path d=\"").Append(Path(points)).Append("Z\" fill=\"").Append(colour).Append("\" stroke=\"").Append(colour)
            .Append("\"/>\n");

    public void Line(ImmutableArray<Vec2> points, string colour, double width, string? dashes = null)
    {
        _svg.Append("<path d=\"").Append(Path(points)).Append("\" stroke=\"").Append(colour)
            .Append("\" stroke-width=\"").Append(PlainNumber.Short(width));
        if (dashes is not null) _svg.Append("\" stroke-linecap=\"butt\" stroke-dasharray=\"").Append(dashes);
        _svg.Append("\"/>\n");
    }

    public void Outline(ImmutableArray<Vec2> points, string fill, string colour, double width) =>
        _svg.Append("<path d=\"").Append(Path(Thinned(points))).Append("Z\" fill=\"").Append(fill).Append("\" stroke=\"").Append(colour)
            .Append("\" stroke-width=\"").Append(PlainNumber.Short(width)).Append("\"/>\n");

    public void Text(Vec2 at, string text, double size, string colour, string anchor, bool bold = false) =>
        _svg.Append("<text x=\"").Append(Tenth(at.X)).Append("\" y=\"").Append(Tenth(at.Y)).Append("\" font-size=\"")
            .Append(PlainNumber.Short(size)).Append(bold ? "\" font-weight=\"bold" : "").Append("\" fill=\"").Append(colour)
            .Append("\" stroke=\"").Append(Palette.Paper).Append("\" stroke-width=\"3\" stroke-opacity=\".7\" paint-order=\"stroke\" text-anchor=\"").Append(anchor).Append("\">").Append(SvgText.Escape(text)).Append("</text>\n");

    public byte[] ToBytes() => Encoding.UTF8.GetBytes(_svg.ToString() + "</svg>\n");

    private static string Path(IEnumerable<Vec2> points)
    {
        var path = new StringBuilder();
        foreach (Vec2 p in points)
        {
            path.Append(path.Length == 0 ? 'M' : 'L').Append(Tenth(p.X)).Append(' ').Append(Tenth(p.Y));
        }
        return path.ToString();
    }

    private static ImmutableArray<Vec2> Thinned(ImmutableArray<Vec2> points)
    {
        var kept = ImmutableArray.CreateBuilder<Vec2>();
        foreach (Vec2 p in points)
        {
            if (kept.Count == 0 || (p - kept[^1]).Length >= PointSpacing) kept.Add(p);
        }
        return kept.ToImmutable();
    }

    private static string Tenth(double value) => PlainNumber.Rounded(value, 1).ToString("0.#", CultureInfo.InvariantCulture);
}

using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Drawings;

/// <summary>Lines of text set below one another and broken to a width.</summary>
/// <param name="width">mm.</param>
internal sealed class TextColumn(double width)
{
    // From one baseline to the next, and between paragraphs, in cap heights.
    private const double Leading = 1.75, Gap = 0.35;

    private readonly List<PageText> lines = [];

    /// <summary>Height used so far, mm.</summary>
    public double Height { get; private set; }

    /// <summary>White between paragraphs, mm.</summary>
    public void Skip(double mm) => Height += mm;

    /// <summary>One paragraph.</summary>
    /// <param name="text">Words parted by spaces.</param>
    /// <param name="height">Cap height, mm.</param>
    /// <param name="label">Stands before the first line.</param>
    /// <param name="indent">Where the text begins, mm: room for <paramref name="label"/>.</param>
    public void Add(string text, double height, string label = "", double indent = 0)
    {
        if (label.Length > 0) lines.Add(new PageText(label, new Vec2(0, -Height - height), height));
        foreach (string line in Broken(text, height, width - indent))
        {
            lines.Add(new PageText(line, new Vec2(indent, -Height - height), height));
            Height += Leading * height;
        }
        Height += Gap * height;
    }

    /// <summary>A name and, from the indent on, what there is to say of it; below the name where that is too long to stand before it.</summary>
    public void AddNamed(string name, string value, double height, double indent)
    {
        if (PageTextWidth.Of(name, height) <= indent - 0.8 * height) Add(value, height, name, indent);
        else
        {
            lines.Add(new PageText(PageTextWidth.Fit(name, height, width), new Vec2(0, -Height - height), height));
            Height += Leading * height;
            Add(value, height, "", indent);
        }
    }

    /// <summary>The lines, the column's upper left corner standing at a place of the page.</summary>
    public IEnumerable<PageText> At(Vec2 corner) => lines.Select(line => line with { At = corner + line.At });

    private static ImmutableArray<string> Broken(string text, double height, double width)
    {
        var broken = ImmutableArray.CreateBuilder<string>();
        string line = "";
        foreach (string word in text.Split(' '))
        {
            string longer = line.Length == 0 ? word : $"{line} {word}";
            if (line.Length > 0 && PageTextWidth.Of(longer, height) > width)
            {
                broken.Add(PageTextWidth.Fit(line, height, width));
                longer = word;
            }
            line = longer;
        }
        broken.Add(PageTextWidth.Fit(line, height, width));
        return broken.ToImmutable();
    }
}

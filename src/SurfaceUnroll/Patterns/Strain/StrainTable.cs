using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Patterns.Strain;

/// <summary>The numbered worst places as a table.</summary>
internal sealed class StrainTable
{
    private static readonly ImmutableArray<string> Columns = ["no.", "strain", "thickness", "where"];

    private readonly List<PagePart> parts = [];
    private readonly double width;

    /// <summary>Sets the table.</summary>
    /// <param name="spots">Its rows.</param>
    /// <param name="width">mm.</param>
    /// <param name="body">Cap height of the rows, mm.</param>
    /// <param name="head">Cap height of the title, mm.</param>
    public StrainTable(ImmutableArray<StrainSpot> spots, double width, double body, double head)
    {
        this.width = width;
        // What the widest entries of the narrow columns take.
        double number = 3 * body, strain = PageTextWidth.Of($"shrink {StrainKinds.Minus}10.55 %  ", body), thickness = PageTextWidth.Of("thickness  ", body);
        Write("Worst places", 0, head);
        Height += 2.1 * head;
        if (spots.IsEmpty)
        {
            Write("None of 0.1 % or more.", 0, body);
            Height += 2.1 * body;
            return;
        }
        double[] at = [0, number, number + strain, number + strain + thickness];
        foreach ((string text, double x) in Columns.Zip(at)) Write(text, x, body);
        Height += 1.6 * body;
        Rule();
        Height += 0.5 * body;
        foreach (StrainSpot spot in spots)
        {
            Height += 0.4 * body;
            Write(spot.Number.ToString(CultureInfo.InvariantCulture), at[0], body);
            Write($"{(spot.Kind == StrainKind.Stretch ? "stretch" : "shrink")} {StrainKinds.Percent(spot.Kind.Signed(spot.Size), 1)}", at[1], body);
            Write(StrainKinds.Percent(spot.Thickness, 1), at[2], body);
            var where = new TextColumn(width - at[3]);
            where.Add(spot.Where, body);
            parts.AddRange(where.At(new Vec2(at[3], -Height)));
            Height += where.Height;
        }
        Rule();
    }

    /// <summary>mm.</summary>
    public double Height { get; private set; }

    /// <summary>The table, its upper left corner standing at a place of the page.</summary>
    public IEnumerable<PagePart> At(Vec2 corner) => parts.Select<PagePart, PagePart>(part => part switch
    {
        PageText text => text with { At = corner + text.At },
        PageLine line => line with { Points = [.. line.Points.Select(p => corner + p)] },
        _ => part,
    });

    private void Write(string text, double x, double height) => parts.Add(new PageText(text, new Vec2(x, -Height - height), height));

    private void Rule() => parts.Add(new PageLine(Pen.Fine, [new Vec2(0, -Height), new Vec2(width, -Height)]));
}

using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Drawings;

/// <summary>One sheet of paper at true scale: x to the right, y up, the origin at its lower left corner, mm.</summary>
/// <param name="Width">mm.</param>
/// <param name="Height">mm.</param>
/// <param name="Fills">Drawn first, in order.</param>
/// <param name="Lines">Drawn over the fills, in order.</param>
/// <param name="Texts">Drawn last, in order.</param>
public sealed record Page(
    double Width, double Height, ImmutableArray<PageFill> Fills, ImmutableArray<PageLine> Lines, ImmutableArray<PageText> Texts)
{
    /// <summary>A page of parts, sorted into fills, lines and texts, each kind in the order given.</summary>
    public static Page Of(double width, double height, IReadOnlyCollection<PagePart> parts) => new(
        width, height, [.. parts.OfType<PageFill>()], [.. parts.OfType<PageLine>()], [.. parts.OfType<PageText>()]);
}

/// <summary>Something drawn on a page.</summary>
public abstract record PagePart;

/// <summary>How a line is drawn. Widths follow ISO 128: wide to narrow 2 : 1.</summary>
public enum Pen
{
    /// <summary>Wide continuous, 0.7 mm: the cut line.</summary>
    Wide,

    /// <summary>Narrow continuous, 0.35 mm: marks, bars, frames.</summary>
    Narrow,

    /// <summary>Fine continuous, 0.18 mm: grids and small pictures.</summary>
    Fine,

    /// <summary>Narrow chain, 0.35 mm, short dashes and dots: element lines.</summary>
    Chain,

    /// <summary>Narrow long-dashed dotted, 0.35 mm: centrelines.</summary>
    LongChain,

    /// <summary>Fine dashed, 0.18 mm: lines of equal shrink.</summary>
    FineDashed,

    /// <summary>Narrow dashed, 0.35 mm: where a bend begins and ends.</summary>
    NarrowDashed,

    /// <summary>Narrow long-dashed double-dotted, 0.35 mm: finished edges under an allowance.</summary>
    DoubleChain,
}

/// <summary>A polyline on a page.</summary>
/// <param name="Pen">Style.</param>
/// <param name="Points">At least two, mm; a closed line does not repeat its first point.</param>
/// <param name="Closed">The last point joins the first.</param>
public sealed record PageLine(Pen Pen, ImmutableArray<Vec2> Points, bool Closed = false) : PagePart;

/// <summary>A filled polygon.</summary>
/// <param name="Points">At least three, mm.</param>
/// <param name="Grey">0 black to 1 white.</param>
public sealed record PageFill(ImmutableArray<Vec2> Points, double Grey) : PagePart
{
    /// <summary>Colour in place of <see cref="Grey"/>, or null.</summary>
    public PageColour? Colour { get; init; }

    /// <summary>More loops of the same area, painted as one with <see cref="Points"/> by the nonzero rule: neighbours leave no seam.</summary>
    public ImmutableArray<ImmutableArray<Vec2>> More { get; init; } = [];
}

/// <summary>A colour of the sRGB space (IEC 61966-2-1).</summary>
/// <param name="Red">0 to 255.</param>
/// <param name="Green">0 to 255.</param>
/// <param name="Blue">0 to 255.</param>
public readonly record struct PageColour(byte Red, byte Green, byte Blue);

/// <summary>A line of text.</summary>
/// <param name="Text">One line.</param>
/// <param name="At">Where its anchor stands, mm.</param>
/// <param name="Height">Cap height, mm.</param>
/// <param name="Angle">Direction of writing, radians counter-clockwise.</param>
/// <param name="Anchor">Which point of the baseline stands at <paramref name="At"/>.</param>
/// <param name="Halo">White behind the letters, so that lines do not run through them.</param>
public sealed record PageText(string Text, Vec2 At, double Height, double Angle = 0, Anchor Anchor = Anchor.Left, bool Halo = false) : PagePart;

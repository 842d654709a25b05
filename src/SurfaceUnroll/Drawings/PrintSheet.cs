using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Drawings;

/// <summary>A sheet of paper as it lies before the reader, in millimetres that come out of the printer.</summary>
/// <param name="Width">mm.</param>
/// <param name="Height">mm.</param>
/// <param name="Margins">Unprinted edges as it lies, mm.</param>
public readonly record struct PrintSheet(double Width, double Height, PaperMargins Margins)
{
    // Words alone on paper from a roll take a piece of this shape, and no less than this length between its margins, mm.
    private const double WordsShape = 0.7, WordsLength = 210;

    // The least that a page for the wall has room for, mm: narrower paper is for tiles alone.
    private const double LeastForWall = 105;

    /// <summary>Where it is printed on, from the lower left corner of the sheet, mm.</summary>
    public Box Area => new(new Vec2(Margins.Left, Margins.Bottom), new Vec2(Width - Margins.Right, Height - Margins.Top));

    /// <summary>It lies on its long side.</summary>
    public bool IsLandscape => Width > Height;

    /// <summary>A sheet of a paper.</summary>
    /// <param name="paper">Its size, margins and printer. A roll lies with its width across.</param>
    /// <param name="level">On its long side; not for a roll.</param>
    /// <param name="length">What is cut off a roll, mm.</param>
    public static PrintSheet Of(PaperSpec paper, bool level, double length)
    {
        (double width, double height, PaperMargins margins) = paper.Size.IsRoll
            ? (paper.Size.Width, length, paper.Margins)
            : level ? (paper.Size.Height, paper.Size.Width, paper.Margins.OnItsSide()) : (paper.Size.Width, paper.Size.Height, paper.Margins);
        return paper.Printer is null ? new PrintSheet(width, height, margins) : PageScale.Of(paper.Printer, width > height && !paper.Size.IsRoll).True(width, height, margins);
    }

    /// <summary>A sheet for the wall of the shop: of the job's paper, or where that has no room for tables A4.</summary>
    public static PrintSheet ForWall(PaperSpec paper)
    {
        bool level = paper.Orientation == PaperOrientation.Landscape;
        var sheet = ForWords(paper, level);
        return Math.Min(sheet.Area.Width, sheet.Area.Height) >= LeastForWall ? sheet : ForWords(PaperSpec.Default, level);
    }

    /// <summary>A sheet for words and pictures that are not to scale.</summary>
    /// <param name="paper">Paper.</param>
    /// <param name="level">On its long side.</param>
    public static PrintSheet ForWords(PaperSpec paper, bool level) =>
        Of(paper with { Printer = null }, level, paper.Size.IsRoll ? Math.Max(WordsShape * paper.Size.Width, WordsLength + paper.Margins.Top + paper.Margins.Bottom) : 0);
}

using System.Collections.Immutable;
using System.Globalization;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Drawings;

/// <summary>One sheet of a tiled drawing.</summary>
/// <param name="Row">From the top, zero-based.</param>
/// <param name="Column">From the left, zero-based.</param>
/// <param name="Window">Part of the drawing shown, overlap included, mm in the turned drawing.</param>
/// <param name="IsEmpty">Nothing of the drawing falls in the window; the sheet is not printed.</param>
public sealed record Tile(int Row, int Column, Box Window, bool IsEmpty)
{
    /// <summary>Numbers of row and column: 1.1 is at the top left. Match marks begin with a letter, and have no point.</summary>
    public string Label => string.Create(CultureInfo.InvariantCulture, $"{Row + 1}.{Column + 1}");
}

/// <summary>A mark that two neighbouring tiles both carry at the same place of the drawing.</summary>
/// <param name="At">mm in the turned drawing.</param>
/// <param name="Letter">The same on both tiles.</param>
public readonly record struct OverlapMark(Vec2 At, string Letter);

/// <summary>How a drawing is laid over sheets of paper.</summary>
/// <param name="Paper">The paper asked for.</param>
/// <param name="Sheet">A sheet as it lies, in millimetres that come out of the printer.</param>
/// <param name="Rows">Rows of sheets.</param>
/// <param name="Columns">Columns of sheets.</param>
/// <param name="Tiles">All tiles row by row, the empty ones too.</param>
/// <param name="Marks">Overlap marks.</param>
/// <param name="Drawing">The drawing as it lies on the paper.</param>
/// <param name="Turn">How far it was turned for that, radians counter-clockwise.</param>
public sealed record TilePlan(
    PaperSpec Paper, PrintSheet Sheet, int Rows, int Columns, ImmutableArray<Tile> Tiles, ImmutableArray<OverlapMark> Marks, Drawing Drawing, double Turn)
{
    /// <summary>Tiles that are printed.</summary>
    public IEnumerable<Tile> Printed => Tiles.Where(t => !t.IsEmpty);

    /// <summary>True if the sheet lies on its long side.</summary>
    public bool IsLandscape => Sheet.IsLandscape && !Paper.Size.IsRoll;

    /// <summary>What it takes: sheets, or of a roll so many millimetres of its length.</summary>
    public double Cost => CostOf(Paper, Printed.Count(), Sheet);

    /// <summary>What it would take without a turn, where the turn was free.</summary>
    public double? CostUnturned { get; init; }

    /// <summary>The page that the printer is given, mm.</summary>
    public (double Width, double Height) Given => Paper.Printer is { } printer
        ? PageScale.Of(printer, IsLandscape).Given(Sheet)
        : (Sheet.Width, Sheet.Height);

    /// <summary>A page in true millimetres, made so that it comes out true of the printer.</summary>
    public Page Corrected(Page page) => Paper.Printer is { } printer ? PageScale.Of(printer, IsLandscape).Undone(page, Given.Width, Given.Height) : page;

    internal static double CostOf(PaperSpec paper, int printed, PrintSheet sheet) => paper.Size.IsRoll ? printed * Math.Round(sheet.Height, 1) : printed;
}

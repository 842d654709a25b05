using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Nesting;

/// <summary>Lays out pieces of any shape on sheets or on a run of given width.</summary>
/// <remarks>Fewest sheets, then the least area of sheet, then the least length. Bottom-left placement in several orders, the best of which is improved step by step (<see cref="NestSearch"/>); shelf packing of the
/// upright boxes (<see cref="Shelves"/>) is always one of the candidates. The same pieces give the same layout.</remarks>
public static class Nester
{
    // Cells of the raster across a sheet, and along it at most.
    private const int CellsAcross = 200, CellsAlong = 4000;

    /// <summary>Pieces on the sheets of a stock. Where there are not enough sheets, more are taken of the first size that a piece fits on.</summary>
    /// <param name="pieces">Their numbers are their places in this list.</param>
    /// <param name="stock">Sizes; at least one.</param>
    /// <param name="nest">Gap and turns.</param>
    public static NestLayout OnSheets(ImmutableArray<NestPiece> pieces, ImmutableArray<StockSheet> stock, NestSpec nest)
    {
        double cell = Cell(stock.Max(s => s.Length), stock.Max(s => s.Width));
        (Packing packing, ImmutableArray<int> tooLarge) = Packed(pieces, stock, nest, cell);
        return new NestLayout([.. packing.Sheets.Select(Sheet)], tooLarge);
    }

    /// <summary>Pieces on one run, such as a roll of paper, as short as may be.</summary>
    /// <param name="pieces">Their numbers are their places in this list.</param>
    /// <param name="width">Of the run, mm.</param>
    /// <param name="nest">Gap, kept from the sides and the ends too, and turns. A grain is taken to run along the run.</param>
    public static NestedStrip OnStrip(ImmutableArray<NestPiece> pieces, double width, NestSpec nest)
    {
        // One behind the other they need no more than this, however they are turned.
        double length = nest.Gap + pieces.Sum(p => Reach(p.Outline) + nest.Gap);
        (Packing packing, ImmutableArray<int> tooLarge) = Packed(pieces, [new StockSheet(Math.Max(length, width), width, null, false)], nest, Cell(length, width));
        if (packing.Sheets is not [var run]) return new NestedStrip(width, 0, [], 0, tooLarge);
        double used = run.LengthUsed + nest.Gap;
        return new NestedStrip(width, used, Placements(run), run.Pieces.Sum(p => p.Piece.Area) / (used * width), tooLarge);
    }

    /// <summary>True if a piece alone fits on a sheet of the stock.</summary>
    internal static bool Fits(NestPiece piece, ImmutableArray<StockSheet> stock, NestSpec nest)
    {
        var turnable = PieceTurns.Of(0, piece, nest, Cell(stock.Max(s => s.Length), stock.Max(s => s.Width)));
        return stock.Any(s => turnable.On(FirstFit.FieldOf(s, nest.Gap)).Any());
    }

    private static (Packing Packing, ImmutableArray<int> TooLarge) Packed(ImmutableArray<NestPiece> pieces, ImmutableArray<StockSheet> stock, NestSpec nest, double cell)
    {
        NestField[] fields = [.. stock.Select(s => FirstFit.FieldOf(s, nest.Gap))];
        TurnablePiece[] all = [.. pieces.Select((p, i) => PieceTurns.Of(i, p, nest, cell))];
        ImmutableArray<TurnablePiece> fit = [.. all.Where(p => fields.Any(f => p.On(f).Any()))];
        Packing packing = fit.IsEmpty ? new Packing([]) : new NestSearch(fit, stock, nest.Gap, cell, [.. pieces.Select(p => p.Outline)]).Best();
        return (packing, [.. all.Except(fit).Select(p => p.Number)]);
    }

    private static double Cell(double length, double width) => Math.Max(width / CellsAcross, length / CellsAlong);

    // Longest distance that any turn can lay along the run, at most.
    private static double Reach(ImmutableArray<Vec2> outline) => Box.Around(outline) is var box ? new Vec2(box.Width, box.Height).Length : 0;

    private static NestedSheet Sheet(PackedSheet sheet) =>
        new(sheet.Stock, Placements(sheet), sheet.Pieces.Sum(p => p.Piece.Area) / (sheet.Stock.Length * sheet.Stock.Width), sheet.LengthUsed);

    private static ImmutableArray<NestPlacement> Placements(PackedSheet sheet) =>
        [.. sheet.Pieces.OrderBy(p => p.Piece.Number).Select(p => new NestPlacement(p.Piece.Number, p.Turned.Turn, p.Turned.Shift + p.At))];
}

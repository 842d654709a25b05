using System.Collections.Immutable;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Nesting;

/// <summary>A sheet that is being filled.</summary>
internal interface IOpenSheet
{
    /// <summary>Lays a piece on it where there is room.</summary>
    bool TryLay(TurnablePiece piece, TurnedPiece? only);

    /// <summary>What lies on it.</summary>
    IReadOnlyList<LaidPiece> Pieces { get; }
}

/// <summary>Lays pieces one after the other, each on the first sheet that has room, and opens sheets as it takes them.</summary>
/// <param name="stock">Sizes in the order in which they are taken.</param>
/// <param name="gap">mm.</param>
/// <param name="open">An empty sheet.</param>
internal sealed class FirstFit(ImmutableArray<StockSheet> stock, double gap, Func<NestField, IOpenSheet> open)
{
    /// <summary>Lays out all pieces.</summary>
    /// <param name="pieces">In this order; each fits on a sheet of the stock, and at its one angle if it has one.</param>
    public Packing Lay(IEnumerable<(TurnablePiece Piece, TurnedPiece? Only)> pieces)
    {
        var sheets = new List<(StockSheet Stock, NestField Field, bool IsMissing, IOpenSheet Sheet)>();
        foreach ((TurnablePiece piece, TurnedPiece? only) in pieces)
        {
            if (sheets.Any(s => s.Sheet.TryLay(piece, only))) continue;
            StockSheet[] fits = [.. stock.Where(s => piece.On(FieldOf(s, gap)).Any())];
            StockSheet? there = fits.FirstOrDefault(s => !(s.Count <= sheets.Count(t => ReferenceEquals(t.Stock, s))));
            StockSheet taken = there ?? fits[0];
            NestField field = FieldOf(taken, gap);
            IOpenSheet sheet = open(field);
            // On an empty sheet there is room at any angle at which the piece fits.
            if (!sheet.TryLay(piece, only) && !sheet.TryLay(piece, null)) throw new InvalidOperationException("A piece that fits has no room on an empty sheet.");
            sheets.Add((taken, field, there is null, sheet));
        }
        return new Packing([.. sheets.Select(s => new PackedSheet(s.Stock, s.Field, s.IsMissing, [.. s.Sheet.Pieces]))]);
    }

    /// <summary>Room of a sheet.</summary>
    public static NestField FieldOf(StockSheet sheet, double gap) => new(sheet.Length, sheet.Width, gap, sheet.GrainAcross);
}

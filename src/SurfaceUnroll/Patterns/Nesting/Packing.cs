using System.Collections.Immutable;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Nesting;

/// <summary>Pieces laid on one sheet.</summary>
/// <param name="Stock">Of this size.</param>
/// <param name="Field">Its room.</param>
/// <param name="IsMissing">There are not so many sheets of this size.</param>
/// <param name="Pieces">Laid out.</param>
internal sealed record PackedSheet(StockSheet Stock, NestField Field, bool IsMissing, ImmutableArray<LaidPiece> Pieces)
{
    /// <summary>Right end of the farthest piece, mm.</summary>
    public double LengthUsed => Pieces.Max(p => p.Right);
}

/// <summary>All pieces laid out.</summary>
/// <param name="Sheets">In the order in which they are filled.</param>
internal sealed record Packing(ImmutableArray<PackedSheet> Sheets)
{
    /// <summary>What is to be little, the weightiest first: sheets that are missing, sheets, their area (mm²), and the length of sheet used, those before the last counted whole (mm).</summary>
    public (int Missing, int Count, double Area, double Length) Cost { get; } = (
        Sheets.Count(s => s.IsMissing), Sheets.Length, Sheets.Sum(s => s.Stock.Length * s.Stock.Width),
        Sheets.IsEmpty ? 0 : Sheets.SkipLast(1).Sum(s => s.Stock.Length) + Sheets[^1].LengthUsed);

    /// <summary>Costs less than another.</summary>
    public bool Beats(Packing other) => Cost.CompareTo(other.Cost) < 0;
}

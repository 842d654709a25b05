using System.Collections.Immutable;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Nesting;

/// <summary>What would make a piece fit on the stock that fits on no sheet of it.</summary>
/// <param name="FreeGrain">Its grain must be let go.</param>
/// <param name="AnyTurn">It must be turned by another angle than it may be.</param>
/// <param name="OtherGrain">Instead, sheets of the same sizes with their grain the other way would do.</param>
public readonly record struct NestRelief(bool FreeGrain, bool AnyTurn, bool OtherGrain)
{
    /// <summary>The least that helps; null where the piece is too large however it lies.</summary>
    /// <param name="piece">A piece that fits on no sheet.</param>
    /// <param name="stock">At least one size.</param>
    /// <param name="nest">Gap and turns.</param>
    public static NestRelief? Of(NestPiece piece, ImmutableArray<StockSheet> stock, NestSpec nest)
    {
        bool bound = piece.Grain is not null;
        NestPiece free = piece with { Grain = null };
        NestSpec any = nest with { Turns = NestTurns.Any };
        if (bound && Nester.Fits(free, stock, nest)) return new NestRelief(true, false, Nester.Fits(piece, [.. stock.Select(s => s with { GrainAcross = !s.GrainAcross })], nest));
        return nest.Turns != NestTurns.Any && Nester.Fits(free, stock, any) ? new NestRelief(bound, true, false) : null;
    }
}

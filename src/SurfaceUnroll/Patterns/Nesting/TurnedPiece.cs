using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Patterns.Nesting;

/// <summary>A piece at one of its angles, moved so that the lower left corner of its upright box is the origin.</summary>
/// <param name="Turn">Radians, counter-clockwise.</param>
/// <param name="Shift">From the turned flat frame to the origin, mm.</param>
/// <param name="Width">Of the box, mm.</param>
/// <param name="Height">Of the box, mm.</param>
/// <param name="Grown">Grown by half the gap.</param>
/// <param name="Cells">The grown outline on the raster.</param>
internal sealed record TurnedPiece(double Turn, Vec2 Shift, double Width, double Height, ImmutableArray<Vec2> Grown, ImmutableArray<CellSpan> Cells);

/// <summary>A piece with all angles at which it may lie.</summary>
/// <param name="Number">Of the piece.</param>
/// <param name="Area">Inside its outline, mm².</param>
/// <param name="Reach">Longest side of its upright box at the first angle, mm.</param>
/// <param name="Along">Angles on a sheet whose grain runs along its length.</param>
/// <param name="Across">Angles on a sheet whose grain runs across.</param>
internal sealed record TurnablePiece(int Number, double Area, double Reach, ImmutableArray<TurnedPiece> Along, ImmutableArray<TurnedPiece> Across)
{
    /// <summary>The angles at which it fits on a field.</summary>
    public IEnumerable<TurnedPiece> On(NestField field) => (field.GrainAcross ? Across : Along).Where(field.Takes);
}

/// <summary>Room for pieces: a sheet, or a run of given width.</summary>
/// <param name="Length">mm.</param>
/// <param name="Width">mm.</param>
/// <param name="Gap">mm.</param>
/// <param name="GrainAcross">The grain runs across the length.</param>
internal sealed record NestField(double Length, double Width, double Gap, bool GrainAcross)
{
    // Rounding, mm: a piece that fits exactly fits.
    private const double Exact = 1e-9;

    /// <summary>Largest place of a lower left corner.</summary>
    public Vec2 Last(TurnedPiece piece) => new(Length - Gap - piece.Width + Exact, Width - Gap - piece.Height + Exact);

    /// <summary>The piece fits by its box.</summary>
    public bool Takes(TurnedPiece piece) => Last(piece) is var last && last.X >= Gap && last.Y >= Gap;
}

/// <summary>A piece laid down.</summary>
/// <param name="Piece">Which.</param>
/// <param name="Turned">At which angle.</param>
/// <param name="At">Lower left corner of its box, mm.</param>
internal sealed record LaidPiece(TurnablePiece Piece, TurnedPiece Turned, Vec2 At)
{
    /// <summary>Right end, mm.</summary>
    public double Right => At.X + Turned.Width;
}

using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Nesting;

/// <summary>Which way shelves run, and how the boxes stand on them.</summary>
/// <param name="AlongLength">Shelves run along the length of the sheet; else across it.</param>
/// <param name="Lying">Boxes lie with the longer side along the shelf where they fit so; else they stand.</param>
internal readonly record struct ShelfWay(bool AlongLength, bool Lying);

/// <summary>The pieces' upright boxes in rows, the highest first, each in the first row that has room (first fit by decreasing height: Coffman, Garey, Johnson and Tarjan 1980).
/// What nesting is measured against.</summary>
internal static class Shelves
{
    /// <summary>Every way.</summary>
    public static ImmutableArray<ShelfWay> Ways { get; } = [new(true, true), new(true, false), new(false, true), new(false, false)];

    /// <summary>Lays out all pieces.</summary>
    /// <param name="pieces">Each fits on a sheet of the stock.</param>
    /// <param name="stock">Sizes in the order in which they are taken.</param>
    /// <param name="gap">mm.</param>
    /// <param name="way">Of the shelves.</param>
    public static Packing Lay(ImmutableArray<TurnablePiece> pieces, ImmutableArray<StockSheet> stock, double gap, ShelfWay way)
    {
        NestField field = FirstFit.FieldOf(stock[0], gap);
        var sorted = pieces.OrderByDescending(p => Box(Choice(p, field, way) ?? p.Along[0], way).Up).ThenByDescending(p => p.Area);
        return new FirstFit(stock, gap, open => new ShelvedSheet(open, way)).Lay(sorted.Select(p => (p, (TurnedPiece?)null)));
    }

    // Of the angles at which it fits those with the least box, and of these the one that lies or stands as asked.
    private static TurnedPiece? Choice(TurnablePiece piece, NestField field, ShelfWay way)
    {
        TurnedPiece[] fits = [.. piece.On(field)];
        if (fits.Length == 0) return null;
        double least = fits.Min(t => t.Width * t.Height) * (1 + 1e-9);
        return fits.Where(t => t.Width * t.Height <= least).MinBy(t => way.Lying ? Box(t, way).Up : Box(t, way).Along);
    }

    // Size of the box along the shelf and up from it.
    private static (double Along, double Up) Box(TurnedPiece piece, ShelfWay way) => way.AlongLength ? (piece.Width, piece.Height) : (piece.Height, piece.Width);

    private sealed class ShelvedSheet(NestField field, ShelfWay way) : IOpenSheet
    {
        // Rounding, mm.
        private const double Exact = 1e-9;

        private readonly List<(double From, double Height, double Used)> _rows = [];
        private readonly List<LaidPiece> _pieces = [];
        private readonly double _along = way.AlongLength ? field.Length : field.Width, _up = way.AlongLength ? field.Width : field.Length;

        public IReadOnlyList<LaidPiece> Pieces => _pieces;

        public bool TryLay(TurnablePiece piece, TurnedPiece? only)
        {
            if (Choice(piece, field, way) is not { } turned) return false;
            (double along, double up) = Box(turned, way);
            int row = _rows.FindIndex(r => r.Height + Exact >= up && r.Used + along + field.Gap <= _along + Exact);
            if (row < 0)
            {
                double from = field.Gap + _rows.Sum(r => r.Height + field.Gap);
                if (from + up + field.Gap > _up + Exact) return false;
                row = _rows.Count;
                _rows.Add((from, up, field.Gap));
            }
            (double bottom, double height, double used) = _rows[row];
            _pieces.Add(new LaidPiece(piece, turned, way.AlongLength ? new Vec2(used, bottom) : new Vec2(bottom, used)));
            _rows[row] = (bottom, height, used + along + field.Gap);
            return true;
        }
    }
}

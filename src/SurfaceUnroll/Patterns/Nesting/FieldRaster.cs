using System.Runtime.InteropServices;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Patterns.Nesting;

/// <summary>Which cells of a field are taken.</summary>
internal sealed class FieldRaster
{
    private readonly double _cell;
    private readonly NestField _field;
    private readonly int _columns, _rows, _before;

    // In each column for each row the nearest taken row at or below it, −1 if there is none.
    private readonly short[] _taken;

    /// <summary>An empty field.</summary>
    /// <param name="field">Its cells begin at the gap from the rim, and the raster at <paramref name="margin"/> before that.</param>
    /// <param name="cell">Side of a cell, mm.</param>
    /// <param name="margin">How far a grown outline goes beyond its piece, mm.</param>
    public FieldRaster(NestField field, double cell, double margin)
    {
        (_field, _cell) = (field, cell);
        _before = (int)Math.Ceiling(margin / cell) + 1;
        _columns = (int)Math.Ceiling(field.Length / cell) + 2 * _before + 2;
        _rows = (int)Math.Ceiling(field.Width / cell) + 2 * _before + 2;
        _taken = new short[_columns * _rows];
        Array.Fill(_taken, (short)-1);
    }

    /// <summary>Cells looked at so far: a measure of work that is the same on every machine.</summary>
    public long Work { get; private set; }

    /// <summary>The leftmost place for a piece, the lowest of those; null if there is none whose right end is left of <paramref name="before"/>.</summary>
    public Vec2? Find(TurnedPiece piece, double before)
    {
        Vec2 last = _field.Last(piece);
        int columns = (int)Math.Floor((Math.Min(last.X, before - piece.Width) - _field.Gap) / _cell), rows = (int)Math.Floor((last.Y - _field.Gap) / _cell);
        ReadOnlySpan<CellSpan> spans = ImmutableCollectionsMarshal.AsArray(piece.Cells);
        for (int column = 0; column <= columns; column++)
        {
            int row = 0, clear = 0, next = 0;
            while (row <= rows && clear < spans.Length)
            {
                CellSpan span = spans[next];
                int bottom = row + span.From + _before, at = _taken[(column + span.Column + _before) * _rows + row + span.To + _before - 1];
                Work++;
                if (at >= bottom)
                {
                    row += at + 1 - bottom;
                    clear = 0;
                }
                else
                {
                    clear++;
                }
                next = next + 1 == spans.Length ? 0 : next + 1;
            }
            if (clear == spans.Length && row <= rows) return new Vec2(_field.Gap + column * _cell, _field.Gap + row * _cell);
        }
        return null;
    }

    /// <summary>Takes the cells of a piece at a place that was found.</summary>
    public void Take(TurnedPiece piece, Vec2 at)
    {
        int column = (int)Math.Round((at.X - _field.Gap) / _cell) + _before, row = (int)Math.Round((at.Y - _field.Gap) / _cell) + _before;
        foreach (CellSpan span in piece.Cells)
        {
            Span<short> taken = _taken.AsSpan((column + span.Column) * _rows, _rows);
            for (int k = row + span.From; k < row + span.To; k++) taken[k] = (short)k;
            for (int k = row + span.To; k < _rows && taken[k] < row + span.To - 1; k++) taken[k] = (short)(row + span.To - 1);
        }
    }
}

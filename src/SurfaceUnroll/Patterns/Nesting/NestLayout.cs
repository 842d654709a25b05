using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Nesting;

/// <summary>A piece to be laid out.</summary>
/// <param name="Outline">Closed cut line, mm, the first point not repeated. Its holes do not count as room.</param>
/// <param name="Grain">Direction in the frame of the outline that must run along the grain of the sheet, either way; null if that does not matter.</param>
public sealed record NestPiece(ImmutableArray<Vec2> Outline, Vec2? Grain = null);

/// <summary>Pieces laid out on sheets, the outside face up, never mirrored.</summary>
/// <param name="Sheets">In the order in which they are filled.</param>
/// <param name="TooLarge">Numbers of the pieces that fit on no sheet of the stock, from 0.</param>
public sealed record NestLayout(ImmutableArray<NestedSheet> Sheets, ImmutableArray<int> TooLarge)
{
    /// <summary>Area of the pieces over that of the sheets, as a fraction; 0 without sheets.</summary>
    public double Use => Sheets.IsEmpty ? 0 : Sheets.Sum(s => s.Use * s.Area) / Sheets.Sum(s => s.Area);

    /// <summary>Sheets of each size that is taken, in the order in which they are first taken.</summary>
    public IEnumerable<(StockSheet Stock, int Count)> Taken => Sheets.GroupBy(s => s.Stock).Select(g => (g.Key, g.Count()));
}

/// <summary>One sheet with its pieces. The origin is its lower left corner, x runs along its longer side.</summary>
/// <param name="Stock">Its size.</param>
/// <param name="Placements">Of its pieces.</param>
/// <param name="Use">Area inside the cut lines, holes counted as metal, over that of the sheet, as a fraction.</param>
/// <param name="LengthUsed">From the left end of the sheet to the far end of the farthest piece, mm.</param>
public sealed record NestedSheet(StockSheet Stock, ImmutableArray<NestPlacement> Placements, double Use, double LengthUsed)
{
    /// <summary>mm².</summary>
    public double Area => Stock.Length * Stock.Width;
}

/// <summary>Where a piece lies: turned about the origin of its flat frame, then moved.</summary>
/// <param name="Panel">Number of the piece, from 0.</param>
/// <param name="Turn">Radians, counter-clockwise.</param>
/// <param name="Move">mm.</param>
public sealed record NestPlacement(int Panel, double Turn, Vec2 Move)
{
    /// <summary>From the flat frame of the piece to that of the sheet.</summary>
    public Vec2 Place(Vec2 p) => p.Rotate(Turn) + Move;
}

/// <summary>Pieces laid out on one run of a given width. x runs along it.</summary>
/// <param name="Width">mm.</param>
/// <param name="Length">That it takes, with the gap at both ends, mm; 0 without pieces.</param>
/// <param name="Placements">Of the pieces.</param>
/// <param name="Use">Area of the pieces over that of the run, as a fraction.</param>
/// <param name="TooLarge">Numbers of the pieces that are too wide however they are turned.</param>
public sealed record NestedStrip(double Width, double Length, ImmutableArray<NestPlacement> Placements, double Use, ImmutableArray<int> TooLarge);

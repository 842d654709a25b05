using System.Collections.Immutable;

namespace SurfaceUnroll.Geometry;

/// <summary>Numbers places of the plane, those that all but coincide by one number.</summary>
/// <param name="near">How near they are, mm.</param>
internal sealed class PlacePool(double near)
{
    private readonly Dictionary<(long X, long Y), List<int>> _cells = [];
    private readonly List<Vec2> _places = [];

    /// <summary>The places by number.</summary>
    public ImmutableArray<Vec2> Places => [.. _places];

    /// <summary>Number of a place: of one that is there, or the next.</summary>
    public int Of(Vec2 place)
    {
        (long x, long y) = ((long)Math.Floor(place.X / near), (long)Math.Floor(place.Y / near));
        for (long i = x - 1; i <= x + 1; i++)
        {
            for (long j = y - 1; j <= y + 1; j++)
            {
                if (!_cells.TryGetValue((i, j), out List<int>? cell)) continue;
                foreach (int k in cell)
                    if ((_places[k] - place).Length <= near) return k;
            }
        }
        _places.Add(place);
        if (!_cells.TryGetValue((x, y), out List<int>? own)) _cells[(x, y)] = own = [];
        own.Add(_places.Count - 1);
        return _places.Count - 1;
    }
}

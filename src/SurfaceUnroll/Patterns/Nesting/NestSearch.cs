using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns.Nesting;

/// <summary>Looks for the order, and for single pieces the angle, in which bottom-left placement lays out best.</summary>
/// <param name="pieces">At least one; each fits on a sheet of the stock.</param>
/// <param name="stock">At least one size.</param>
/// <param name="gap">mm.</param>
/// <param name="cell">Of the raster, mm.</param>
/// <param name="outlines">Cut lines by the numbers of the pieces.</param>
internal sealed class NestSearch(ImmutableArray<TurnablePiece> pieces, ImmutableArray<StockSheet> stock, double gap, double cell, ImmutableArray<ImmutableArray<Vec2>> outlines)
{
    // Orders tried for each piece, in all, and cells looked at: a layout of a few pieces takes some tenths of a second.
    private const int StepsPerPiece = 40, MostSteps = 800;
    private const long MostWork = 60_000_000;

    // Sizes of sheet that are tried as the first, the largest first.
    private const int MostFirst = 4;

    private long _work;

    /// <summary>The best layout found.</summary>
    public Packing Best()
    {
        // Shelves keep the gap by their boxes. Whatever else is found must be sound by the cut lines too.
        Packing shelves = Least(from sizes in Sizes() from way in Shelves.Ways select Shelves.Lay(pieces, sizes, gap, way));
        Packing[] found = [Searched(), shelves];
        return found.SelectMany(p => new[] { Tidied(p), p }).Where(p => !shelves.Beats(p)).OrderBy(p => p.Cost).First(p => ReferenceEquals(p, shelves) || p.Sheets.All(s => NestCheck.IsSound(s, outlines)));
    }

    private Packing Searched()
    {
        (Packing best, ImmutableArray<StockSheet> sizes, ImmutableArray<Turn> order) =
            (from s in Sizes() from o in Orders() select (Packing: Laid(o, s), Sizes: s, Order: o)).ToArray().Aggregate((a, b) => b.Packing.Beats(a.Packing) ? b : a);
        var chance = new Chance();
        Packing current = best, shown = Pushed(best);
        // A lone piece is laid at each of its angles already.
        int steps = pieces.Length == 1 ? 0 : Math.Min(MostSteps, StepsPerPiece * pieces.Length);
        for (int step = 0; step < steps && _work < MostWork; step++)
        {
            ImmutableArray<Turn> next = Changed(order, chance);
            Packing packing = Laid(next, sizes);
            if (current.Beats(packing)) continue;
            (current, order) = (packing, next);
            if (!packing.Beats(best)) continue;
            best = packing;
            if (Pushed(packing) is var pushed && pushed.Beats(shown)) shown = pushed;
        }
        return shown;
    }

    private Packing Laid(ImmutableArray<Turn> order, ImmutableArray<StockSheet> sizes) =>
        new FirstFit(sizes, gap, field => new RasterSheet(field, cell, 0.5 * gap + GrownOutline.Excess(gap), cells => _work += cells)).Lay(order.Select(t => (t.Piece, t.Only)));

    // Each size once as the first to be taken, then the others, the largest first.
    private IEnumerable<ImmutableArray<StockSheet>> Sizes()
    {
        StockSheet[] sorted = [.. stock.OrderByDescending(s => s.Length * s.Width)];
        return sorted.Take(MostFirst).Select(first => (ImmutableArray<StockSheet>)[first, .. sorted.Where(s => !ReferenceEquals(s, first))]);
    }

    private IEnumerable<ImmutableArray<Turn>> Orders()
    {
        Func<TurnablePiece, double>[] keys = [p => p.Area, p => p.Reach, p => Math.Min(p.Along[0].Width, p.Along[0].Height), p => p.Along[0].Width + p.Along[0].Height, p => p.Along[0].Width * p.Along[0].Height - p.Area];
        return keys.Select(key => (ImmutableArray<Turn>)[.. pieces.OrderByDescending(key).ThenByDescending(p => p.Area).Select(p => new Turn(p, null))]);
    }

    // Two pieces change places, one goes to another place, or one is held at one of its angles or let go.
    private static ImmutableArray<Turn> Changed(ImmutableArray<Turn> order, Chance chance)
    {
        int i = chance.Below(order.Length), k = chance.Below(order.Length);
        switch (chance.Below(3))
        {
            case 0: return order.SetItem(i, order[k]).SetItem(k, order[i]);
            case 1: return order.RemoveAt(i).Insert(k, order[i]);
            default:
                TurnablePiece piece = order[i].Piece;
                int turn = chance.Below(piece.Along.Length + 1);
                return order.SetItem(i, new Turn(piece, turn < piece.Along.Length ? piece.Along[turn] : null));
        }
    }

    private Packing Pushed(Packing packing) =>
        new([.. packing.Sheets.Select(s => PieceSlide.Push(s, 2 * GrownOutline.Excess(gap) + 1e-6))]);

    // Pushed together, and each sheet changed for the smallest that takes what lies on it.
    private Packing Tidied(Packing packing)
    {
        ImmutableArray<PackedSheet> sheets = packing.Sheets;
        for (int i = 0; i < sheets.Length; i++)
        {
            StockSheet[] smaller = [.. stock.Where(s => s.Length * s.Width < sheets[i].Stock.Length * sheets[i].Stock.Width && !(s.Count <= sheets.Count(t => ReferenceEquals(t.Stock, s)))).OrderBy(s => s.Length * s.Width)];
            if (smaller.Select(s => Alone(sheets[i], s)).FirstOrDefault(s => s is not null) is { } alone) sheets = sheets.SetItem(i, alone);
        }
        return Pushed(new Packing(sheets));
    }

    // The pieces of a sheet on one of another size; null if they do not fit there.
    private PackedSheet? Alone(PackedSheet sheet, StockSheet size)
    {
        ImmutableArray<TurnablePiece> on = [.. sheet.Pieces.Select(p => p.Piece)];
        NestField field = FirstFit.FieldOf(size, gap);
        if (!on.All(p => p.On(field).Any()) || on.Sum(p => p.Area) > size.Length * size.Width) return null;
        ImmutableArray<StockSheet> only = [size with { Count = null }];
        ImmutableArray<Turn>[] orders = [[.. on.Select(p => new Turn(p, null))], [.. on.OrderByDescending(p => p.Area).Select(p => new Turn(p, null))]];
        Packing best = Least([.. orders.Select(o => Laid(o, only)), .. Shelves.Ways.Select(way => Shelves.Lay(on, only, gap, way))]);
        return best.Sheets is [var single] ? single with { Stock = size, IsMissing = false } : null;
    }

    private static Packing Least(IEnumerable<Packing> packings) => packings.Aggregate((a, b) => b.Beats(a) ? b : a);

    /// <summary>A piece in an order, held at one angle or free.</summary>
    private readonly record struct Turn(TurnablePiece Piece, TurnedPiece? Only);

    /// <summary>Numbers that look random and are the same each time (linear congruence with the constants of Knuth's MMIX).</summary>
    private sealed class Chance
    {
        private ulong _state = 1;

        public int Below(int end)
        {
            _state = _state * 6364136223846793005 + 1442695040888963407;
            return (int)((_state >> 33) % (ulong)end);
        }
    }
}

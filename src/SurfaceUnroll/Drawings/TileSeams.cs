using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Drawings;

/// <summary>Says along the right and the lower side of a tile that its neighbour is glued over it: slanting ticks at the frame, and words.</summary>
internal static class TileSeams
{
    private const double Pitch = 12, Tick = 2.5, TextHeight = 1.9;

    // Where the words may stand along a side.
    private static readonly ImmutableArray<double> Shares = [0.5, 0.45, 0.55, 0.4, 0.6, 0.12, 0.88];

    /// <summary>The ticks and words of one tile, on its page.</summary>
    /// <param name="plan">Tiles.</param>
    /// <param name="tile">The tile.</param>
    /// <param name="shift">From the drawing to the page.</param>
    /// <param name="taken">True where something stands that words may not lie on, on the page.</param>
    public static IEnumerable<PagePart> Of(TilePlan plan, Tile tile, Vec2 shift, Func<Box, bool> taken)
    {
        Box w = tile.Window;
        int at = tile.Row * plan.Columns + tile.Column;
        Tile? right = tile.Column + 1 < plan.Columns ? plan.Tiles[at + 1] : null, below = tile.Row + 1 < plan.Rows ? plan.Tiles[at + plan.Columns] : null;
        return
        [
            .. right is { IsEmpty: false } ? Side(new Vec2(w.Max.X, w.Min.Y) + shift, new Vec2(0, w.Height), right.Label, plan.Paper.Overlap, taken) : [],
            .. below is { IsEmpty: false } ? Side(new Vec2(w.Max.X, w.Min.Y) + shift, new Vec2(-w.Width, 0), below.Label, plan.Paper.Overlap, taken) : [],
        ];
    }

    // Along the frame, the tile on one hand: to the left of an upright side, to the right of a level one that runs leftward.
    private static IEnumerable<PagePart> Side(Vec2 from, Vec2 along, string label, double overlap, Func<Box, bool> taken)
    {
        bool upright = along.X == 0;
        Vec2 way = along.Unit, inward = upright ? way.Left : -way.Left;
        double tick = Math.Min(Tick, 0.5 * overlap);
        for (double s = Pitch; s < along.Length - tick; s += Pitch)
            yield return new PageLine(Pen.Fine, [from + s * way, from + (s - tick) * way + tick * inward]);
        if (overlap < tick + TextHeight + 1) yield break;
        // Read from the right, or from below.
        string words = $"{label} is glued over this side";
        double half = 0.5 * PageTextWidth.Of(words, TextHeight) + 1;
        foreach (double share in Shares.Where(s => s * along.Length > half && (1 - s) * along.Length > half))
        {
            var text = upright
                ? new PageText(words, from + share * along + (tick + 0.5) * inward, TextHeight, 0.5 * Math.PI, Anchor.Middle, Halo: true)
                : new PageText(words, from + share * along + (tick + 0.5 + 0.3 * TextHeight) * inward, TextHeight, 0, Anchor.Middle, Halo: true);
            if (taken(TextOutline.Of(text).Bounds)) continue;
            yield return text;
            yield break;
        }
    }
}

using System.Globalization;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Drawings;

/// <summary>A grid that runs on over all tiles: small crosses, and at the frame ticks with their distance from the lower left corner of the whole, so that many sheets can be laid along a straight-edge and errors do not add up.</summary>
internal static class TileRuler
{
    /// <summary>From one line of the grid to the next, mm.</summary>
    public const double Pitch = 50;

    private const double Arm = 1.5, Tick = 3, TextHeight = 1.9;

    /// <summary>The grid of one tile, on its page.</summary>
    /// <param name="plan">Tiles.</param>
    /// <param name="tile">The tile.</param>
    /// <param name="shift">From the drawing to the page.</param>
    /// <param name="taken">True where something stands that numbers may not lie on, on the page.</param>
    public static IEnumerable<PagePart> Of(TilePlan plan, Tile tile, Vec2 shift, Func<Box, bool> taken)
    {
        Vec2 origin = plan.Tiles[^plan.Columns].Window.Min;
        Box w = tile.Window;
        double[] xs = [.. Stops(w.Min.X - origin.X, w.Max.X - origin.X)], ys = [.. Stops(w.Min.Y - origin.Y, w.Max.Y - origin.Y)];
        foreach (double x in xs)
        {
            Vec2 foot = new Vec2(origin.X + x, w.Min.Y) + shift;
            yield return new PageLine(Pen.Fine, [foot, foot + new Vec2(0, Tick)]);
            yield return new PageLine(Pen.Fine, [foot + new Vec2(0, w.Height - Tick), foot + new Vec2(0, w.Height)]);
            if (Number(x, foot + new Vec2(0.6, 0.8)) is { } text) yield return text;
        }
        foreach (double y in ys)
        {
            Vec2 left = new Vec2(w.Min.X, origin.Y + y) + shift;
            yield return new PageLine(Pen.Fine, [left, left + new Vec2(Tick, 0)]);
            yield return new PageLine(Pen.Fine, [left + new Vec2(w.Width - Tick, 0), left + new Vec2(w.Width, 0)]);
            if (Number(y, left + new Vec2(0.6, 0.6)) is { } text) yield return text;
        }
        foreach (double x in xs)
            foreach (double y in ys)
            {
                Vec2 at = origin + new Vec2(x, y) + shift;
                yield return new PageLine(Pen.Fine, [at - new Vec2(Arm, 0), at + new Vec2(Arm, 0)]);
                yield return new PageLine(Pen.Fine, [at - new Vec2(0, Arm), at + new Vec2(0, Arm)]);
            }

        PageText? Number(double mm, Vec2 at)
        {
            var text = new PageText(mm.ToString("0", CultureInfo.InvariantCulture), at, TextHeight, Halo: true);
            Box box = TextOutline.Of(text).Bounds;
            return taken(box) || box.Max.X > w.Max.X + shift.X || box.Max.Y > w.Max.Y + shift.Y ? null : text;
        }
    }

    // Clear of the frame, so that what stands there is a tick and not a corner.
    private static IEnumerable<double> Stops(double from, double to)
    {
        for (double at = Pitch * Math.Ceiling((from + 2 * Arm) / Pitch); at <= to - 2 * Arm; at += Pitch) yield return at;
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Patterns.Nesting;

/// <summary>Pushes the pieces of a sheet to the left and down, from the raster's places to where they touch.</summary>
internal static class PieceSlide
{
    private const int Rounds = 6, Pushes = 4;

    // Shorter slides are not worth a round, mm.
    private const double Least = 1e-3;

    // Edges that pass each other over less height than this do not meet, mm.
    private const double Graze = 1e-7;

    /// <summary>The sheet with its pieces pushed together.</summary>
    /// <param name="sheet">Pieces that do not overlap.</param>
    /// <param name="slack">By how much their grown outlines may, mm: where the gap is kept exactly, and the outlines are grown a little more.</param>
    public static PackedSheet Push(PackedSheet sheet, double slack)
    {
        Vec2[] at = [.. sheet.Pieces.Select(p => p.At)];
        for (int round = 0; round < Rounds; round++)
        {
            double moved = 0;
            foreach (int i in Enumerable.Range(0, at.Length).OrderBy(i => at[i].X + at[i].Y).ToArray())
            {
                for (int push = 0; push < Pushes; push++)
                {
                    double left = Slide(sheet, at, i, slack, down: false);
                    at[i] -= new Vec2(left, 0);
                    double down = Slide(sheet, at, i, slack, down: true);
                    at[i] -= new Vec2(0, down);
                    moved = Math.Max(moved, left + down);
                    if (left + down < Least) break;
                }
            }
            if (moved < Least) break;
        }
        return sheet with { Pieces = [.. sheet.Pieces.Select((p, i) => p with { At = at[i] })] };
    }

    // How far a piece goes, mm.
    private static double Slide(PackedSheet sheet, Vec2[] at, int moving, double slack, bool down)
    {
        LaidPiece piece = sheet.Pieces[moving];
        double free = Math.Max(0, (down ? at[moving].Y : at[moving].X) - sheet.Field.Gap);
        for (int i = 0; i < at.Length && free > 0; i++)
            if (i != moving && MayMeet(piece.Turned, at[moving], sheet.Pieces[i].Turned, at[i], slack + sheet.Field.Gap, down))
                free = Math.Min(free, Distance(piece.Turned.Grown, at[moving], sheet.Pieces[i].Turned.Grown, at[i], slack, down, free));
        return free;
    }

    private static bool MayMeet(TurnedPiece moving, Vec2 at, TurnedPiece other, Vec2 there, double apart, bool down) => down
        ? there.X < at.X + moving.Width + apart && at.X < there.X + other.Width + apart && there.Y < at.Y + moving.Height + apart
        : there.Y < at.Y + moving.Height + apart && at.Y < there.Y + other.Height + apart && there.X < at.X + moving.Width + apart;

    // How far the front edges of one outline are from the rear edges of the other, along the way. Both run counter-clockwise.
    private static double Distance(ImmutableArray<Vec2> moving, Vec2 at, ImmutableArray<Vec2> other, Vec2 there, double slack, bool down, double most)
    {
        double least = most;
        (Vec2 From, Vec2 To)[] rear = [.. Edges(other, there, down, front: false)];
        foreach ((Vec2 from, Vec2 to) in Edges(moving, at, down, front: true))
        {
            foreach ((Vec2 low, Vec2 high) in rear)
            {
                double bottom = Math.Max(from.Y, low.Y), top = Math.Min(to.Y, high.Y);
                if (top - bottom < Graze) continue;
                double near = X(from, to, bottom) - X(low, high, bottom), far = X(from, to, top) - X(low, high, top);
                double distance = Math.Min(near, far);
                // One that is farther back is passed already.
                if (distance >= -slack) least = Math.Min(least, Math.Max(0, distance));
            }
        }
        return least;
    }

    // Edges that face the way that the piece slides, or the other way, as if it slid to the left; each from the lower end to the upper.
    private static IEnumerable<(Vec2 From, Vec2 To)> Edges(ImmutableArray<Vec2> outline, Vec2 at, bool down, bool front)
    {
        for (int i = 0; i < outline.Length; i++)
        {
            (Vec2 a, Vec2 b) = (outline[i] + at, outline[i + 1 < outline.Length ? i + 1 : 0] + at);
            // Across the diagonal down becomes left, and the outline runs the other way round.
            if (down) (a, b) = (new Vec2(b.Y, b.X), new Vec2(a.Y, a.X));
            if (front && a.Y > b.Y) yield return (b, a);
            else if (!front && a.Y < b.Y) yield return (a, b);
        }
    }

    private static double X(Vec2 from, Vec2 to, double y) => from.X + (to.X - from.X) * (y - from.Y) / (to.Y - from.Y);
}

using System.Collections.Immutable;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Drawings.ShopSheet;

/// <summary>Finds places for words in a picture, clear of each other and inside a box; the first to ask has the best.</summary>
/// <param name="room">The box, mm.</param>
internal sealed class SheetLabels(Box room)
{
    // Farther and farther off, and round the place from the side that is wanted.
    private static readonly ImmutableArray<double> Rings = [1, 1.8, 2.8, 4];
    private static readonly ImmutableArray<double> BeyondRings = [1, 3.6];
    private static readonly ImmutableArray<double> Turns = [0, 45, -45, 90, -90, 135, -135, 180];

    private readonly List<TextOutline> taken = [];
    private readonly List<PageText> texts = [];

    /// <summary>What was placed.</summary>
    public IEnumerable<PageText> Texts => texts;

    /// <summary>Keeps a place free of words.</summary>
    public void Reserve(Vec2 at, double half) =>
        taken.Add(new TextOutline([at + new Vec2(-half, -half), at + new Vec2(half, -half), at + new Vec2(half, half), at + new Vec2(-half, half)]));

    /// <summary>Keeps a line free of words.</summary>
    public void Reserve(Vec2 from, Vec2 to, double half)
    {
        Vec2 side = half * (to - from).Unit.Left;
        taken.Add(new TextOutline([from - side, to - side, to + side, from + side]));
    }

    /// <summary>Writes a word beside a place.</summary>
    /// <param name="text">One line.</param>
    /// <param name="at">The place.</param>
    /// <param name="away">The side that is wanted.</param>
    /// <param name="height">Cap height, mm.</param>
    /// <param name="off">White between the place and the word, mm.</param>
    /// <returns>False if there was no room.</returns>
    public bool Beside(string text, Vec2 at, Vec2 away, double height, double off)
    {
        double half = 0.5 * PageTextWidth.Of(text, height);
        Vec2 side = away == Vec2.Zero ? new Vec2(0, 1) : away.Unit;
        return Take(
            from ring in Rings
            from turn in Turns
            let way = side.Rotate(turn * Math.PI / 180)
            let centre = at + new Vec2(way.X * (ring * off + half), way.Y * (ring * off + 0.5 * height))
            select new PageText(text, centre - new Vec2(0, 0.5 * height), height, Anchor: Anchor.Middle, Halo: true));
    }

    /// <summary>Writes a word beyond a place, near or a little farther off and nowhere else: among many of a kind it would be taken for another's.</summary>
    public bool Beyond(string text, Vec2 at, Vec2 away, double height, double off)
    {
        double half = 0.5 * PageTextWidth.Of(text, height);
        Vec2 way = away.Unit;
        return Take(
            from ring in BeyondRings
            let centre = at + new Vec2(way.X * (ring * off + half), way.Y * (ring * off + 0.5 * height))
            select new PageText(text, centre - new Vec2(0, 0.5 * height), height, Anchor: Anchor.Middle, Halo: true));
    }

    /// <summary>Takes the first that has room.</summary>
    public bool Take(IEnumerable<PageText> choices)
    {
        foreach (PageText text in choices)
        {
            var place = TextOutline.Of(text);
            if (taken.Exists(place.Overlaps) || !place.Corners.All(room.Contains)) continue;
            taken.Add(place);
            texts.Add(text);
            return true;
        }
        return false;
    }

    /// <summary>A black dot.</summary>
    public static PageFill Dot(Vec2 at, double radius) => new(Circle(at, radius), 0);

    /// <summary>The rim of a circle.</summary>
    public static ImmutableArray<Vec2> Circle(Vec2 at, double radius) => [.. Enumerable.Range(0, 16).Select(i => at + radius * Vec2.FromAngle(i * Math.PI / 8))];
}

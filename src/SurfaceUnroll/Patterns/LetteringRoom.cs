using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Patterns;

/// <summary>Keeps the words on a piece apart: a text is taken only if all of it lies inside the cut line and clear of every text taken before.</summary>
/// <param name="outline">Cut line.</param>
internal sealed class LetteringRoom(CutOutline outline)
{
    // Kept between a text and the middle of the cut line: half the widest line and the white behind the letters, which is a fifth of their height wider
    // than they are.
    private const double HalfLine = 0.4, WhiteRim = 0.2;

    private readonly List<TextOutline> taken = [];
    private readonly ImmutableArray<Lettering>.Builder letterings = ImmutableArray.CreateBuilder<Lettering>();

    /// <summary>White kept between texts, mm; with none the white behind one may touch the letters of the next.</summary>
    public double Gap { get; init; }

    /// <summary>The texts taken, in order.</summary>
    public ImmutableArray<Lettering> Taken => letterings.ToImmutable();

    /// <summary>Keeps a place free of texts.</summary>
    public void Reserve(TextOutline place) => taken.Add(place);

    /// <summary>Keeps the texts to come off a line by the white behind them.</summary>
    /// <param name="line">The line.</param>
    /// <param name="height">Cap height of the texts, mm.</param>
    public void Reserve(IReadOnlyList<Vec2> line, double height)
    {
        double half = HalfLine + WhiteRim * height;
        for (int i = 0; i + 1 < line.Count; i++)
        {
            Vec2 side = half * (line[i + 1] - line[i]).Unit.Left;
            Reserve(new TextOutline([line[i] - side, line[i + 1] - side, line[i + 1] + side, line[i] + side]));
        }
    }

    /// <summary>True if something that was taken or reserved lies under a place.</summary>
    public bool Covers(TextOutline place) => taken.Exists(place.Overlaps);

    /// <summary>Takes the first of some texts that lies outside the cut line, in a box, and clear of every text taken before.</summary>
    public bool TakeOutside(IEnumerable<Lettering> choices, Box within)
    {
        foreach (Lettering text in choices)
        {
            var place = TextOutline.Of(text);
            if (Covers(place) || !place.Corners.All(within.Contains) || !outline.Leaves(place, HalfLine + WhiteRim * text.Height)) continue;
            Keep(place);
            letterings.Add(text);
            return true;
        }
        return false;
    }

    /// <summary>Takes all of a group of texts, or none.</summary>
    public bool TakeAll(IReadOnlyCollection<Lettering> group) => TakeAll(group, outline);

    /// <summary>Takes all of a group of texts that lie within a hole and clear of every text taken before, or none.</summary>
    public bool TakeAll(IReadOnlyCollection<Lettering> group, CutOutline within)
    {
        TextOutline[] boxes = [.. group.Select(TextOutline.Of)];
        double clearance = HalfLine + WhiteRim * group.Max(text => text.Height);
        if (boxes.Any(b => taken.Any(b.Overlaps) || !within.Holds(b, clearance))) return false;
        foreach (TextOutline box in boxes) Keep(box);
        letterings.AddRange(group);
        return true;
    }

    private void Keep(TextOutline place)
    {
        ImmutableArray<Vec2> corners = place.Corners;
        Vec2 right = Gap * (corners[1] - corners[0]).Unit, up = Gap * (corners[3] - corners[0]).Unit;
        taken.Add(new TextOutline([corners[0] - right - up, corners[1] + right - up, corners[2] + right + up, corners[3] - right + up]));
    }

    /// <summary>Takes the first of some texts for which there is room, if any.</summary>
    public bool TakeFirst(IEnumerable<Lettering> choices) => choices.Any(c => TakeAll([c]));
}

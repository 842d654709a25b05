using System.Collections.Immutable;
using SurfaceUnroll.Drawings;

namespace SurfaceUnroll.Patterns;

/// <summary>Keeps the words on a piece apart: a text is taken only if all of it lies inside the cut line and clear of every text taken before.</summary>
/// <param name="outline">Cut line.</param>
internal sealed class LetteringRoom(CutOutline outline)
{
    // White kept between a text and the middle of the cut line, mm: half the widest line and a little more.
    private const double Clearance = 0.7;

    private readonly List<TextOutline> taken = [];
    private readonly ImmutableArray<Lettering>.Builder letterings = ImmutableArray.CreateBuilder<Lettering>();

    /// <summary>The texts taken, in order.</summary>
    public ImmutableArray<Lettering> Taken => letterings.ToImmutable();

    /// <summary>Takes all of a group of texts, or none.</summary>
    public bool TakeAll(IReadOnlyCollection<Lettering> group)
    {
        TextOutline[] boxes = [.. group.Select(TextOutline.Of)];
        if (boxes.Any(b => taken.Any(b.Overlaps) || !outline.Holds(b, Clearance))) return false;
        taken.AddRange(boxes);
        letterings.AddRange(group);
        return true;
    }

    /// <summary>Takes the first of some texts for which there is room, if any.</summary>
    public void TakeFirst(IEnumerable<Lettering> choices) => _ = choices.Any(c => TakeAll([c]));
}

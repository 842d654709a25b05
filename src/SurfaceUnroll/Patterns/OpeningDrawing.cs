using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns;

/// <summary>Holes and openings on the drawing: a cross at the centre, name and size.</summary>
internal static class OpeningDrawing
{
    // Half length of a cross, as a share of the room about the centre, and the longest and shortest, mm.
    private const double ArmShare = 0.6, LongestArm = 6, ShortestArm = 0.4;

    /// <summary>The cross of an opening; none where its centre lies outside it or hardly inside.</summary>
    public static IEnumerable<Stroke> Cross(BlankOpening opening)
    {
        double arm = Arm(opening);
        if (arm < ShortestArm) yield break;
        yield return new Stroke(Role.Mark, [opening.Centre - new Vec2(arm, 0), opening.Centre + new Vec2(arm, 0)]);
        yield return new Stroke(Role.Mark, [opening.Centre - new Vec2(0, arm), opening.Centre + new Vec2(0, arm)]);
    }

    /// <summary>Writes name and size of a piece's openings, once for those of a pattern: in the opening below its cross, or beside it.</summary>
    public static void Write(PanelDevelopment panel, double height, LetteringRoom room)
    {
        foreach (OpeningGroup group in OpeningGroup.Of(panel.Openings))
        {
            BlankOpening first = group.First;
            string[] texts = group.Count > 1 ? [$"{group.Name}: {group.Size}", group.Size] : [$"{group.Name} {group.Size}", group.Size];
            double below = Math.Max(0, Arm(first)) + 1.6 * height;
            if (room.TakeWithin(texts.Select(t => new Lettering(Role.Note, t, first.Centre - new Vec2(0, below), height, 0, Anchor.Middle)), new CutOutline(first.Cut))) continue;
            room.TakeFirst(texts.SelectMany(text => Beside(first, text, height)));
        }
    }

    private static double Arm(BlankOpening opening) => Math.Min(LongestArm, ArmShare * new CutOutline(opening.Cut).Depth(opening.Centre));

    private static IEnumerable<Lettering> Beside(BlankOpening opening, string text, double height)
    {
        Box box = Box.Around(opening.Cut);
        foreach (double off in new[] { 1.1, 2.4, 4, 6 })
        {
            double gap = off * height, middle = box.Centre.Y - 0.5 * height;
            yield return new Lettering(Role.Note, text, new Vec2(box.Max.X + gap, middle), height);
            yield return new Lettering(Role.Note, text, new Vec2(box.Min.X - gap, middle), height, 0, Anchor.Right);
            foreach (Anchor anchor in new[] { Anchor.Middle, Anchor.Left, Anchor.Right })
            {
                yield return new Lettering(Role.Note, text, new Vec2(box.Centre.X, box.Max.Y + gap), height, 0, anchor);
                yield return new Lettering(Role.Note, text, new Vec2(box.Centre.X, box.Min.Y - gap - height), height, 0, anchor);
            }
        }
    }
}

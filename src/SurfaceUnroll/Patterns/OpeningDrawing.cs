using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns;

/// <summary>Holes and openings on the drawing: a cross at the centre, name and size.</summary>
internal static class OpeningDrawing
{
    // Half length of a cross, as a share of the room about the centre, and the longest and shortest, mm.
    private const double ArmShare = 0.6, LongestArm = 6, ShortestArm = 0.4;

    // From one baseline to the next, in cap heights.
    private const double Leading = 1.7;

    /// <summary>The cross of an opening; none where its centre lies outside it or hardly inside.</summary>
    public static IEnumerable<Stroke> Cross(BlankOpening opening)
    {
        double arm = Arm(opening);
        if (arm < ShortestArm) yield break;
        yield return new Stroke(Role.Mark, [opening.Centre - new Vec2(arm, 0), opening.Centre + new Vec2(arm, 0)]);
        yield return new Stroke(Role.Mark, [opening.Centre - new Vec2(0, arm), opening.Centre + new Vec2(0, arm)]);
    }

    /// <summary>Writes name and size of a piece's openings, once for those of a pattern: in the opening below its cross, or beside it. Below them stands what an
    /// opening measures on the blank where it is out of shape there, and what it meets.</summary>
    public static void Write(PanelDevelopment panel, Job job, ImmutableArray<JointFit> joints, double height, LetteringRoom room)
    {
        foreach (OpeningGroup group in OpeningGroup.Of(panel, job))
        {
            BlankOpening first = group.First;
            double below = Math.Max(0, Arm(first)) + 1.6 * height;
            var hole = new CutOutline(first.Cut);
            _ = Texts(group, [.. EdgeWords.Joints(first.Name, panel, joints, job.Units)]).Any(lines =>
                room.TakeAll(Lines(lines, first.Centre - new Vec2(0, below), height, Anchor.Middle), hole) || Beside(first, lines, height).Any(room.TakeAll));
        }
    }

    // From all there is to say to the size alone. That a hole is no longer round is given up after what it meets, which the first page says too.
    private static IEnumerable<ImmutableArray<string>> Texts(OpeningGroup group, ImmutableArray<string>[] joints)
    {
        string named = group.Count > 1 ? $"{group.Name}: {group.Size}" : $"{group.Name} {group.Size}";
        ImmutableArray<string> blank = group.OnBlank is { } words ? [words] : [];
        for (int i = 0; i < joints.Select(j => j.Length).Append(0).Max(); i++)
            yield return [named, .. blank, .. joints.Select(j => j[Math.Min(i, j.Length - 1)].TrimStart(' ', ','))];
        yield return [named, .. blank];
        if (!blank.IsEmpty) yield return [group.Size, .. blank];
        yield return [named];
        yield return [group.Size];
    }

    private static ImmutableArray<Lettering> Lines(ImmutableArray<string> lines, Vec2 first, double height, Anchor anchor) =>
        [.. lines.Select((line, i) => new Lettering(Role.Note, line, first - new Vec2(0, Leading * i * height), height, 0, anchor))];

    private static double Arm(BlankOpening opening) => Math.Min(LongestArm, ArmShare * new CutOutline(opening.Cut).Depth(opening.Centre));

    private static IEnumerable<IReadOnlyCollection<Lettering>> Beside(BlankOpening opening, ImmutableArray<string> lines, double height)
    {
        Box box = Box.Around(opening.Cut);
        double more = Leading * (lines.Length - 1) * height;
        foreach (double off in new[] { 1.1, 2.4, 4, 6 })
        {
            double gap = off * height, middle = box.Centre.Y - 0.5 * height + 0.5 * more;
            yield return Lines(lines, new Vec2(box.Max.X + gap, middle), height, Anchor.Left);
            yield return Lines(lines, new Vec2(box.Min.X - gap, middle), height, Anchor.Right);
            foreach (Anchor anchor in new[] { Anchor.Middle, Anchor.Left, Anchor.Right })
            {
                yield return Lines(lines, new Vec2(box.Centre.X, box.Max.Y + gap + more), height, anchor);
                yield return Lines(lines, new Vec2(box.Centre.X, box.Min.Y - gap - height), height, anchor);
            }
        }
    }
}

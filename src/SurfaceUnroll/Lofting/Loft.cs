using System.Collections.Immutable;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Lofting;

/// <summary>Joins two curves by a ruled sheet.</summary>
public static class Loft
{
    /// <summary>The ruled sheet from one curve to another.</summary>
    /// <param name="front">Front curve, left to right.</param>
    /// <param name="rear">Rear curve, in the same direction.</param>
    /// <param name="elements">How element lines are matched.</param>
    /// <returns>Strips from left to right. Where both curves are their own image in one plane, so is the sheet.</returns>
    public static RuledSheet Between(SpaceCurve front, SpaceCurve rear, ElementMatching elements) =>
        Between(front, rear, elements, TorsalMatching.DefaultLattice);

    /// <summary>The ruled sheet along lines that are known: of a mirrored sheet those of its left half.</summary>
    internal static RuledSheet Along(SpaceCurve front, SpaceCurve rear, ImmutableArray<Match> known)
    {
        Directrix a = new(front), b = new(rear);
        MirrorPlane? mirror = MirrorPlane.Of(front, rear);
        double end = mirror is null ? 1 : 0.5;
        return known[^1] == new Match(end, end) ? Built(a, b, new TorsalMatching(a, b, known), mirror) : Between(front, rear, ElementMatching.BendOnly);
    }

    internal static RuledSheet Between(SpaceCurve front, SpaceCurve rear, ElementMatching elements, int lattice)
    {
        var a = new Directrix(front);
        var b = new Directrix(rear);
        MirrorPlane? mirror = MirrorPlane.Of(front, rear);
        // A mirrored matching passes through the middle of both curves, so half of it is the whole problem.
        double end = mirror is null ? 1 : 0.5;
        return Built(a, b, elements == ElementMatching.Even ? new EvenMatching(a, b, end) : new TorsalMatching(a, b, end, lattice), mirror);
    }

    private static RuledSheet Built(Directrix a, Directrix b, IMatching matching, MirrorPlane? mirror)
    {
        ImmutableArray<Strip> strips = Oriented(new SheetBuilder(a, b).Build(matching));
        return mirror is { } plane
            ? new RuledSheet([.. strips, .. strips.Reverse().Select(plane.Image)], true)
            : new RuledSheet(strips, false);
    }

    // A line of no length, or one that runs along an edge, has no normal of its own; it takes that of the nearest line that has one, from the right
    // where there is one, else from the left.
    private static ImmutableArray<Strip> Oriented(ImmutableArray<Strip> strips)
    {
        Strip[] oriented = [.. strips];
        Vec3 near = Vec3.Zero;
        for (int i = oriented.Length - 1; i >= 0; i--)
        {
            Strip s = oriented[i];
            Station right = Take(s.Right), middle = Take(s.Middle);
            oriented[i] = s with { Right = right, Middle = middle, Left = Take(s.Left) };
        }
        for (int i = 0; i < oriented.Length; i++)
        {
            Strip s = oriented[i];
            Station left = Take(s.Left), middle = Take(s.Middle);
            oriented[i] = s with { Left = left, Middle = middle, Right = Take(s.Right) };
        }
        return [.. oriented];

        Station Take(Station s)
        {
            if (s.Normal == Vec3.Zero) return s with { Normal = near };
            near = s.Normal;
            return s;
        }
    }
}

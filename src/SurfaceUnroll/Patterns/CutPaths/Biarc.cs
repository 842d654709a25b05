using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Patterns.CutPaths;

/// <summary>Two arcs that join two places with given directions and each other without a break in direction.</summary>
/// <remarks>K. M. Bolton, Biarc curves, Computer-Aided Design 7 (1975), 89–92. Of the family of such pairs these have control tangents of equal length at both ends.</remarks>
internal static class Biarc
{
    // Ends whose directions differ by less have control tangents from the linear equation, that the quadratic one tends to.
    private const double SameDirection = 1e-12;

    /// <summary>The two arcs.</summary>
    /// <param name="from">Start, mm.</param>
    /// <param name="leaving">Direction there, a unit vector.</param>
    /// <param name="to">End, mm.</param>
    /// <param name="arriving">Direction there, a unit vector.</param>
    /// <returns>Null where the ends look so far away from each other that there is no sensible pair.</returns>
    public static (PathArc First, PathArc Second)? Between(Vec2 from, Vec2 leaving, Vec2 to, Vec2 arriving)
    {
        Vec2 chord = to - from;
        // The corners from + d·leaving and to − d·arriving lie 2d apart: |chord − d·(leaving + arriving)| = 2d.
        double along = chord.Dot(leaving + arriving), spread = 2 * (1 - leaving.Dot(arriving)), square = chord.Dot(chord);
        if (along <= 0) return null;
        double reach = spread < SameDirection ? square / (2 * along) : square / (along + Math.Sqrt(along * along + spread * square));
        Vec2 joint = 0.5 * (from + to + reach * (leaving - arriving));
        return (PathArc.Leaving(from, leaving, joint), PathArc.Arriving(joint, to, arriving));
    }
}

using System.Collections.Immutable;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Buffer;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Patterns.CutPaths;

/// <summary>Moves a cut line into the waste by half of the width of the cut, so that the edge that is left is the finished line.</summary>
/// <remarks>
/// At outer corners of the piece the moved edges run on until they meet, so that corners stay corners and take no arcs; a tip sharper than 39° is cut off square, three half kerfs from its corner.
/// Inner corners are cut as far as the tool, a disc as wide as the kerf, goes into them.
/// </remarks>
internal static class KerfOffset
{
    // How far a corner may run out, in half kerfs.
    private const double MitreLimit = 3;

    // Chords in a quarter of a round corner, of which there are none.
    private const int QuarterChords = 8;

    // The buffer may leave out dents of the line smaller than this share of the distance: 0.0005 mm on the widest kerf.
    private const double Simplify = 1e-4;

    /// <summary>The moved line.</summary>
    /// <param name="loop">Dense closed cut line, mm.</param>
    /// <param name="inner">The waste lies inside of it.</param>
    /// <param name="half">Half of the kerf, mm.</param>
    /// <returns>Outlines first; more than one where an opening or the mouth of a notch closes, none where an opening closes wholly.</returns>
    public static ImmutableArray<ImmutableArray<Vec2>> Of(ImmutableArray<Vec2> loop, bool inner, double half)
    {
        if (half == 0) return [loop];
        bool counterClockwise = Polygons.SignedArea(loop) > 0;
        var how = new BufferParameters(QuarterChords, EndCapStyle.Round, JoinStyle.Mitre, MitreLimit) { SimplifyFactor = Simplify };
        IReadOnlyList<Polygon> parts = Polygons.Parts(BufferOp.Buffer(Polygons.Of(loop), inner ? -half : half, how));
        return
        [
            .. parts.Select(part => Polygons.Turned(Polygons.Outline(part), counterClockwise)),
            .. parts.SelectMany(part => Polygons.Holes(part)).Select(hole => Polygons.Turned(hole, !counterClockwise)),
        ];
    }

    /// <summary>Where the cut stays farthest from the finished line, and by how much, mm.</summary>
    /// <param name="loop">Finished line.</param>
    /// <param name="moved">What was made of it.</param>
    /// <param name="half">Half of the kerf, mm.</param>
    public static (Vec2 Place, double Beyond) Missed(ImmutableArray<Vec2> loop, ImmutableArray<ImmutableArray<Vec2>> moved, double half)
    {
        var lines = new NetTopologySuite.Operation.Distance.IndexedFacetDistance(new MultiPolygon([.. moved.Select(m => Polygons.Of(m))]).Boundary);
        return loop.Select(p => (p, lines.Distance(new Point(p.X, p.Y)) - half)).MaxBy(m => m.Item2);
    }
}

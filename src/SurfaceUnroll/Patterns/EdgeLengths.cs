using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns;

/// <summary>Lengths of edges that are given by places along them.</summary>
internal static class EdgeLengths
{
    // Height of an arc over its chord that the coarsest mesh leaves, mm.
    private const double HighestArc = 0.1;

    /// <summary>Length of a chain of vertices on the formed sheet, mm: of arcs over its chords.</summary>
    public static double Formed(SheetMesh mesh, ImmutableArray<int> chain) => Running([.. chain.Select(v => mesh.Formed[v])])[^1];

    /// <summary>Length of a path on the blank, mm: of arcs over its chords.</summary>
    public static double Flat(ImmutableArray<Vec2> path) => Running([.. path.Select(p => new Vec3(p.X, p.Y, 0))])[^1];

    /// <summary>Length from the first place to each along arcs over the chords, mm; as many as there are places. An arc that turns by θ over a chord is longer than it by θ²/24.</summary>
    public static double[] Running(Vec3[] path)
    {
        double[] running = new double[Math.Max(1, path.Length)];
        for (int i = 0; i + 1 < path.Length; i++)
        {
            double theta = ChordTurn.Over(i, path.Length, k => Chord(k).Length, at => Chord(at - 1).AngleTo(Chord(at)));
            // A flat beside a small arc turns at its end, and yet is straight: no arc stands higher over its chord than any edge is drawn to.
            theta = Math.Min(theta, 8 * HighestArc / Chord(i).Length);
            running[i + 1] = running[i] + Chord(i).Length * (1 + theta * theta / 24);
        }
        return running;

        Vec3 Chord(int k) => path[k + 1] - path[k];
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Patterns;

/// <summary>Two diagonals over all sheets of a pattern, for the tape.</summary>
internal static class FarMarks
{
    // A far mark and its ring stay this clear of the cut line and of words, and marks of each other, mm.
    private const double Room = 5, Apart = 15;

    // A second diagonal must cross the first one at so large a distance, measured square to it, mm.
    private const double LeastAcross = 30;

    // How far down an element line a far mark may stand.
    private static readonly ImmutableArray<double> Shares = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9];

    /// <summary>Marks P and Q, the farthest apart, and R and S, which span the widest diamond with them, where the piece is wide enough for that; none for a piece on one sheet.</summary>
    /// <param name="panel">The piece.</param>
    /// <param name="plan">Its tiles.</param>
    public static ImmutableArray<OverlapMark> Of(PanelDevelopment panel, TilePlan plan)
    {
        if (plan.Printed.Count() < 2) return [];
        CutOutline outline = CutOutline.Of(panel);
        Box[] words = [.. plan.Drawing.Letterings.Select(text => TextOutline.Of(text).Bounds.Grow(Room))], windows = [.. plan.Printed.Select(t => t.Window.Grow(-6))];
        ImmutableArray<Vec2>[] lines = [.. plan.Drawing.Strokes.Where(s => s.Role is Role.Bend or Role.Net || (s.Role == Role.Mark && !panel.Marks.IsEmpty)).Select(s => s.Points)];
        (Vec2 At, double Depth)[] places =
        [
            .. Candidates(panel).Select(p => (At: p.Rotate(plan.Turn), Depth: outline.Depth(p)))
                .Where(p => !lines.Any(line => DrawingPlaces.Distance(p.At, line) < Room) && windows.Any(w => w.Surrounds(p.At)) && !words.Any(w => w.Surrounds(p.At))),
        ];
        // Clear of the cut line where the piece is wide enough for that.
        ImmutableArray<OverlapMark> clear = Pairs([.. places.Where(p => p.Depth > Room).Select(p => p.At)]);
        return clear.IsEmpty ? Pairs([.. places.Select(p => p.At)]) : clear;
    }

    // On element lines; all over a flat plate, which has none.
    private static IEnumerable<Vec2> Candidates(PanelDevelopment panel) => panel.Spec.Kind == "flat"
        ? DrawingPlaces.AllOver(panel)
        : panel.Elements.Where(e => e.Number > 0 && e.Length > 0).SelectMany(e => Shares.Select(share => Vec2.Lerp(e.Front, e.Rear, share)));

    private static ImmutableArray<OverlapMark> Pairs(Vec2[] places)
    {
        if (Most(places, d => d.Length) is not { } far) return [];
        (Vec2 p, Vec2 q) = far;
        Vec2[] others = [.. places.Where(r => (r - p).Length > Apart && (r - q).Length > Apart)];
        Vec2 way = (q - p).Unit;
        return Most(others, d => Math.Abs(way.Cross(d))) is var (r, s) && Math.Abs(way.Cross(s - r)) > LeastAcross
            ? [new OverlapMark(p, "P"), new OverlapMark(q, "Q"), new OverlapMark(r, "R"), new OverlapMark(s, "S")]
            : [new OverlapMark(p, "P"), new OverlapMark(q, "Q")];
    }

    private static (Vec2 From, Vec2 To)? Most(Vec2[] places, Func<Vec2, double> measure)
    {
        (Vec2, Vec2)? best = null;
        double most = 0;
        foreach (Vec2 p in places)
            foreach (Vec2 q in places)
            {
                // The margin keeps the choice from turning on rounding between mirrored pairs.
                double d = measure(q - p);
                if (d > most + 1e-6) (most, best) = (d, (p, q));
            }
        return best;
    }
}

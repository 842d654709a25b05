using System.Collections.Immutable;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Drawings;

/// <summary>Finds how a drawing lies best on sheets of paper: which way round they lie, how far it is turned, and where the sheets part it.</summary>
internal sealed class TileSearch
{
    // Lines are thinned so far for the search, mm.
    private const double Thinning = 0.3;

    // Parting elsewhere must spare so much of cut line in the overlaps, in overlaps; words that no sheet holds whole count for so much of it.
    private const double WorthMoving = 3, PartedWords = 5;

    private static readonly Vec2 Middle = new(0.5, 0.5);

    // Where the drawing may lie in the room that its sheets leave it: in the middle, or elsewhere.
    private static readonly ImmutableArray<Vec2> Shifts =
        [Middle, .. from x in new[] { 0.5, 0.3, 0.7, 0.1, 0.9 } from y in new[] { 0.5, 0.3, 0.7, 0.1, 0.9 } where (x, y) != (0.5, 0.5) select new Vec2(x, y)];

    private readonly PaperSpec _paper;
    private readonly (Vec2 A, Vec2 B)[] _cuts, _others;
    private readonly Vec2[] _places;
    private readonly ImmutableArray<ImmutableArray<Vec2>> _words;

    /// <summary>Prepares the search.</summary>
    public TileSearch(Drawing drawing, PaperSpec paper)
    {
        _paper = paper;
        _places = [.. drawing.Strokes.SelectMany(s => s.Points)];
        _words = [.. drawing.Letterings.Select(t => TextOutline.Of(t).Corners)];
        _cuts = [.. drawing.Strokes.Where(s => s.Role == Role.Cut).SelectMany(Segments)];
        _others = [.. drawing.Strokes.Where(s => s.Role != Role.Cut).SelectMany(Segments)];
    }

    /// <summary>Every whole degree of half a turn, from none to either side: the other half brings the same sheets again.</summary>
    public static ImmutableArray<double> WholeDegrees { get; } = [0, .. Enumerable.Range(1, 90).SelectMany(d => d < 90 ? new[] { d, -d } : [d]).Select(d => d * Math.PI / 180)];

    /// <summary>How a drawing lies.</summary>
    /// <param name="Level">The sheets lie on their long side.</param>
    /// <param name="Turn">Of the drawing, radians counter-clockwise.</param>
    /// <param name="Shift">In the room that its sheets leave it, from 0 at the left and the top to 1.</param>
    public readonly record struct Choice(bool Level, double Turn, Vec2 Shift);

    /// <summary>What takes the fewest sheets; among equals the first way and turn, and then the parting that has least of the cut line in the overlaps.</summary>
    public Choice Best(IEnumerable<bool> ways, ImmutableArray<double> turns)
    {
        var best = new Choice(ways.First(), turns[0], Middle);
        double least = double.PositiveInfinity;
        // The first turn comes first whichever way the sheets lie.
        foreach (double turn in turns)
        {
            Turned turned = Turn(turn);
            foreach (bool level in ways)
            {
                double cost = Cost(turned, level, Middle).Cost;
                if (cost < least - 1e-9) (least, best) = (cost, new Choice(level, turn, Middle));
            }
        }
        return Parted(best);
    }

    // A pattern is not parted along its edge, if it can be helped: there the paper would be taped where it must be cut.
    private Choice Parted(Choice choice)
    {
        Turned turned = Turn(choice.Turn);
        (double cost, double taped) = Cost(turned, choice.Level, Middle, words: true);
        if (taped == 0) return choice;
        foreach (Vec2 shift in Shifts)
        {
            (double other, double length) = Cost(turned, choice.Level, shift, words: true);
            if (other > cost + 1e-9 || (other > cost - 1e-9 && length > taped - WorthMoving * _paper.Overlap)) continue;
            (cost, taped, choice) = (other, length, choice with { Shift = shift });
        }
        return choice;
    }

    private sealed record Turned(double Angle, (Vec2 A, Vec2 B)[] Cuts, (Vec2 A, Vec2 B)[] Others, Box Bounds);

    private Turned Turn(double angle) => angle == 0
        ? new Turned(0, _cuts, _others, Box.Around(_places))
        : new Turned(
            angle, [.. _cuts.Select(s => (s.A.Rotate(angle), s.B.Rotate(angle)))], [.. _others.Select(s => (s.A.Rotate(angle), s.B.Rotate(angle)))],
            Box.Around(_places.Select(p => p.Rotate(angle))));

    // What the paper costs, and how much of the cut line runs in overlaps, mm; for words that are parted more.
    private (double Cost, double Taped) Cost(Turned turned, bool level, Vec2 shift, bool words = false)
    {
        (PrintSheet sheet, TileGrid grid) = TileLayout.Over(turned.Bounds, _paper, level, shift);
        if (grid.Rows * grid.Columns == 1) return (TilePlan.CostOf(_paper, 1, sheet), 0);
        var inked = new bool[grid.Rows * grid.Columns];
        foreach ((Vec2 a, Vec2 b) in turned.Cuts) grid.Ink(a, b, inked);
        foreach ((Vec2 a, Vec2 b) in turned.Others) grid.Ink(a, b, inked);
        double taped = turned.Cuts.Sum(s => (s.B - s.A).Length * (InSeam(grid, Vec2.Lerp(s.A, s.B, 0.5)) ? 1 : 0));
        if (words) taped += PartedWords * _paper.Overlap * _words.Count(w => !grid.HoldsWhole(Box.Around(w.Select(p => p.Rotate(turned.Angle)))));
        return (TilePlan.CostOf(_paper, inked.Count(i => i), sheet), taped);
    }

    // In an overlap of two columns or rows.
    private static bool InSeam(TileGrid grid, Vec2 p) =>
        InSeam(p.X - grid.Corner.X, grid.Width, grid.StepX, grid.Columns) || InSeam(grid.Corner.Y - p.Y, grid.Height, grid.StepY, grid.Rows);

    private static bool InSeam(double at, double window, double step, int count)
    {
        double k = Math.Floor(at / step);
        return k >= 1 && k < count && at - k * step < window - step;
    }

    private static IEnumerable<(Vec2 A, Vec2 B)> Segments(Stroke stroke)
    {
        ImmutableArray<Vec2> path = Thinner.Thinned(stroke.Closed ? [.. stroke.Points, stroke.Points[0]] : stroke.Points, Thinning);
        // So short that its middle tells where it lies.
        for (int i = 0; i + 1 < path.Length; i++)
        {
            if (stroke.Role != Role.Cut) yield return (path[i], path[i + 1]);
            else
            {
                int parts = Math.Max(1, (int)((path[i + 1] - path[i]).Length / 10));
                for (int k = 0; k < parts; k++) yield return (Vec2.Lerp(path[i], path[i + 1], (double)k / parts), Vec2.Lerp(path[i], path[i + 1], (k + 1.0) / parts));
            }
        }
    }
}

using System.Collections.Immutable;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;
using SurfaceUnroll.Jobs;
using SurfaceUnroll.Lofting.Nearest;
using SurfaceUnroll.Units;

namespace SurfaceUnroll.Patterns.MovedEdges;

/// <summary>One numbered place of a moved edge.</summary>
/// <param name="Number">From 1, left to right.</param>
/// <param name="Length">Along the measured edge from its left end, mm.</param>
/// <param name="Move">mm, positive to the outside of the sheet.</param>
/// <param name="Was">In the plane of the edge, as it is drawn, mm.</param>
/// <param name="Is">The same after the move.</param>
internal sealed record EdgePlace(int Number, double Length, double Move, Vec2 Was, Vec2 Is)
{
    /// <summary>How far, in the job's units, a plus outward.</summary>
    public string Words(LengthUnit units) => (Move < 0 ? "−" : "+") + ShopLength.Print(Math.Abs(Move), units, 1);
}

/// <summary>A moved edge as it is drawn: in its plane, its left end on the left.</summary>
internal sealed class EdgePlaces
{
    // Numbered places along a whole edge, and the least move that has one, mm.
    private const int Most = 16;
    private const double LeastMove = 0.1;

    // Distance of drawn places along the edge, mm: an arc of 100 mm radius bows by 0.003 mm over it.
    private const double Step = 1.5;

    private readonly FreedomFit _fit;
    private readonly double _side;

    public EdgePlaces(FreedomFit fit)
    {
        _fit = fit;
        // Seen from the other side of its plane if its left end would lie on the right.
        _side = fit.Plane.Own(fit.Edge.End.Point).X < fit.Plane.Own(fit.Edge.Start.Point).X ? -1 : 1;
        Edge = [.. Along(fit.Edge)];
        Numbered = [.. Chosen()];
    }

    /// <summary>The moved edge, left to right, mm.</summary>
    public ImmutableArray<Vec2> Edge { get; }

    /// <summary>Places at even distances where the edge moved, the one that moved farthest among them.</summary>
    public ImmutableArray<EdgePlace> Numbered { get; }

    /// <summary>All places of the measured edge and of the moved one.</summary>
    public IEnumerable<(Vec2 Was, Vec2 Is, double Move)> All => _fit.Moves.Select(m => (Drawn(m.Was), Drawn(m.Is), m.Move));

    /// <summary>The measured edge where it lies apart from the moved one.</summary>
    public IEnumerable<ImmutableArray<Vec2>> Measured()
    {
        var run = ImmutableArray.CreateBuilder<Vec2>();
        foreach ((Vec2 was, Vec2 now, double move) in All)
        {
            if (Math.Abs(move) >= LeastMove)
            {
                run.Add(was);
                continue;
            }
            if (run.Count > 1) yield return run.ToImmutable();
            run.Clear();
        }
        if (run.Count > 1) yield return run.ToImmutable();
    }

    private IEnumerable<Vec2> Along(SpaceCurve curve)
    {
        yield return Drawn(curve.Start.Point);
        for (int i = 0; i < curve.Pieces.Length; i++)
        {
            int steps = Math.Max(1, (int)Math.Ceiling(curve.PieceLengths[i] / Step));
            for (int k = 1; k <= steps; k++) yield return Drawn(curve.Pieces[i].At((double)k / steps).Point);
        }
    }

    private IEnumerable<EdgePlace> Chosen()
    {
        EdgeMove[] moves = [.. _fit.Moves];
        double apart = moves[^1].Length / Most;
        int largest = Array.FindIndex(moves, m => m == _fit.Largest);
        var taken = new SortedSet<int> { largest };
        // From the largest move both ways.
        foreach (int way in new[] { -1, 1 })
        {
            double last = moves[largest].Length;
            for (int i = largest + way; i >= 0 && i < moves.Length; i += way)
            {
                if (Math.Abs(moves[i].Length - last) < apart || Math.Abs(moves[i].Move) < LeastMove) continue;
                taken.Add(i);
                last = moves[i].Length;
            }
        }
        return taken.Select((i, k) => new EdgePlace(k + 1, moves[i].Length, moves[i].Move, Drawn(moves[i].Was), Drawn(moves[i].Is)));
    }

    private Vec2 Drawn(Vec3 place) => _fit.Plane.Own(place) is var own ? new Vec2(_side * own.X, own.Y) : default;
}

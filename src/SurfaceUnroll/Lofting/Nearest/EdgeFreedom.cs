using System.Collections.Immutable;
using SurfaceUnroll.Curves;
using SurfaceUnroll.Geometry;

namespace SurfaceUnroll.Lofting.Nearest;

/// <summary>What came of looking for the nearest edge.</summary>
public enum FreedomOutcome
{
    /// <summary>An edge within the freedom joins the fixed one by a sheet that only bends.</summary>
    Found,

    /// <summary>There is one, but it moves farther than it may.</summary>
    TooFar,

    /// <summary>None was found.</summary>
    None,
}

/// <summary>The nearest edge from which a sheet that only bends leads to a fixed one.</summary>
/// <param name="Outcome">Whether there is one within the freedom.</param>
/// <param name="Edge">It; null unless found.</param>
/// <param name="Plane">Plane in which it moved.</param>
/// <param name="Moves">Moves at places along it.</param>
/// <param name="Least">Smallest freedom that would do, mm; <see cref="double.NaN"/> if none was found or it was not asked for.</param>
public sealed record FreedomResult(FreedomOutcome Outcome, SpaceCurve? Edge, EdgePlane Plane, ImmutableArray<EdgeMove> Moves, double Least)
{
    // Element lines that it was made for, the fixed edge as the front; of a mirrored sheet those of its left half.
    internal ImmutableArray<Match> Lines { get; init; } = [];
}

/// <summary>The move of one place of the edge.</summary>
/// <param name="Length">Along the measured edge from its left end, mm.</param>
/// <param name="Was">In job space, mm.</param>
/// <param name="Is">In job space, mm.</param>
/// <param name="Move">Along the normal, mm, positive to the left of the way the edge runs, seen against the plane's normal.</param>
public readonly record struct EdgeMove(double Length, Vec3 Was, Vec3 Is, double Move);

/// <summary>Moves one edge of a sheet, within a freedom, so that the sheet only bends.</summary>
public static class EdgeFreedom
{
    // An edge is bent by no more than the curvature of a circle of this share of its length, beyond what it is bent already.
    private const double SharpestShare = 1.0 / 20;

    // A move is spread over this share of the edge where nothing asks for less.
    private const double SpreadShare = 1.0 / 32;

    // Freedoms this close are one, mm.
    private const double SameFreedom = 0.005;

    /// <summary>Looks for it.</summary>
    /// <param name="fixedEdge">The edge that stays.</param>
    /// <param name="moved">The edge that may move, in the same direction, in one plane.</param>
    /// <param name="plane">Its plane.</param>
    /// <param name="freedom">mm, &gt; 0.</param>
    public static FreedomResult Find(SpaceCurve fixedEdge, SpaceCurve moved, EdgePlane plane, double freedom)
    {
        MirrorPlane? mirror = MirrorPlane.Of(fixedEdge, moved);
        var edge = new FixedEdge(new Directrix(fixedEdge), plane, mirror is null ? 1 : 0.5);
        double length = moved.Length;
        ImmutableArray<EdgeStation> stations = EdgeStations.Of(moved, plane, mirror is null ? length : 0.5 * length);
        EdgeEnd end = mirror is { } m0 ? (m0.IsSquareTo(moved.AtLength(0.5 * length).D1) ? EdgeEnd.Middle : EdgeEnd.MiddleCorner)
            : (moved.Start.Point - moved.End.Point).Length < 1e-6 * length ? EdgeEnd.Closed : EdgeEnd.Free;
        var structure = new FreedomStructure(edge, stations, end);
        var limits = new MoveLimits(double.PositiveInfinity, 1 / (SharpestShare * length), SpreadShare * length);
        FreedomSolution free = structure.Solve(limits);
        if (!(free.Stations.Miss <= NearestSearch.Met)) return new FreedomResult(FreedomOutcome.None, null, plane, [], double.NaN);
        if (free.Stations.Largest <= freedom) return Result(free);
        FreedomSolution bounded = structure.Solve(limits with { Most = freedom }, free);
        if (bounded.Stations.Miss <= NearestSearch.Met) return Result(bounded);
        return new FreedomResult(FreedomOutcome.TooFar, null, plane, [], structure.Least(limits, freedom, free, SameFreedom));

        FreedomResult Result(FreedomSolution found)
        {
            MovedStations solution = found.Stations;
            ImmutableArray<CurvePiece> pieces = MovedPieces.Of(stations, solution, plane);
            var curve = new SpaceCurve(mirror is { } m ? [.. pieces, .. m.Images(pieces)] : pieces);
            var moves = stations.Select((s, i) => new EdgeMove(s.Length, plane.Place(s.Place), plane.Place(s.Place + solution.Moves[i] * s.Normal), solution.Moves[i])).ToList();
            if (mirror is { } plan) moves.AddRange([.. moves.AsEnumerable().Reverse().Skip(1).Select(x => x with { Length = length - x.Length, Was = plan.Image(x.Was), Is = plan.Image(x.Is) })]);
            return new FreedomResult(FreedomOutcome.Found, curve, plane, [.. moves], double.NaN) { Lines = KnownLines.Of(edge, curve, stations, found, mirror is null ? 1 : 0.5) };
        }
    }
}
